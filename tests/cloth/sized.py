"""Sizing, margins, packing and advice asked by name in both languages."""

import json
from collections.abc import Callable
from dataclasses import asdict, is_dataclass
from random import Random
from typing import Any

from playwright.sync_api import Page

from webapp.cloth import advice, margins, packing, sizing
from webapp.cloth.tables import NAMES, read
from webapp.places import SHARED

VECTORS = [
    case
    for name in ("sizing", "packing")
    for case in json.loads((SHARED / "vectors" / f"{name}.json").read_text(encoding="utf-8"))["cases"]
]

# In the order of their arguments; "cloth" is [across, down, over].
ASKED: dict[str, Callable[..., Any]] = {
    "round_up": sizing.round_up,
    "size": lambda cloth, *how: sizing.size(sizing.Cloth(*cloth), *how),
    "largest": lambda cloth, *how: sizing.largest(sizing.Cloth(*cloth), *how),
    "fit": lambda cloth, *how: sizing.fit(sizing.Cloth(*cloth), *how),
    "which_fit": sizing.which_fit,
    "margin": lambda *how: margins.margin(*how, read("margins")),
    "needles": lambda per_inch: advice.needles(per_inch, read("needles")),
    "strands": lambda per_inch: advice.strands(per_inch, read("strands")),
    "hoop": lambda width, height: advice.hoop(width, height, read("hoops")),
    "class_cuts": packing.class_cuts,
    "off_the_bolt": packing.off_the_bolt,
}

THERE = """async ([folder, tables, cases]) => {
  const [sizing, margins, advice, packing] = await Promise.all(
    ["sizing", "margins", "advice", "packing"].map((name) => import(`${folder}/${name}.js`)));
  const on = (ask) => (cloth, ...how) => ask(sizing.makeCloth(...cloth), ...how);
  const asked = {
    round_up: sizing.roundUp, size: on(sizing.size),
    largest: on(sizing.largest), fit: on(sizing.fit), which_fit: sizing.whichFit,
    margin: (...how) => margins.margin(...how, tables.margins),
    needles: (perInch) => advice.needles(perInch, tables.needles),
    strands: (perInch) => advice.strands(perInch, tables.strands),
    hoop: (width, height) => advice.hoop(width, height, tables.hoops),
    class_cuts: packing.classCuts, off_the_bolt: packing.offTheBolt,
  };
  return cases.map(([name, given]) => {
    try { return asked[name](...given); } catch (error) {
      if (!(error instanceof RangeError)) throw error;
      return { error: error.message };
    }
  });
}"""

Case = tuple[str, list[Any]]


def here(name: str, given: list[Any]) -> Any:
    """Ask in Python, laid out as JSON gives it back."""
    try:
        found = ASKED[name](*given)
    except ValueError as error:
        return {"error": str(error)}
    return json.loads(json.dumps(found, default=_laid))


def _laid(found: Any) -> dict[str, Any]:
    assert is_dataclass(found)
    assert not isinstance(found, type)
    return asdict(found)


def there(page: Page, folder: str, cases: list[Case]) -> list[Any]:
    """Ask in JavaScript."""
    return page.evaluate(THERE, [folder, {name: read(name) for name in NAMES}, cases])


def random_case(rng: Random) -> Case:
    """Make up a question, now and then one that is refused."""
    name = rng.choice(list(ASKED))
    width, height, margin = rng.randint(1, 600), rng.randint(1, 600), rng.randint(0, 400) / 4
    count, over = rng.choice([rng.uniform(0.9, 60), 14, 16, 18, 28, 32, 36]), rng.choice([1, 1, 2, 2, 3, 4])
    cloth = [count, rng.choice([count, count * rng.uniform(0.9, 1.1)]), over]
    step = rng.choice(list(sizing.STEPS.values()))
    piece = [rng.choice([rng.uniform(5, 1600), rng.randint(1, 160) * 6.35]) for _ in range(2)]
    grounds = [[14, 1], [16, 1], [28, 2], [rng.uniform(1, 60), 2]]
    cut = [rng.choice([rng.uniform(9, 700), rng.randint(2, 60) * 6.35]) for _ in range(2)]
    turned = rng.choice([None, [rng.uniform(9, 700), rng.uniform(9, 700)]])
    table = read("margins")
    given: dict[str, list[Any]] = {
        "round_up": [rng.choice([rng.uniform(1, 2000), rng.randint(1, 300) * step]), step],
        "size": [cloth, width, height, margin, step, rng.choice([0, rng.uniform(1, 500)])],
        "largest": [cloth, *piece, margin],
        "fit": [cloth, width, height, margin, *piece, rng.random() < 0.5],
        "which_fit": [width, height, margin, *piece, grounds],
        "margin": [
            rng.choice(list(table["finishes"])),
            rng.choice(list(table["frames"])),
            rng.random() < 0.5,
            rng.choice([None, margin]),
        ],
        "needles": [count],
        "strands": [count],
        "hoop": [rng.uniform(1, 500), rng.uniform(1, 500)],
        "class_cuts": [rng.randint(1, 40), *cut, *piece, rng.random() < 0.8, turned],
        "off_the_bolt": [rng.randint(0, 40), *cut, rng.uniform(100, 1600), rng.random() < 0.8, turned],
    }
    return name, given[name]


def disagreements(page: Page, folder: str, cases: int, seed: int) -> list[Case]:
    """Ask at random in both languages and give the questions whose answers differ, in any digit."""
    rng = Random(seed)
    asked = [random_case(rng) for _ in range(cases)]
    found = there(page, folder, asked)
    return [case for case, answer in zip(asked, found, strict=True) if here(*case) != answer]
