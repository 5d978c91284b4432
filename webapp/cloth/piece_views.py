"""Views of a piece of cloth and of cloth for a class. Neither needs an account."""

from typing import Any

from flask import abort, render_template, request

from webapp.accounts.guard import current_account
from webapp.cloth import class_threads, piece_drawing, reads
from webapp.cloth import classroom as subject
from webapp.cloth import piece as laid
from webapp.cloth.bounds import INCH
from webapp.cloth.lengths import area, laid_area
from webapp.cloth.reads import Asked
from webapp.cloth.stash import fitting_projects, search
from webapp.cloth.tables import read
from webapp.cloth.views import blueprint, her_unit
from webapp.threads.tables import kinds

CARRIED = ("width", "height", "count", "across", "over", "finish", "held", "frays", "own", "unit")
SIZES = ("piece_width", "piece_height", "bolt_width", "cut_width", "cut_height")
Page = tuple[str, int]


@blueprint.get("/cloth/piece")
def piece() -> Page:
    """Say what this piece takes, or ask for it."""
    asked = of(laid.ask, ("piece_width", "piece_height"))
    values = {"asked": asked, "reads": reads, "piece": laid, "tables": tables(), "said": None}
    if is_answered(asked):
        drawn = piece_drawing.shapes(asked, read("margins"))
        values |= {
            "said": laid.slots(asked, tables()),
            "drawn": drawn,
            "box": piece_drawing.frame(drawn),
        }
        values |= hers(asked)
    shown = values | {"sold": sold(asked.values["unit"]), "carried": carried(asked)}
    return render_template("cloth/piece.html", **shown), 422 if asked.errors else 200


@blueprint.get("/cloth/piece/hers")
def piece_hers() -> str:
    """Say which of her projects go on this piece, and which cloth of hers takes the design."""
    asked = laid.ask(reads.named(request.args.to_dict()))
    if asked.errors:
        abort(422, next(iter(asked.errors.values())))
    return render_template("cloth/_piece_hers.html", asked=asked, **hers(asked))


@blueprint.get("/cloth/class")
def classroom() -> Page:
    """Say how much cloth a class needs, or ask for how many of what."""
    asked = of(subject.ask, ("n", *SIZES))
    values: dict[str, Any] = {"asked": asked, "reads": reads, "tables": class_tables(), "said": None}
    values |= {"cuts": [], "left": [], "rows": []}
    if is_answered(asked):
        values["said"] = subject.slots(asked, tables(), straightened())
        values["said"] |= class_threads.texts(asked.values, class_tables())
        values["rows"] = class_threads.rows(asked.values, class_tables()["threads"])
        values["box"], values["cuts"], values["left"] = subject.drawing(asked, tables())
    page = render_template("cloth/class.html", bolts=bolts(), **values)
    return page, 422 if asked.errors else 200


def of(ask: Any, telling: tuple[str, ...]) -> Asked:
    """Read the question; while none of the fields that tell it is filled in, it is still being asked."""
    given = {"count": "14", "unit": her_unit(), **reads.named(request.args.to_dict())}
    if any(given.get(name, "").strip() for name in telling):
        asked: Asked = ask(given)
        return asked
    kept = {name: text if name == "threads" else text[: reads.KEPT] for name, text in given.items()}
    return Asked(kept, dict(reads.choices(given)))


def is_answered(asked: Asked) -> bool:
    """Tell whether there is an answer to show."""
    return len(asked.values) > len(reads.CHOICES) and not asked.errors


def hers(asked: Asked) -> dict[str, Any]:
    """Gather which of her projects go on the piece, and which of her cloths take the design."""
    account = current_account()
    if account is None:
        return {"projects": [], "found": []}
    side = laid.margin_of(asked.values, read("margins"))
    values = asked.values
    found = search(account.id, values["width"], values["height"], side) if values["width"] else []
    projects = fitting_projects(account.id, asked.values)
    return {"projects": projects, "found": found, "area": area, "unit": values["unit"]}


def tables() -> dict[str, Any]:
    """Give the tables that the page's script reads."""
    return {"margins": read("margins"), "hoops": read("hoops"), "straightened": straightened()}


def class_tables() -> dict[str, Any]:
    """Give the tables that the script of cloth for a class reads, which has threads and needles besides."""
    return {**tables(), "needles": read("needles"), "threads": kinds()}


def straightened() -> float:
    """Give what is lost in straightening an edge, mm."""
    inches: float = read("pieces")["straightening"]["inches"]
    return inches * INCH


def sold(unit: str) -> list[tuple[str, str, dict[str, str]]]:
    """List pieces as they are sold: name, size in words, what to fill in."""
    return [
        (
            row["name"].capitalize(),
            laid_area(row["width"] * INCH, row["height"] * INCH, unit),
            {
                "piece_width": f"{row['width']} in",
                "piece_height": f"{row['height']} in",
                "piece_width_part": "",
                "piece_height_part": "",
            },
        )
        for row in read("pieces")["pieces"]
    ]


def bolts() -> list[tuple[str, str, dict[str, str]]]:
    """List the widths of bolts as they are sold."""
    widths = [f"{inches} in" for inches in read("pieces")["bolts"]["inches"]]
    return [(width, "", {"bolt_width": width, "bolt_width_part": ""}) for width in widths]


def carried(asked: Asked) -> dict[str, str]:
    """Give the figures that go along to another page."""
    return {name: asked.typed[name] for name in CARRIED if asked.typed.get(name, "").strip()}
