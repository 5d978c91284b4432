"""Views of hours: the week, and the same figures for programs."""

from flask import Blueprint, Response, abort, jsonify, render_template, request

from webapp.accounts.guard import signed_in, stitcher
from webapp.fragments import render_block
from webapp.hours import calendar_views, out_views, sitting_views, stopped_views, story_views, words
from webapp.hours.exported import as_figures
from webapp.hours.report import Report, report_on
from webapp.hours.week import BadWeek

blueprint = Blueprint("hours", __name__)
for part in (sitting_views, calendar_views, out_views, story_views, stopped_views):
    blueprint.register_blueprint(part.blueprint)


@blueprint.get("/hours")
@signed_in
def index() -> str:
    """Show a week."""
    return render_template("hours/page.html", report=_report(), words=words)


@blueprint.get("/hours/week")
@signed_in
def week() -> str:
    """Draw the week alone."""
    return render_block("hours/page.html", "week", report=_report(), words=words)


@blueprint.get("/hours.json")
@signed_in
def figures() -> Response:
    """Give a week's figures."""
    return jsonify(as_figures(_report()))


def _report() -> Report:
    try:
        return report_on(stitcher(), request.args.get("week"))
    except BadWeek as error:
        abort(422, str(error))
