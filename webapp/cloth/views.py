"""Views of cloth: the bench, and the gauge on it. None needs an account."""

from typing import Any

from flask import Blueprint, abort, jsonify, render_template, request
from marshmallow import ValidationError
from werkzeug.datastructures import MultiDict
from werkzeug.wrappers import Response

from webapp.accounts.guard import current_account
from webapp.cloth import schemas, uneven
from webapp.cloth.answer import KINDS, answer
from webapp.cloth.asking import Question, blank, question
from webapp.cloth.figures import figures
from webapp.cloth.fitting import fitting
from webapp.cloth.onward import onward
from webapp.cloth.saying import headline, sentences
from webapp.cloth.scale import scale
from webapp.cloth.standards import embedded, table
from webapp.cloth.typed import PARTS, read_back
from webapp.cloth.words import interval, metric, tenth

blueprint = Blueprint("cloth", __name__)

SHORT, LONG = 3, 9  # signs of a figure that may stand very large, and large
HEAD = ("answer", "verdict", "holes")  # said elsewhere on the page than the rest


@blueprint.get("/cloth")
def show() -> tuple[str, int]:
    """Show the bench, the gauge first, with what was typed into it."""
    return answered("cloth/show.html")


@blueprint.get("/cloth/gauge")
def gauge() -> tuple[str, int]:
    """Answer the gauge's form, or show it empty."""
    return answered("cloth/gauge.html")


@blueprint.get("/cloth/gauge.json")
def gauge_json() -> tuple[Response, int]:
    """Answer a script: squares or threads, length, unit; several of each for several places."""
    kind = "threads" if "threads" in request.args else "squares"
    if {"squares", "threads"} <= set(request.args):
        return jsonify(error="Give squares or threads, not both.", errors={}), 422
    asked = question({**request.args, "kind": kind}, columns(request.args, kind))
    if asked.wrong:
        errors = in_keys(asked, kind)
        return jsonify(error=next(iter(errors.values()))[0], errors=errors, perhaps=perhaps(asked)), 422
    return jsonify(figures(answer(asked.readings, kind, asked.unit, table()))), 200


@blueprint.get("/cloth/gauge/projects")
def projects() -> str:
    """Say which of her projects are on such a cloth, or would keep their size on it."""
    try:
        asked = schemas.MeasuredSchema().load(request.args)
    except ValidationError:
        abort(422, "The count to look for cannot be read. Measure again.")
    return render_template("cloth/_projects.html", **hers(asked["count"], asked["low"], asked["high"]))


def answered(template: str) -> tuple[str, int]:
    """Answer what the address asks, if it does, under the form's name for what was counted or a script's."""
    counted = next((name for name in ("counted", *KINDS) if name in request.args), None)
    if counted is None:
        return render_template(template, **drawn(blank(her_unit()))), 200
    kind = {"kind": counted} if counted in KINDS else {}
    asked = question({**request.args, **kind}, columns(request.args, counted))
    return render_template(template, **drawn(asked)), 422 if asked.wrong else 200


def her_unit() -> str:
    """Tell the unit she reads her tape in, inches where nobody said."""
    account = current_account()
    return account.unit if account else "in"


def columns(args: MultiDict[str, str], counted: str = "counted") -> list[list[str]]:
    """Take what was typed, line by line, out of the address."""
    return [args.getlist(name) for name in (counted, "length", "part", "way")]


def in_keys(asked: Question, kind: str) -> dict[str, list[str]]:
    """Gather what is wrong under the names a script used."""
    gathered = {kind if name == "counted" else name: said for name, said in asked.errors.items()}
    for line in asked.lines:
        for name, sentences_ in line.errors.items():
            gathered.setdefault(kind if name == "counted" else name, []).extend(sentences_)
    return gathered


def perhaps(asked: Question) -> list[dict[str, Any]]:
    """Gather what may have been meant by figures that no cloth can have."""
    offers = asked.doubted.offers if asked.doubted else []
    return [{"change": o.change, "count_per_inch": o.count, "sentence": o.sentence} for o in offers]


def drawn(asked: Question) -> dict[str, Any]:
    """Gather what the gauge's page shows."""
    values: dict[str, Any] = {"asked": asked, "parts": PARTS, "schemas": schemas, "embedded": embedded()}
    values["read_back"] = read_back
    if not asked.readings or asked.wrong:
        return values | {"said": None, "onward": {}}
    found = answer(asked.readings, asked.choices["kind"], asked.unit, table())
    measured = found.measured
    said_of_it = dict(sentences(found))
    left_out = ("hint", "over", "care") if asked.otherwise(said_of_it) else ()
    said = {
        "headline": (figure := headline(found)),
        "size": "" if len(figure[0]) <= SHORT else " long" if len(figure[0]) <= LONG else " longer",
        "measured": tenth(measured.count),
        "interval": interval(measured),
        "metric": uneven.across(found) if found.ways else f"{' to '.join(metric(measured))} per 10 cm",
        "scale": scale(measured, found.judged, found.across if found.ways else None),
        "verdict": said_of_it["verdict"],
        "holes": said_of_it["holes"],
        "more": [one for one in said_of_it.items() if one[0] not in (*HEAD, *left_out)],
    }
    values |= {"said": said, "onward": onward(found)}
    return values | {"measured": measured, **hers(measured.count, measured.low, measured.high)}


def hers(count: float, low: float | None, high: float | None) -> dict[str, Any]:
    """Gather which of her projects go with a cloth, if she is signed in."""
    account = current_account()
    found = fitting(account.id, count, low, high) if account else []
    return {"fitting": found, "unit": her_unit()}
