"""Views of her reminders: when, how, and not tonight."""

from datetime import datetime, timedelta
from typing import Any

from flask import Blueprint, abort, current_app, jsonify, redirect, render_template, request, url_for
from werkzeug.wrappers import Response

from webapp import clock
from webapp.accounts.bringing import is_hers
from webapp.accounts.guard import current_session, signed_in, stitcher
from webapp.config import Config
from webapp.db import db
from webapp.forms import Errors, json_object, load_form
from webapp.journal import moments
from webapp.origin import origin_of_page
from webapp.reminders import choosing
from webapp.reminders.due import choices_of
from webapp.reminders.mail import can_post
from webapp.reminders.models import ReminderChoice
from webapp.reminders.phones import phones_of
from webapp.reminders.schedule import next_bedtime
from webapp.reminders.schemas import HOURS, ChoiceForm
from webapp.reminders.vapid import public_key

blueprint = Blueprint("choices", __name__, url_prefix="/reminders")

Answer = str | tuple[str, int] | Response
LONG_AGO = timedelta(days=3)  # an answer older than that is of no night any more
TONIGHT = {"leave": choosing.leave_it, "later": choosing.hear_again}


@blueprint.get("")
@signed_in
def show() -> Answer:
    """Show what she chose, and the ways."""
    return page()


@blueprint.post("")
@signed_in
def update() -> Answer:
    """Keep what she chose."""
    given, errors = load_form(ChoiceForm())
    if errors:
        return page(errors), 422
    stitcher().bedtime = given["bedtime"]
    choice = hers()
    for name in ("at_bedtime", "show_title", "away"):
        setattr(choice, name, given[name])
    choice.hours = int(given["hours"]) if given["hours"] else None
    db.session.commit()
    return redirect(url_for(".show", kept="yes"), 303)


@blueprint.post("/tonight")
@signed_in
def tonight() -> Answer:
    """Leave it tonight, or say it again in half an hour."""
    answer_tonight(request.form.get("answer"), clock.now())
    return redirect(url_for(".show"), 303)


@blueprint.post("/tonight.json")
@signed_in
def tonight_by_script() -> Answer:
    """The same, as the sheet of a notification asks; told late, it says when she answered."""
    given = json_object()
    if not is_hers(given.get("account"), stitcher().id):
        abort(409, "This answer is another stitcher's; it stays on the phone until she signs in.")
    answer_tonight(given.get("answer"), said_at(given.get("at")))
    return jsonify(answered=True)


def answer_tonight(answer: object, at: datetime) -> None:
    """Do what she answered."""
    act = TONIGHT.get(answer) if isinstance(answer, str) else None
    if act is None:
        abort(422, "Choose to leave it tonight, or to hear of it in half an hour.")
    act(stitcher(), hers(), at, clock.now())
    db.session.commit()


def said_at(at: object) -> datetime:
    """Read when she answered: now, if it is not said, or not yet."""
    if at is None:
        return clock.now()
    try:
        return min(max(moments.read(at), clock.now() - LONG_AGO), clock.now())
    except ValueError:
        abort(422, "When that was answered cannot be read. Answer again.")


@blueprint.post("/seen")
@signed_in
def seen() -> Answer:
    """She has seen which way failed."""
    hers().trouble = None
    db.session.commit()
    return redirect(url_for(".show"), 303)


@blueprint.get("/here")
@signed_in
def here() -> Answer:
    """Show what works on this phone, with something to try each by."""
    return render_template("reminders/here.html", key=public_key(settings().data))


def hers() -> ReminderChoice:
    """Find or begin her choices."""
    return choosing.own_choice(stitcher().id, origin_of_page(request) or request.host_url.rstrip("/"))


def settings() -> Config:
    """Give the house's settings."""
    found: Config = current_app.config["EVENROW"]
    return found


def page(errors: Errors | None = None, **more: Any) -> str:
    """Draw her reminders; where something is wrong, what she typed."""
    account, now = stitcher(), clock.now()
    choice = choosing.choice_of(account.id)
    session = current_session()
    rules = choices_of(account, choice)
    return render_template(
        "reminders/show.html",
        choice=choice,
        values=request.form if errors else values_of(account.bedtime.strftime("%H:%M"), choice),
        errors=errors or {},
        hours=HOURS,
        phones=phones_of(account.id, now),
        here=session and session.id,
        key=public_key(settings().data),
        is_left=choice is not None and choice.left == next_bedtime(now, rules)[0],
        can_post=can_post(settings()) and account.claimed,
        kept=request.args.get("kept"),
        **more,
    )


def values_of(bedtime: str, choice: ReminderChoice | None) -> dict[str, str]:
    """Give what she chose as her form has it."""
    if choice is None:
        return {"bedtime": bedtime, "at_bedtime": "yes"}
    return {
        "bedtime": bedtime,
        "at_bedtime": "yes" if choice.at_bedtime else "no",
        "hours": str(choice.hours or ""),
        "show_title": "yes" if choice.show_title else "no",
        "away": choice.away.isoformat() if choice.away else "",
    }
