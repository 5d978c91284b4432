"""The page of size and cut asked in both languages, as it is typed."""

import json
from random import Random
from typing import Any

from playwright.sync_api import Page

from webapp.cloth import reads
from webapp.cloth.drawing import shapes
from webapp.cloth.size_answer import answer
from webapp.cloth.size_asking import ask
from webapp.cloth.size_saying import slots
from webapp.cloth.size_views import trade
from webapp.places import SHARED

VECTORS = json.loads((SHARED / "vectors" / "size_page.json").read_text(encoding="utf-8"))["cases"]

THERE = """async ([folder, tables, cases]) => {
  const [{ ask }, { answer }, { slots }, { shapes }] = await Promise.all(
    ["size_asking", "size_answer", "size_saying", "drawing"].map((name) => import(`${folder}/${name}.js`)));
  return cases.map((typed) => {
    const { values, errors } = ask(typed);
    if (Object.keys(errors).length) return { errors };
    const found = answer(values, tables);
    return { slots: slots(found), shapes: shapes(found) };
  });
}"""


def here(typed: dict[str, str]) -> dict[str, Any]:
    asked = ask(typed)
    if asked.errors:
        return {"errors": asked.errors}
    found = answer(asked.values, trade())
    return json.loads(json.dumps({"slots": slots(found), "shapes": shapes(found)}))


def there(page: Page, folder: str, cases: list[dict[str, str]]) -> list[Any]:
    return page.evaluate(THERE, [folder, trade(), cases])


def random_typed(rng: Random) -> dict[str, str]:
    """Type something, now and then what cannot be meant."""
    count = rng.choice(["11", "14", "16", "18", "28", "32", "36", "27.5", f"{rng.uniform(1, 60):.2f}"])
    own = rng.choice(["", "", "2", "2 1/4", "2½", "5 cm", "3,5", f"{rng.uniform(0, 9):.2f}", "-1", "wide"])
    return {
        "width": rng.choice([str(rng.randint(1, 700)), "0", "12,5"] if rng.random() < 0.1 else ["140"]),
        "height": str(rng.randint(1, 700)),
        "count": count if rng.random() < 0.95 else rng.choice(["500", "0", "<b>", ""]),
        "across": rng.choice(["", "", f"{float(count) * rng.uniform(0.9, 1.1):.1f}"]),
        "over": rng.choice(["1", "2"]),
        "finish": rng.choice(reads.FINISHES)[0],
        "held": rng.choice(reads.HELD)[0],
        "frays": rng.choice(["", "yes"]),
        "own": own,
        "unit": rng.choice(["in", "cm"]),
    }


def disagreements(page: Page, folder: str, cases: int, seed: int) -> list[dict[str, str]]:
    """Ask at random in both languages; give what was typed where anything differs, in any digit."""
    rng = Random(seed)
    typed = [random_typed(rng) for _ in range(cases)]
    found = there(page, folder, typed)
    return [one for one, answer_ in zip(typed, found, strict=True) if here(one) != answer_]
