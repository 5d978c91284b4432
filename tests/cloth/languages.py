"""The gauge's two languages set against each other, for the tests and the bench."""

from math import isclose
from random import Random
from typing import Any

from playwright.sync_api import Page

from tests.cloth.vectors import figures_of
from webapp.cloth.gauge import INCH
from webapp.cloth.standards import embedded
from webapp.statics import digest

ANSWERS = """async ([folder, table, cases]) => {
  const [{ answer }, { sentences }, { scale }, { onward }, words] = await Promise.all(
    ["answer", "saying", "scale", "onward", "words"].map((name) => import(`${folder}/${name}.js`)));
  const figuresOf = ({ kind, unit, readings }) => {
    const found = answer(readings, kind, unit, table);
    const { measured, judged } = found;
    const left = judged.names.filter((n) => n.verdict !== "ruled out");
    const names = left.map((n) => [n.count, n.verdict, n.likelihood]);
    return {
      ...measured, sure: judged.sure, none: judged.none, names, square: found.square,
      holes: found.holes, onward: onward(found),
      changed: found.changed, over_two_name: found.over_two_name,
      asked_length: found.asked_length, settling: found.settling, sentences: sentences(found),
      shown: [...words.interval(measured), ...words.metric(measured)],
      scale: scale(measured, judged, found.ways && found.across),
    };
  };
  return cases.map(figuresOf);
}"""


def folder_of(url: str) -> str:
    return f"{url}/static/{digest()}/js/cloth"


def in_javascript(page: Page, folder: str, cases: list[dict[str, Any]]) -> list[dict[str, Any]]:
    return page.evaluate(ANSWERS, [folder, embedded(), cases])


def same(one, other) -> bool:
    """Tell whether two answers agree: words and counts to the letter, figures to the ninth place."""
    if isinstance(one, dict):
        return all(same(one[key], other[key]) for key in one)
    if isinstance(one, list):
        return len(one) == len(other) and all(map(same, one, other))
    if isinstance(one, float):
        return isclose(one, other, rel_tol=1e-9, abs_tol=1e-12)
    return one == other


def random_case(rng: Random) -> dict:
    kind, unit = rng.choice(["squares", "threads"]), rng.choice(["in", "cm"])
    division = rng.choice([INCH / 8, INCH / 16]) if unit == "in" else 1.0
    truth = rng.uniform(6, 46)
    readings = []
    for turn in range(rng.choice([1, 1, 1, 2, 3, 5])):
        length = rng.randint(8, 96) * INCH / 16 if unit == "in" else rng.randint(20, 150)
        counted = max(4, round(truth * rng.gauss(1, 0.02) * length / INCH * 2) / rng.choice([1, 2]))
        way = "across" if turn and rng.random() < 0.4 else "along"
        pins = rng.random() < 0.3
        readings.append(
            {"counted": counted, "length": length, "division": division, "pins": pins, "way": way}
        )
    return {"kind": kind, "unit": unit, "readings": readings}


def disagreements(page: Page, folder: str, counts: int, seed: int) -> list[dict]:
    """Answer random cases in both languages and give those that differ."""
    rng = Random(seed)
    cases = [random_case(rng) for _ in range(counts)]
    there = in_javascript(page, folder, cases)
    return [case for case, found in zip(cases, there, strict=True) if not same(figures_of(case), found)]
