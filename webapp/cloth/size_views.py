"""Views of size and cut. Neither needs an account."""

from typing import Any

from flask import jsonify, render_template, request
from werkzeug.wrappers import Response

from webapp.cloth import reads, tables
from webapp.cloth.drawing import shapes
from webapp.cloth.reads import Asked
from webapp.cloth.size_answer import SIDES, answer
from webapp.cloth.size_asking import FIELDS, ask, begun, whole
from webapp.cloth.size_figures import figures
from webapp.cloth.size_saying import slots
from webapp.cloth.views import blueprint, her_unit


@blueprint.get("/cloth/size")
def size() -> tuple[str, int]:
    """Answer the form of size and cut, or show it empty."""
    asked = begun(typed())
    if asked.blank:
        asked.errors.clear()
    return render_template("cloth/size.html", **drawn(asked)), 422 if asked.errors else 200


@blueprint.get("/cloth/size.json")
def size_json() -> tuple[Response, int]:
    """Answer a script: width, height, count, over, margin (a side, in unit)."""
    asked = ask(typed())
    if asked.errors:
        errors = {
            "margin" if name == "own" and "margin" in request.args else name: [sentence]
            for name, sentence in asked.errors.items()
        }
        return jsonify(error=next(iter(errors.values()))[0], errors=errors), 422
    return jsonify(figures(answer(asked.values, trade()))), 200


def typed() -> dict[str, str]:
    """Give what the address asks, under the names of the form."""
    given = reads.named(request.args.to_dict())
    return {"unit": her_unit(), **{name: given[name] for name in FIELDS if name in given}}


def trade() -> dict[str, Any]:
    """Gather the tables of the trade, which the page embeds too."""
    return {name: tables.read(name) for name in ("margins", "needles", "strands", "hoops", "pieces")}


def drawn(asked: Asked) -> dict[str, Any]:
    """Gather what the page shows."""
    found = answer(asked.values, trade()) if whole(asked) else None
    return {
        "asked": asked,
        "reads": reads,
        "trade": trade(),
        "sides": [(f"{count:g}{' over two' if over == 2 else ''}", also) for count, over, also in SIDES],
        "said": slots(found) if found else {},
        "shapes": shapes(found) if found else {},
        "query": {name: text for name, text in asked.typed.items() if text.strip()},
    }
