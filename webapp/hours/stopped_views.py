"""Views of where she stopped: said as a project is put to rest, and given to Stitch after a long absence."""

from collections.abc import Mapping
from uuid import UUID

from flask import Blueprint, Response, jsonify, redirect, render_template, url_for
from werkzeug.wrappers import Response as Plain

from webapp.accounts.guard import forget, signed_in, signed_in_reading, stitcher
from webapp.db import begin_writing, db
from webapp.forms import Errors
from webapp.hours import photographs, stopped
from webapp.hours.sent import sent_photograph
from webapp.ids import new_id
from webapp.journal.batch import Refused
from webapp.projects.models import Project
from webapp.projects.whose import hers

blueprint = Blueprint("stopped", __name__, url_prefix="/projects/<uuid:project>")

NOT_OURS = "This form is not ours any more. Write it here once more."

Answer = str | tuple[str, int] | Plain


@blueprint.get("/stopped")
@signed_in
def show(project: UUID) -> Answer:
    """Ask where she stopped."""
    return _page(hers(project), {}, {})


@blueprint.post("/stopped")
@signed_in_reading
def create(project: UUID) -> Answer:
    """Keep a line, a photograph, or both."""
    work, sent = hers(project), sent_photograph()
    errors, line, once = sent.errors, sent.values.get("line"), sent.values.get("once")
    if not errors and sent.picture is None and not line:
        errors = {"line": ["Write a line, or take a photograph."]}
    if errors or once is None:
        return _page(work, errors, sent.typed), sent.status
    begin_writing()
    forget()
    try:
        if line:
            stopped.write_line(stitcher().id, project, line, once)
    except Refused:
        db.session.rollback()
        return _page(work, {"line": [NOT_OURS]}, sent.typed), 422
    if sent.picture:
        photographs.keep(stitcher().id, project, once, sent.picture, line or "")
    db.session.commit()
    return redirect(url_for("projects.show", project_id=project), 303)


@blueprint.get("/stopped.json")
@signed_in
def helps(project: UUID) -> Response:
    """Give what helps her back in after a long absence."""
    return jsonify(stopped.helps(hers(project)))


def _page(project: Project, errors: Errors, typed: Mapping[str, str]) -> str:
    return render_template("hours/stopped.html", project=project, errors=errors, typed=typed, once=new_id())
