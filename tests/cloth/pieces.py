"""A piece of cloth and cloth for a class, asked in both languages as they are typed."""

import json
from random import Random
from typing import Any

from playwright.sync_api import Page

from webapp.cloth import classroom, piece, piece_drawing
from webapp.cloth.reads import CHOICES, PARTED
from webapp.cloth.tables import read
from webapp.places import SHARED

VECTORS = json.loads((SHARED / "vectors" / "piece.json").read_text(encoding="utf-8"))["cases"]
STRAIGHTENED = 38.1  # mm

THERE = """async ([folder, tables, straightened, cases]) => {
  const [piece, drawing, classroom] = await Promise.all(
    ["piece", "piece_drawing", "classroom"].map((name) => import(`${folder}/${name}.js`)));
  return cases.map(([what, typed]) => {
    const asked = (what === "piece" ? piece : classroom).ask(typed);
    if (Object.keys(asked.errors).length) return { errors: asked.errors };
    if (what === "piece") {
      const shapes = drawing.shapes(asked, tables.margins);
      return { said: piece.slots(asked, tables), shapes, box: drawing.frame(shapes) };
    }
    const [box, cuts, left] = classroom.drawing(asked, tables);
    return { said: classroom.slots(asked, tables, straightened), box, cuts, left };
  });
}"""


def here(what: str, typed: dict[str, str]) -> dict[str, Any]:
    """Ask in Python, laid out as JSON gives it back."""
    asked = (piece.ask if what == "piece" else classroom.ask)(typed)
    tables = {name: read(name) for name in ("margins", "hoops")}
    if asked.errors:
        found: dict[str, Any] = {"errors": asked.errors}
    elif what == "piece":
        shapes = piece_drawing.shapes(asked, tables["margins"])
        found = {"said": piece.slots(asked, tables), "shapes": shapes, "box": piece_drawing.frame(shapes)}
    else:
        box, cuts, left = classroom.drawing(asked, tables)
        said = classroom.slots(asked, tables, STRAIGHTENED)
        found = {"said": said, "box": box, "cuts": cuts, "left": left}
    return json.loads(json.dumps(found))


def there(page: Page, folder: str, cases: list[tuple[str, dict[str, str]]]) -> list[dict[str, Any]]:
    """Ask in JavaScript."""
    tables = {name: read(name) for name in ("margins", "hoops")}
    return page.evaluate(THERE, [folder, tables, STRAIGHTENED, cases])


def random_case(rng: Random) -> tuple[str, dict[str, str]]:
    """Type a question at random, now and then one that cannot be read."""

    def length(least: int, most: int) -> str:
        whole = rng.randint(least, most)
        end = rng.choice(["", "", ".25", ",5", " 1/2", " 3/8", " cm", '"', "x"])
        return f"{whole}{end}"

    typed = {
        **{name: rng.choice(["", str(rng.randint(0, 400))]) for name in ("width", "height")},
        "count": rng.choice(["14", "16", "28", "32", "27,6", "13.72", "", "500"]),
        "across": rng.choice(["", "", "29", "x"]),
        **{name: length(3, 40) for name in ("piece_width", "piece_height", "cut_width", "cut_height")},
        "bolt_width": length(10, 70),
        **{f"{name}_part": rng.choice(["", "", "1/2", "15/16", "3/8", "2/4", "x"]) for name in PARTED},
        "own": rng.choice(["", "", "0", "2 1/4", "40 in"]),
        "n": rng.choice(["1", "7", "24", "200", "0", "two"]),
    }
    typed |= {name: rng.choice([*options, "x"]) for name, (options, _usual) in CHOICES.items()}
    return rng.choice(["piece", "class"]), typed


def disagreements(page: Page, folder: str, cases: int, seed: int) -> list[Any]:
    """Ask at random in both languages and give the questions whose answers differ, in any digit."""
    rng = Random(seed)
    asked = [random_case(rng) for _ in range(cases)]
    found = there(page, folder, asked)
    return [case for case, answer in zip(asked, found, strict=True) if here(*case) != answer]
