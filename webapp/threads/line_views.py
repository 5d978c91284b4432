"""Views of one line of a legend: added, changed, moved, removed."""

from collections.abc import Mapping
from typing import Any
from uuid import UUID

from flask import abort, redirect, render_template, request, url_for

from webapp.accounts.guard import signed_in, stitcher
from webapp.db import commit_once, db
from webapp.forms import Errors, check_readable, load_form, typed_again
from webapp.ids import new_id
from webapp.projects.models import Project
from webapp.projects.whose import hers
from webapp.threads import legend_saying
from webapp.threads.carried import carry
from webapp.threads.legend_forms import blank, changed, form_of, pack, picked, unpack
from webapp.threads.legend_kept import FULL, add, ground, legend, line_of, move, put, usual
from webapp.threads.legend_needs import needs
from webapp.threads.legend_reads import ENDS, FIELDS, Read, read
from webapp.threads.legend_schemas import LineSchema, MoveSchema
from webapp.threads.legend_views import Answer, blueprint
from webapp.threads.models import LegendLine
from webapp.threads.own_figure import own_of
from webapp.threads.tables import kinds


@blueprint.get("/projects/<uuid:project_id>/thread/lines/new")
@signed_in
def new_line(project_id: UUID) -> Answer:
    """Ask for a line."""
    return asked(hers(project_id), {**blank(), "id": str(new_id())}, {})


@blueprint.post("/projects/<uuid:project_id>/thread/lines")
@signed_in
def create_line(project_id: UUID) -> Answer:
    """Add a line, once for each id; and ask for another, if she goes on."""
    project = hers(project_id)
    values, errors = load_form(LineSchema())
    line, wrong = reader(project)(picked(request.form))
    if errors or line is None:
        return asked(project, typed_again(errors), errors | wrong)
    if add(project, line, values.get("id") or new_id(), legend(project)) is None:
        return asked(project, typed_again({}), {"id": [FULL]})
    carry(project)
    commit_once()
    page = ".new_line" if values["again"] else ".show"
    return redirect(url_for(page, project_id=project_id), 303)


@blueprint.get("/projects/<uuid:project_id>/thread/lines/<uuid:line_id>")
@signed_in
def edit_line(project_id: UUID, line_id: UUID) -> Answer:
    """Ask what to change of a line."""
    project, row = hers(project_id), its(project_id, line_id)
    return asked(project, form_of(line_of(row), stitcher().unit), {}, row)


@blueprint.post("/projects/<uuid:project_id>/thread/lines/<uuid:line_id>")
@signed_in
def update_line(project_id: UUID, line_id: UUID) -> Answer:
    """Change what she changed of a line; what another phone changed meanwhile stays."""
    project, row = hers(project_id), its(project_id, line_id)
    check_readable()
    now = form_of(line_of(row), stitcher().unit)
    was = unpack(request.form["was"]) if "was" in request.form else now
    typed = now | changed(request.form, dict.fromkeys(FIELDS, "") | was)
    line, errors = reader(project)(picked(typed))
    if line is None:
        return asked(project, typed | {"was": request.form.get("was", "")}, errors, row)
    put(row, line)
    carry(project)
    db.session.commit()
    return redirect(url_for(".show", project_id=project_id, _anchor=f"line-{row.id}"), 303)


@blueprint.post("/projects/<uuid:project_id>/thread/lines/<uuid:line_id>/move")
@signed_in
def move_line(project_id: UUID, line_id: UUID) -> Answer:
    """Move a line up or down by one."""
    project, row = hers(project_id), its(project_id, line_id)
    values, errors = load_form(MoveSchema())
    if errors:
        return asked(project, form_of(line_of(row), stitcher().unit), {"id": errors["way"]}, row)
    move(project, row, values["way"])
    carry(project)
    db.session.commit()
    return redirect(url_for(".edit_line", project_id=project_id, line_id=line_id), 303)


@blueprint.post("/projects/<uuid:project_id>/thread/lines/<uuid:line_id>/remove")
@signed_in
def remove_line(project_id: UUID, line_id: UUID) -> Answer:
    """Take a line out of the legend; what was stitched with it stays in the journal."""
    project, row = hers(project_id), its(project_id, line_id)
    db.session.delete(row)
    carry(project)
    db.session.commit()
    return redirect(url_for(".show", project_id=project_id), 303)


def its(project_id: UUID, line_id: UUID) -> LegendLine:
    """Load a line of a project of hers."""
    return db.session.get(LegendLine, (stitcher().id, project_id, line_id)) or abort(404)


def reader(project: Project) -> Any:
    """Give what reads a line for a project's cloth."""
    unit = stitcher().unit

    def one(typed: Mapping[str, str]) -> Read:
        return read(typed, kinds(), lambda kind: usual(project, kind), unit)

    return one


def asked(
    project: Project, values: Mapping[str, Any], errors: Errors, row: LegendLine | None = None
) -> tuple[str, int]:
    """Draw the form of a line, with the cursor in the first field that is wrong."""
    rows = legend(project)
    there = [end for end in ENDS[1:] if values.get(f"thread{end}")]
    ends = ["", *there, *[end for end in ENDS[1:] if end not in there][:1]]
    page = render_template(
        "threads/line.html",
        project=project,
        row=row,
        name=line_of(row).used if row else "",
        at=rows.index(row) + 1 if row in rows else None,
        of=len(rows),
        values=values,
        was=values.get("was") or pack({name: values.get(name, "") for name in FIELDS}),
        errors=errors,
        wrong=next((name for name in FIELDS if name in errors), None),
        ends=ends,
        blend=bool(there) or any(name.endswith(tuple(ENDS[1:])) for name in errors),
        kind_options=[("", "By its name"), *((key, one["name"]) for key, one in kinds().items())],
        usual=usual(project, "cotton"),
        takes=takes(project, row) if row else [],
    )
    return page, 422 if errors else 200


def takes(project: Project, row: LegendLine) -> list[dict[str, str]]:
    """Say what each thread of a line takes."""
    unit, found = stitcher().unit, needs(line_of(row), ground(project), kinds(), own_of(project))
    return [
        {
            "name": one.part.used,
            "units": legend_saying.need(one, kinds()),
            "more": legend_saying.length(one, kinds(), unit),
        }
        for one in found
    ]
