"""Views of reminders: the notice above every page, and its answer where the phone cannot give it."""

from uuid import UUID
from zoneinfo import ZoneInfo

from flask import Blueprint, abort, redirect, render_template, request
from werkzeug.wrappers import Response

from webapp import clock
from webapp.accounts.guard import current_account, signed_in, stitcher
from webapp.accounts.returning import path_of
from webapp.db import db
from webapp.journal.batch import write_down
from webapp.projects.models import Project
from webapp.reminders.bedtime import Held, due, night_at
from webapp.reminders.frames import held

blueprint = Blueprint("reminders", __name__)


@blueprint.app_context_processor
def tell_pages() -> dict[str, object]:
    """Let the banner ask, and only when it is drawn."""
    return {"frames_due": frames_due}


def frames_due() -> list[tuple[Held, str]]:
    """List what must be said to her who asks; by day it costs nothing, by night one statement."""
    account = current_account()
    if account is None:
        return []
    moment, zone = clock.now(), ZoneInfo(account.zone)
    if night_at(moment, account.bedtime, zone) is None:
        return []
    return due(held(account.id), moment, account.bedtime, zone)


@blueprint.get("/frame/banner")
def banner() -> str:
    """Draw the notices alone; none to one who is signed out, as nobody is led away by a question of ours."""
    return render_template("reminders/_notices.html")


@blueprint.post("/frame/<uuid:project>")
@signed_in
def update(project: UUID) -> Response:
    """Say how the work is held now."""
    if db.session.get(Project, (stitcher().id, project)) is None:
        abort(404)
    state = request.form.get("state")
    if state not in ("on", "slack", "off"):
        abort(422, "The frame can be on, slack or off. Go back and choose one of them.")
    write_down(stitcher().id, project, [{"kind": "frame", "state": state}])
    db.session.commit()
    return redirect(path_of(request.referrer, request.host), 303)
