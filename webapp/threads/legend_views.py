"""Views of a project's legend: the page, CSV, and the figures for scripts."""

from typing import Any
from uuid import UUID

from flask import Blueprint, Response, jsonify, redirect, render_template, request, url_for
from werkzeug.wrappers import Response as BaseResponse

from webapp.accounts.guard import signed_in, stitcher
from webapp.db import db
from webapp.forms import Errors, load_form
from webapp.projects.models import Project
from webapp.projects.whose import hers
from webapp.threads import legend_csv, legend_saying
from webapp.threads.legend import totals
from webapp.threads.legend_figures import figures
from webapp.threads.legend_kept import ground, legend, line_of
from webapp.threads.legend_needs import bought, needs
from webapp.threads.legend_schemas import ChartSchema
from webapp.threads.own_figure import own_of
from webapp.threads.tables import kinds

blueprint = Blueprint("legend", __name__)
Answer = str | tuple[str, int] | BaseResponse


@blueprint.app_context_processor
def give_words() -> dict[str, Any]:
    """Give the templates what says a line in words."""
    return {"legend_saying": legend_saying}


@blueprint.get("/projects/<uuid:project_id>/thread")
@signed_in
def show(project_id: UUID) -> Answer:
    """Show a legend."""
    return shown(hers(project_id))


@blueprint.post("/projects/<uuid:project_id>/thread")
@signed_in
def update(project_id: UUID) -> Answer:
    """Write down what the chart prints as its total, or take that out."""
    project = hers(project_id)
    values, errors = load_form(ChartSchema())
    if errors:
        return shown(project, errors), 422
    if "chart_total" in request.form:
        project.chart_total = values["chart_total"]
        db.session.commit()
    return redirect(url_for(".show", project_id=project_id), 303)


@blueprint.get("/projects/<uuid:project_id>/thread.csv")
@signed_in
def table(project_id: UUID) -> Answer:
    """Hand a legend out as CSV."""
    project = hers(project_id)
    body = legend_csv.write([line_of(row) for row in legend(project)], kinds())
    response = Response(body, mimetype="text/csv")
    response.headers["Content-Disposition"] = 'attachment; filename="legend.csv"'
    return response


@blueprint.get("/projects/<uuid:project_id>/thread.json")
@signed_in
def figures_json(project_id: UUID) -> Answer:
    """Answer a script."""
    worked = worked_out(hers(project_id))
    told = ("project", "rows", "unit", "to_buy")
    return jsonify(figures(**{name: value for name, value in worked.items() if name not in told}))


def worked_out(project: Project) -> dict[str, Any]:
    """Work out everything that is shown of a legend."""
    rows, on, own = legend(project), ground(project), own_of(project)
    lines = [line_of(row) for row in rows]
    found = [needs(line, on, kinds(), own) for line in lines]
    buy = bought(found, kinds())
    return {
        "project": project,
        "rows": rows,
        "lines": [(row.key, line, need) for row, line, need in zip(rows, lines, found, strict=True)],
        "ground": on,
        "own": own,
        "totals": totals(lines, project.chart_total),
        "bought": buy,
        "to_buy": legend_saying.to_buy(buy),
        "kinds": kinds(),
        "unit": stitcher().unit,
    }


def shown(project: Project, errors: Errors | None = None) -> str:
    """Draw the page of a legend."""
    typed = {"chart_total": project.chart_total or ""} | (dict(request.form) if errors else {})
    return render_template("threads/legend.html", errors=errors or {}, values=typed, **worked_out(project))
