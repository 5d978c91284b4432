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
from webapp.reminders import choice_views, phone_views, way_views
from webapp.reminders.bedtime import Held, due, night_at
from webapp.reminders.choosing import choice_of
from webapp.reminders.due import choices_of
from webapp.reminders.frames import held
from webapp.reminders.schedule import is_quiet, night_of

blueprint = Blueprint("reminders", __name__)
for one in (choice_views, phone_views, way_views):
    blueprint.register_blueprint(one.blueprint)


@blueprint.app_context_processor
def tell_pages() -> dict[str, object]:
    """Let the banner ask, and only when it is drawn."""
    return {"frames_due": frames_due, "left_until": left_until, "trouble": trouble}


def frames_due() -> list[tuple[Held, str]]:
    """List what must be said to her who asks; by day it costs nothing, by night one statement."""
    account = current_account()
    if account is None:
        return []
    moment, zone = clock.now(), ZoneInfo(account.zone)
    if night_at(moment, account.bedtime, zone) is None or left_until():
        return []
    return due(held(account.id), moment, account.bedtime, zone)


def left_until() -> int | None:
    """Tell until when she wants no word of tonight (ms), if she does; pages are as quiet as pushes."""
    account = current_account()
    if account is None:
        return None
    rules = choices_of(account, choice_of(account.id))
    night = night_at(clock.now(), account.bedtime, rules.zone)
    if night is None or not is_quiet(night_of(night[0], rules.zone), rules):
        return None
    return int(night[1].timestamp() * 1000)


def trouble() -> str | None:
    """Say which way failed her, until she has seen it."""
    account = current_account()
    choice = choice_of(account.id) if account else None
    return choice.trouble if choice else None


@blueprint.get("/shell/tonight")
def sheet() -> str:
    """Draw what a notification opens, with nobody's values: the phone fills it, network or not."""
    return render_template("reminders/tonight.html", account=None)


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
