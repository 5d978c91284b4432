"""Views of a month and of a year; each draws its part alone at a URL of its own."""

from flask import Blueprint, abort, render_template, request

from webapp.accounts.guard import signed_in, stitcher
from webapp.fragments import render_block
from webapp.hours import looking_back, words
from webapp.hours.looking_back import Back
from webapp.hours.week import BadWeek

blueprint = Blueprint("calendar", __name__, url_prefix="/hours/<any(month, year):what>")
LOOKS = {"month": looking_back.month_of, "year": looking_back.year_of}


@blueprint.get("")
@signed_in
def show(what: str) -> str:
    """Show a month or a year."""
    return render_template(f"hours/{what}.html", back=_back(what), words=words)


@blueprint.get("/part")
@signed_in
def part(what: str) -> str:
    """Draw the month or the year alone."""
    return render_block(f"hours/{what}.html", "part", back=_back(what), words=words)


def _back(what: str) -> Back:
    try:
        return LOOKS[what](stitcher(), request.args.get(what))
    except BadWeek as error:
        abort(422, str(error))
