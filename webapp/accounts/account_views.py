"""Views of her account: what she chose, her passphrase, her devices, invitations."""

from typing import Any
from uuid import UUID
from zoneinfo import ZoneInfo

from flask import Blueprint, abort, current_app, redirect, render_template, request, url_for
from werkzeug.wrappers import Response

from webapp import clock
from webapp.accounts import doors, limits, sessions, zones
from webapp.accounts.bringing import has_work
from webapp.accounts.devices import last_seen
from webapp.accounts.entering import change_passphrase
from webapp.accounts.guard import signed_in, signed_in_reading, stitcher
from webapp.accounts.models import Account, Invitation
from webapp.accounts.schemas import HANDS, UNITS, WEEK_STARTS, PassphraseForm, SettingsForm
from webapp.db import db
from webapp.forms import Errors, load_form
from webapp.house import house
from webapp.origin import origin_of_page

blueprint = Blueprint("account", __name__, url_prefix="/account")

Answer = str | tuple[str, int] | Response
NOT_IT = "That is not the passphrase you have now. Check it and try again."


@blueprint.get("")
@signed_in
def show() -> Answer:
    """Show her account."""
    return page({})


@blueprint.post("")
@signed_in
def update() -> Answer:
    """Keep her settings, from the form as a page of its own."""
    errors = change_settings()
    return (page(errors), 422) if errors else redirect(url_for(".show"), 303)


@blueprint.post("/settings")
@signed_in
def update_settings() -> Answer:
    """Keep her settings; answers with their fragment."""
    errors = change_settings()
    return fragment("settings", errors, kept=not errors)


@blueprint.post("/passphrase")
@signed_in_reading
def update_passphrase() -> Answer:
    """Change her passphrase and sign every other device out; answers with the fragment."""
    account = stitcher()
    if not account.claimed:
        abort(404)
    given, errors = load_form(PassphraseForm())
    if errors:
        return fragment("devices", errors)
    tries = limits.take_sign_in(str(account.name))
    if not change_passphrase(account, given["current"], given["passphrase"]):
        return fragment("devices", {"current": [NOT_IT]})
    limits.give_back(tries)
    sessions.end_others(account.id)
    db.session.commit()
    return fragment("devices", {}, kept=True)


@blueprint.post("/sessions/<uuid:session_id>/end")
@signed_in
def end_session(session_id: UUID) -> Answer:
    """Sign another device of hers out; answers with the fragment."""
    if not sessions.end(stitcher().id, session_id):
        abort(404)
    db.session.commit()
    return fragment("devices", {})


@blueprint.post("/sessions/end")
@signed_in
def end_other_sessions() -> Answer:
    """Sign every other device of hers out; answers with the fragment."""
    sessions.end_others(stitcher().id)
    db.session.commit()
    return fragment("devices", {})


@blueprint.post("/invitations")
@signed_in
def invite() -> Answer:
    """Make an invitation; answers with the fragment, which shows the link this once."""
    if not may_invite():
        abort(404)
    token = doors.invite(stitcher().id)
    db.session.commit()
    link = origin_of_page(request) + url_for("accounts.new", invitation=token)
    return fragment("invitations", {}, link=link)


@blueprint.post("/invitations/<uuid:invitation_id>/end")
@signed_in
def end_invitation(invitation_id: UUID) -> Answer:
    """Take an invitation back; answers with the fragment."""
    found = db.session.get(Invitation, (stitcher().id, invitation_id))
    if found is None or not may_invite():
        abort(404)
    db.session.delete(found)
    db.session.commit()
    return fragment("invitations", {})


def change_settings() -> Errors:
    """Keep what she chose; what is not sent stays."""
    account = stitcher()
    given, errors = load_form(SettingsForm(), before=settings_of(account))
    if errors:
        return errors
    for name, value in given.items():
        setattr(account, name, value)
    db.session.commit()
    return {}


def settings_of(account: Account) -> dict[str, str]:
    """Give what she chose as her form has it."""
    return {
        "hand": account.hand,
        "unit": account.unit,
        "bedtime": f"{account.bedtime:%H:%M}",
        "week_start": str(account.week_start),
        "zone": account.zone,
    }


def may_invite() -> bool:
    """Tell whether the one who asks runs a house that takes new stitchers by invitation."""
    return house().owner == stitcher().id and current_app.config["EVENROW"].sign_up == "invite"


def page(errors: Errors) -> str:
    """Draw her account."""
    return render_template("accounts/account.html", work=has_work(stitcher().id), **parts(errors))


def fragment(name: str, errors: Errors, **more: Any) -> tuple[str, int]:
    """Draw one part of it."""
    drawn = render_template(f"accounts/_{name}.html", **parts(errors), **more)
    return drawn, 422 if errors else 200


def parts(errors: Errors) -> dict[str, Any]:
    """Gather what the parts of the page show; where something is wrong, what she typed."""
    account = stitcher()
    invitations = doors.open_invitations(account.id) if may_invite() else []
    zone, now = ZoneInfo(account.zone), clock.now()
    return {
        "values": {**settings_of(account), **(request.form if errors else {})},
        "errors": errors,
        "devices": sessions.devices(account.id, account.zone),
        "may_invite": may_invite(),
        "invitations": [(one.id, last_seen(one.created, now, zone)) for one in invitations],
        "choices": {"hand": HANDS, "unit": UNITS, "week_start": WEEK_STARTS},
        "zones": zones.offered(),
    }
