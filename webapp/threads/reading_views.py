"""Views of her own figure: what she measured on a project, each of it removable."""

from typing import Any
from uuid import UUID

from flask import abort, redirect, render_template, request, url_for

from webapp import clock
from webapp.accounts.guard import signed_in, stitcher
from webapp.cloth.typed import Mistyped
from webapp.db import add_once, commit_once, db
from webapp.forms import Errors, load_form, typed_again
from webapp.ids import new_id
from webapp.projects.models import Project
from webapp.projects.whose import hers
from webapp.threads import own, reading_reads
from webapp.threads.carried import carry
from webapp.threads.legend_kept import ground, legend, line_of
from webapp.threads.legend_needs import how_worked
from webapp.threads.legend_schemas import ReadingSchema
from webapp.threads.legend_views import Answer, blueprint
from webapp.threads.models import LegendLine, ThreadReading
from webapp.threads.own_figure import own_of, reading_of, readings
from webapp.threads.reading_saying import said
from webapp.threads.tables import kinds


@blueprint.get("/projects/<uuid:project_id>/thread/readings")
@signed_in
def measured(project_id: UUID) -> Answer:
    """Show what she measured, and ask for more."""
    return shown(hers(project_id), {})


@blueprint.post("/projects/<uuid:project_id>/thread/readings")
@signed_in
def measure(project_id: UUID) -> Answer:
    """Keep what she measured, once for each id."""
    project = hers(project_id)
    values, errors = load_form(ReadingSchema())
    row = next((one for one in legend(project) if one.id == values.get("line")), None)
    if row is None and "line" not in errors:
        errors["line"] = ["Choose the thread."]
    reading = None if row is None or errors else made(project, row, values, errors)
    if reading is None:
        return shown(project, errors), 422
    add_once(reading)
    db.session.flush()
    carry(project)
    commit_once()
    page = "running.show" if reading.what == "left" else ".measured"
    return redirect(url_for(page, project_id=project_id), 303)


@blueprint.post("/projects/<uuid:project_id>/thread/readings/<uuid:reading_id>/remove")
@signed_in
def forget(project_id: UUID, reading_id: UUID) -> Answer:
    """Take out what she measured."""
    project = hers(project_id)
    row = db.session.get(ThreadReading, (stitcher().id, project_id, reading_id)) or abort(404)
    db.session.delete(row)
    carry(project)
    db.session.commit()
    return redirect(url_for(".measured", project_id=project_id), 303)


def made(project: Project, row: LegendLine, values: dict[str, Any], errors: Errors) -> ThreadReading | None:
    """Make a reading of what was typed; None, and the sentences, where it cannot be meant."""
    line, kind = line_of(row), kinds()[row.parts[0]["kind"]]
    how, much, unit = how_worked(line, kinds())[0], request.form.get("much", "").strip(), stitcher().unit
    reading = ThreadReading(
        stitcher=project.stitcher,
        project=project.id,
        id=values.get("id") or new_id(),
        line=row.id,
        what=values["what"],
        stitches=None,
        length=0.0,
        strands=how.together if values["what"] == "length" else how.strands,
        method=how.method,
        made=clock.now(),
    )
    try:
        if reading.what == "length":
            reading.length = reading_reads.working(much, unit, how.working)
        elif reading.what == "skein":
            reading.length = reading_reads.used(much, kind)
        else:
            reading.length = reading_reads.left(much, kind, unit)
    except Mistyped as error:
        errors["much"] = [str(error)]
    if reading.what != "left":
        _counted(project, row, reading, errors)
    return None if errors else reading


def _counted(project: Project, row: LegendLine, reading: ThreadReading, errors: Errors) -> None:
    try:
        reading.stitches = reading_reads.crosses(request.form.get("stitches", "").strip())
        if "much" not in errors:
            own.ratio(reading_of(reading, row, project), ground(project))
    except ValueError as error:
        errors["stitches"] = [str(error)]


def shown(project: Project, errors: Errors) -> str:
    """Draw the page, what was typed still there."""
    rows = {row.id: row for row in legend(project)}
    unit = stitcher().unit
    typed = {name: request.form.get(name, "") for name in ("what", "stitches", "much", "line")}
    id = typed_again(errors).get("id") or str(new_id())
    return render_template(
        "threads/readings.html",
        project=project,
        lines=[(row.id, line_of(row)) for row in rows.values()],
        found=[(one, said(one, rows, kinds(), unit, stitcher().zone)) for one in readings(project)],
        own=own_of(project),
        values={**typed, "line": typed["line"] or request.args.get("line", ""), "id": id},
        opened=typed["what"] or request.args.get("what", "length"),
        errors=errors,
        unit=unit,
    )
