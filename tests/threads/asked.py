"""Thread asked in both languages: the reckoning by name, and quick thread as it is typed."""

import json
from datetime import date
from math import isclose
from random import Random
from typing import Any

from playwright.sync_api import Page

from tests.cloth.languages import folder_of as cloth_folder
from webapp.places import SHARED
from webapp.threads import estimate as subject
from webapp.threads import quick, quick_saying
from webapp.threads.estimate import PATCH, Counts, Own, Worked
from webapp.threads.geometry import METHODS, STITCHES, Ground, ground_of, stitch
from webapp.threads.kinds import worked
from webapp.threads.own import Reading, own
from webapp.threads.quick_views import tables
from webapp.threads.tables import kinds

VECTORS = json.loads((SHARED / "vectors" / "threads.json").read_text(encoding="utf-8"))["cases"]
DAY = date(2026, 2, 3)


def _estimate(ground, counts, how, kind, patches, scatter, hers):
    mine = Own(*hers, "") if hers else None
    on = Ground(*ground), Counts(**counts), Worked(*how), kinds()[kind]
    found = subject.estimate(*on, patches, scatter, mine)._asdict()
    return {name: value for name, value in found.items() if name != "rests_on"}


def _own(readings, ground):
    hers = own([Reading(made=DAY, **one) for one in readings], Ground(*ground))
    return {"factor": hers.factor, "spread": hers.spread} if hers else None


def _quick(typed):
    asked = quick.ask(typed, tables())
    return {"errors": asked.errors} if asked.errors else quick_saying.slots(asked, tables())


# In the order of their arguments; a ground is [across, down, thick], worked as its fields.
ASKED = {
    "ground": lambda *given: ground_of(*given)._asdict(),
    "stitch": lambda what, ground, *how: stitch(what, Ground(*ground), *how),
    "patches": lambda counts, scatter: subject.patches_of(Counts(**counts), scatter),
    "estimate": _estimate,
    "worked": lambda parts, method, working: [
        one._asdict() for one in worked(kinds(), parts, method, working)
    ],
    "own": _own,
    "quick": _quick,
}

THERE = """async ([folder, tables, cases]) => {
  const names = ["geometry", "estimate", "kinds", "own", "quick", "quick_saying"];
  const [geometry, estimating, kinds, owning, quick, saying] =
    await Promise.all(names.map((name) => import(`${folder}/${name}.js`)));
  const on = ([across, down, thick]) => ({ across, down, thick });
  const asked = {
    ground: geometry.groundOf,
    stitch: (what, ground, ...how) => geometry.stitch(what, on(ground), ...how),
    patches: estimating.patchesOf,
    estimate: (ground, counts, how, kind, patches, scatter, hers) =>
      estimating.estimate(on(ground), counts, estimating.makeWorked(...how), tables.kinds[kind], patches,
        scatter, hers && { factor: hers[0], spread: hers[1] }),
    worked: (parts, method, working) => kinds.worked(tables.kinds, parts, method, working),
    own: (readings, ground) => owning.own(readings, on(ground)),
    quick: (typed) => {
      const found = quick.ask(typed, tables);
      return Object.keys(found.errors).length ? { errors: found.errors } : saying.slots(found, tables);
    },
  };
  return cases.map(([name, given]) => {
    try { return asked[name](...given); } catch (error) {
      if (!(error instanceof RangeError)) throw error;
      return { error: error.message };
    }
  });
}"""

Case = tuple[str, list[Any]]


def folder_of(url: str) -> str:
    return cloth_folder(url).removesuffix("cloth") + "threads"


def here(name: str, given: list[Any]) -> Any:
    """Ask in Python, laid out as JSON gives it back."""
    try:
        return json.loads(json.dumps(ASKED[name](*given)))
    except ValueError as error:
        return {"error": str(error)}


def there(page: Page, folder: str, cases: list[Case]) -> list[Any]:
    return page.evaluate(THERE, [folder, tables(), cases])


def same(name: str, one: Any, other: Any) -> bool:
    """Tell whether two answers are alike: to the last digit, but for her own figure, where logarithms are."""
    if name == "own" and one and "factor" in one:
        return all(isclose(one[key], other[key], rel_tol=1e-12) for key in one)
    return one == other


def random_typed(rng: Random) -> dict[str, str]:
    """Type a question at random, now and then one that cannot be read."""
    return {
        "by": rng.choice(["stitches", "stitches", "block", "printed", "x"]),
        "stitches": rng.choice([str(rng.randint(0, 20_000)), "2,400", "1 000", "12.000", "1e3", "", "1,23"]),
        "block": str(rng.randint(0, 100)),
        "blocks": rng.choice([str(rng.randint(1, 500)), "9999", "99999"]),
        "printed": str(rng.randint(0, 12)),
        "printed_count": rng.choice(["14", "16", "18", "x"]),
        "printed_strands": rng.choice(["1", "2", "3"]),
        "count": rng.choice(["11", "14", "16", "28", "32", "27,6", "13.72", "", "1"]),
        "over": rng.choice(["1", "2", "x"]),
        "kind": rng.choice([*quick.KINDS, "string"]),
        "strands": rng.choice(["", "", "1", "2", "3", "13"]),
        "method": rng.choice(["", "rows", "each"]),
        "scatter": rng.choice(["together", "mixed", "scattered", ""]),
        "working": rng.choice(["", "", "18", "45 cm", "20 1/2", "1"]),
        "gave": rng.choice(["", "", str(rng.randint(1, 60)), "x"]),
        "skein": rng.choice(["", "", "8", "5 m", "8.7 yd", "10 metres", "x", "0"]),
        "unit": rng.choice(["in", "cm"]),
    }


def random_case(rng: Random) -> Case:
    """Make up a question, now and then one that is refused."""
    name = rng.choice([*ASKED, "estimate", "quick", "quick"])
    ground = [rng.uniform(0.6, 4), rng.uniform(0.6, 4), rng.choice([0.5, 0.0, rng.uniform(0, 1)])]
    counts = {what: rng.choice([0, rng.randint(0, 4000)]) for what in STITCHES}
    strands, method = rng.randint(1, 6), rng.choice(METHODS)
    how = [strands, strands + rng.choice([0, 0, 1]), method, rng.choice([457.2, rng.uniform(140, 900)])]
    hers = rng.choice([None, [rng.uniform(0.5, 2), rng.uniform(0.03, 0.4)]])
    kind = rng.choice(list(kinds()))
    parts = [[rng.choice(list(kinds())), rng.randint(1, 4)] for _ in range(rng.randint(1, 3))]
    length = {"what": "length", "stitches": rng.randint(1, 60), "length": rng.uniform(150, 600)}
    skein = {"what": "skein", "stitches": rng.randint(500, 3000), "length": rng.uniform(4000, 9000)}
    told = {"strands": strands, "method": method}
    readings = [rng.choice([length, skein]) | told for _ in range(rng.randint(0, 4))]
    given: dict[str, list[Any]] = {
        "ground": [rng.choice([14, 28, rng.uniform(0.5, 60)]), rng.choice([1, 2, 3, 4])],
        "stitch": [rng.choice([*STITCHES, "loop"]), ground, method, rng.uniform(0, 1)],
        "patches": [counts, rng.choice(list(PATCH))],
        "estimate": [
            *(ground, counts, how, kind, rng.choice([None, rng.randint(1, 900)])),
            *(rng.choice(list(PATCH)), hers),
        ],
        "worked": [parts, rng.choice([None, method]), rng.choice([None, 381.0])],
        "own": [readings, ground],
        "quick": [random_typed(rng)],
    }
    return name, given[name]


def disagreements(page: Page, folder: str, cases: int, seed: int) -> list[Case]:
    """Ask at random in both languages and give the questions whose answers differ, in any digit."""
    rng = Random(seed)
    asked = [random_case(rng) for _ in range(cases)]
    found = there(page, folder, asked)
    return [case for case, one in zip(asked, found, strict=True) if not same(case[0], here(*case), one)]
