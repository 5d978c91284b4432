"""Views of the phones that take reminders: turned on by a script of the phone's own, off by any of hers."""

from datetime import timedelta
from uuid import UUID

from flask import Blueprint, Response, abort, jsonify, redirect, url_for
from sqlalchemy import select
from werkzeug.wrappers import Response as BaseResponse

from webapp import clock
from webapp.accounts.guard import current_session, signed_in, stitcher
from webapp.accounts.models import SignedIn
from webapp.db import db, end_writing, writing
from webapp.forms import json_object
from webapp.reminders import results
from webapp.reminders.choice_views import hers, settings
from webapp.reminders.choosing import take_trial
from webapp.reminders.endpoints import Where
from webapp.reminders.models import PushPhone
from webapp.reminders.phones import CannotTake, House, take, was_on
from webapp.reminders.push import Outcome, Push
from webapp.reminders.sending import to_phone
from webapp.reminders.vapid import public_key

blueprint = Blueprint("phones", __name__, url_prefix="/reminders")

TRIAL = {"title": "This is how a reminder looks.", "body": "", "tag": "trial", "open": "/reminders"}
LASTS = timedelta(minutes=2)
OFTEN = "One trial a minute. Wait a little, then try again."
NOT_ON = "Reminders are not on on this phone. Turn them on first."
SAID = {
    "taken": "Sent. It shows in a few seconds.",
    "gone": "This phone's push service does not know it any more. Turn reminders off and on again.",
    "old key": "The house has another key by now. Turn reminders off and on again.",
    "later": "The push service does not answer just now. Try again in a while.",
    "refused": "The push service would not take it. Turn reminders off and on again.",
}


@blueprint.get("/phones.json")
@signed_in
def show() -> Response:
    """Tell a phone the house's key, and whether reminders are on on it."""
    phone = this_phone()
    return jsonify(key=public_key(settings().data), on=phone is not None, **about(phone))


@blueprint.post("/phones.json")
@signed_in
def create() -> Response:
    """Turn reminders on on this phone, once however often it asks; ``again``: if they were on before."""
    asked = json_object()
    if asked.get("again") is True and not was_on(stitcher().id, asked.get("endpoint")):
        return jsonify(id=None)
    config, choice = settings(), hers()
    house = House(Where.of(config.push_services), public_key(config.data), choice.origin, clock.now())
    try:
        phone = take(session(), asked, house)
    except CannotTake as error:
        abort(422, str(error))
    answer = jsonify(id=str(phone.id))
    db.session.commit()
    return answer


@blueprint.post("/phones/<uuid:phone_id>/end")
@signed_in
def end(phone_id: UUID) -> BaseResponse:
    """Turn reminders off on a phone of hers."""
    phone = db.session.get(PushPhone, (stitcher().id, phone_id))
    if phone is None:
        abort(404)
    db.session.delete(phone)
    db.session.commit()
    return redirect(url_for("reminders.choices.show"), 303)


@blueprint.post("/trial.json")
@signed_in
def trial() -> Response:
    """Send this phone a trial; the writer's turn is given back before anything is sent."""
    now, phone = clock.now(), this_phone()
    if phone is None:
        abort(422, NOT_ON)
    if not take_trial(phone.stitcher, now):
        abort(429, OFTEN)
    send = to_phone(settings(), phone, Push(TRIAL, "trial", now + LASTS), now)
    of = (phone.stitcher, str(phone.id))
    db.session.commit()
    end_writing()
    outcome = send()
    with writing():
        note(of, outcome)
        db.session.commit()
    if outcome.what != "taken":
        abort(502, SAID.get(outcome.what, SAID["refused"]))
    return jsonify(said=SAID["taken"])


def note(of: tuple[UUID, str], outcome: Outcome) -> None:
    """Note what a trial found out: a phone that works, or is gone."""
    if outcome.what == "taken":
        results.reached(*of, clock.now())
    elif outcome.what == "gone":
        results.gone(*of)


def about(phone: PushPhone | None) -> dict[str, str]:
    """Give by what a phone is known, and the key it told: of a later one we may not have heard."""
    return {"id": str(phone.id), "endpoint": phone.endpoint, "told": phone.key} if phone else {}


def this_phone() -> PushPhone | None:
    """Find the phone of this session, if it takes reminders."""
    one = session()
    return db.session.scalar(
        select(PushPhone).where(PushPhone.stitcher == one.stitcher, PushPhone.session == one.id)
    )


def session() -> SignedIn:
    """Give the session; the door was passed already."""
    found = current_session()
    assert found is not None
    return found
