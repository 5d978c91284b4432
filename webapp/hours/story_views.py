"""Views of a project's story, and of its photographs."""

from collections.abc import Mapping
from uuid import UUID

from flask import Blueprint, abort, redirect, render_template, send_file, url_for
from werkzeug.wrappers import Response

from webapp.accounts.guard import forget, signed_in, signed_in_reading, stitcher
from webapp.db import begin_writing, db
from webapp.forms import Errors
from webapp.hours import photographs, words
from webapp.hours.models import Photograph
from webapp.hours.sent import sent_photograph
from webapp.hours.story import story_of
from webapp.ids import new_id
from webapp.projects.models import Project
from webapp.projects.whose import hers

blueprint = Blueprint("story", __name__, url_prefix="/projects/<uuid:project>")

Answer = str | tuple[str, int] | Response


@blueprint.get("/story")
@signed_in
def show(project: UUID) -> Answer:
    """Show the whole story."""
    return _page(hers(project), {}, {})


@blueprint.post("/photographs")
@signed_in_reading
def create(project: UUID) -> Answer:
    """Keep a photograph: decoded and scaled before the writer's turn, which others wait for."""
    work, sent = hers(project), sent_photograph()
    if sent.errors or sent.picture is None:
        return _page(work, sent.errors or {"photograph": ["Choose a picture."]}, sent.typed), sent.status
    begin_writing()
    forget()
    photographs.keep(stitcher().id, project, sent.values["once"], sent.picture, sent.values["line"])
    db.session.commit()
    return redirect(url_for(".show", project=project), 303)


@blueprint.get("/photographs/<uuid:photograph>.jpg")
@signed_in
def picture(project: UUID, photograph: UUID) -> Response:
    """Give a photograph to whom it belongs."""
    answer = send_file(photographs.path_of(_photograph(project, photograph)), "image/jpeg")
    answer.headers["Cache-Control"] = "private, max-age=31536000, immutable"
    return answer


@blueprint.post("/photographs/<uuid:photograph>/away")
@signed_in
def destroy(project: UUID, photograph: UUID) -> Answer:
    """Delete a photograph."""
    photographs.part_with(_photograph(project, photograph))
    db.session.commit()
    return redirect(url_for(".show", project=project), 303)


def _photograph(project: UUID, photograph: UUID) -> Photograph:
    return db.session.get(Photograph, (stitcher().id, project, photograph)) or abort(404)


def _page(project: Project, errors: Errors, typed: Mapping[str, str]) -> str:
    story = story_of(stitcher(), project)
    return render_template(
        "hours/story.html", story=story, errors=errors, typed=typed, once=new_id(), words=words
    )
