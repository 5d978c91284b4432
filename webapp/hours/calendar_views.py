"""Views of a month and of a year; each draws its part alone at a URL of its own."""

from collections.abc import Callable

from flask import Blueprint, abort, render_template, request

from webapp.accounts.guard import signed_in, stitcher
from webapp.accounts.models import Account
from webapp.fragments import render_block
from webapp.hours import looking_back, words
from webapp.hours.looking_back import Back
from webapp.hours.week import BadWeek

blueprint = Blueprint("calendar", __name__, url_prefix="/hours")
MONTH, YEAR = "hours/month.html", "hours/year.html"


@blueprint.get("/month")
@signed_in
def month() -> str:
    """Show a month."""
    return render_template(MONTH, back=_back(looking_back.month_of, "month"), words=words)


@blueprint.get("/month/part")
@signed_in
def month_part() -> str:
    """Draw the month alone."""
    return render_block(MONTH, "part", back=_back(looking_back.month_of, "month"), words=words)


@blueprint.get("/year")
@signed_in
def year() -> str:
    """Show a year."""
    return render_template(YEAR, back=_back(looking_back.year_of, "year"), words=words)


@blueprint.get("/year/part")
@signed_in
def year_part() -> str:
    """Draw the year alone."""
    return render_block(YEAR, "part", back=_back(looking_back.year_of, "year"), words=words)


def _back(look: Callable[[Account, str | None], Back], name: str) -> Back:
    try:
        return look(stitcher(), request.args.get(name))
    except BadWeek as error:
        abort(422, str(error))
