"""Views of where she stopped: said as a project is put to rest, and given to Stitch after a long absence."""

from uuid import UUID

from flask import Blueprint, Response, abort, jsonify, redirect, render_template, request, url_for
from werkzeug.wrappers import Response as Plain

from webapp.accounts.guard import forget, signed_in, signed_in_reading, stitcher
from webapp.db import begin_writing, db
from webapp.forms import Errors, load_form
from webapp.hours import photographs, stopped
from webapp.hours.schemas import PhotographSchema
from webapp.hours.sent import sent_picture
from webapp.ids import new_id
from webapp.projects.models import Project

blueprint = Blueprint("stopped", __name__, url_prefix="/projects/<uuid:project>")

Answer = str | tuple[str, int] | Plain


@blueprint.get("/stopped")
@signed_in
def show(project: UUID) -> Answer:
    """Ask where she stopped."""
    return _page(_hers(project), {})


@blueprint.post("/stopped")
@signed_in_reading
def create(project: UUID) -> Answer:
    """Keep a line, a photograph, or both."""
    hers = _hers(project)
    picture, errors = sent_picture()
    values, wrong = load_form(PhotographSchema())
    errors |= wrong
    if not errors and picture is None and not values["line"]:
        errors = {"line": ["Write a line, or take a photograph."]}
    if errors:
        return _page(hers, errors), 422
    begin_writing()
    forget()
    if values["line"]:
        stopped.write_line(stitcher().id, project, values["line"], values["once"])
    if picture:
        photographs.keep(stitcher().id, project, values["once"], picture, values["line"])
    db.session.commit()
    return redirect(url_for("projects.show", project_id=project), 303)


@blueprint.get("/stopped.json")
@signed_in
def helps(project: UUID) -> Response:
    """Give what helps her back in after a long absence."""
    return jsonify(stopped.helps(_hers(project)))


def _hers(project: UUID) -> Project:
    return db.session.get(Project, (stitcher().id, project)) or abort(404)


def _page(project: Project, errors: Errors) -> str:
    typed = request.form if errors else {}
    return render_template("hours/stopped.html", project=project, errors=errors, typed=typed, once=new_id())
