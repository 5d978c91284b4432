"""Views of a pasted or uploaded legend: looked over line by line, put right, and taken in at once."""

from collections.abc import Mapping
from contextlib import closing
from uuid import UUID, uuid5

from flask import redirect, render_template, request, url_for

from webapp.accounts.guard import signed_in
from webapp.db import commit_once, db
from webapp.forms import Errors, check_readable, load_form
from webapp.ids import new_id
from webapp.projects.models import Project
from webapp.projects.whose import hers
from webapp.threads import legend_preview
from webapp.threads.carried import carry
from webapp.threads.legend import MOST_LINES
from webapp.threads.legend_forms import pack, unpack
from webapp.threads.legend_kept import FULL, legend, line_of, take_in
from webapp.threads.legend_preview import HELD, Looked, corrected
from webapp.threads.legend_reads import FIELDS
from webapp.threads.legend_schemas import PasteSchema
from webapp.threads.legend_text import Unreadable, decode, rows
from webapp.threads.legend_views import Answer, blueprint
from webapp.threads.line_views import reader
from webapp.threads.tables import kinds

LARGEST = 20_000_000  # bytes: a hundred thousand lines are told that they are too many, and come back


@blueprint.get("/projects/<uuid:project_id>/thread/paste")
@signed_in
def paste(project_id: UUID) -> Answer:
    """Ask for a legend."""
    return asked(hers(project_id), "", {})


@blueprint.post("/projects/<uuid:project_id>/thread/paste")
@signed_in
def pasted(project_id: UUID) -> Answer:
    """Look a legend over; or, once it was looked over, take in what it comes to."""
    request.max_content_length = request.max_form_memory_size = LARGEST
    project = hers(project_id)
    check_readable()
    if "row" in request.form:
        return settled(project)
    text, file = request.form.get("text", ""), request.files.get("file")
    data = b""
    if file:
        with closing(file):
            data = file.read()
    try:
        given = rows(decode(data) if data and not text.strip() else text)
    except Unreadable as error:
        return asked(project, text, {"text": [str(error)]})
    return looked_over(project, legend_preview.begun(given.rows), {}, given.left_out)


def settled(project: Project) -> Answer:
    """Take in what was looked over, where all of it is understood; else, or to open a line, show it again."""
    values, errors = load_form(PasteSchema())
    left_away = set(request.form.getlist("leave"))
    typed = [
        corrected(unpack(text, HELD), request.form, n)
        for n, text in enumerate(request.form.getlist("row")[: MOST_LINES * 2])
        if str(n) not in left_away
    ]
    opened = request.form.get("open", "")
    lines = legend_preview.look(typed, reader(project), [line_of(row) for row in legend(project)])
    if errors or opened or not lines or any(one.line is None for one in lines):
        return looked_over(project, typed, errors, [], opened)
    taken = [(uuid5(values["batch"], str(one.n)), one.line) for one in lines if one.line]
    if not take_in(project, taken):
        db.session.rollback()
        return looked_over(hers(project.id), typed, {"batch": [FULL]}, [])
    carry(project)
    commit_once()
    return redirect(url_for(".show", project_id=project.id), 303)


def asked(project: Project, text: str, errors: Errors) -> tuple[str, int]:
    """Draw the form that a legend is pasted into."""
    page = render_template("threads/paste.html", project=project, text=text, errors=errors)
    return page, 422 if errors else 200


def looked_over(
    project: Project,
    typed: list[Mapping[str, str]] | list[dict[str, str]],
    errors: Errors,
    left_out: list[str],
    opened: str = "",
) -> tuple[str, int]:
    """Draw what a legend is understood as, what is not understood first."""
    lines = legend_preview.look(typed, reader(project), [line_of(row) for row in legend(project)])
    page = render_template(
        "threads/preview.html",
        project=project,
        looked=Looked(lines, left_out),
        packed=[pack(one.typed) for one in lines],
        opened=opened,
        fields=FIELDS,
        batch=str(new_id()) if errors else request.form.get("batch", str(new_id())),
        errors=errors,
        kinds=kinds(),
    )
    return page, 422 if errors or ("row" in request.form and not opened) else 200
