"""Views of the other two ways: a calendar by a secret address, and letters."""

from datetime import timedelta

from flask import Blueprint, Response, abort, current_app, redirect, render_template, request, url_for
from flask.sansio.blueprints import BlueprintSetupState
from sqlalchemy import select
from werkzeug.wrappers import Response as BaseResponse

from webapp import clock
from webapp.accounts.guard import signed_in, stitcher
from webapp.accounts.models import Account
from webapp.accounts.throttle import Bound, Throttle, neighbourhood
from webapp.accounts.tokens import hash_token, new_token
from webapp.db import begin_writing, db, end_writing
from webapp.forms import load_form
from webapp.reminders import calendar, choosing
from webapp.reminders.calendar import Evening
from webapp.reminders.choice_views import Answer, hers, page, settings
from webapp.reminders.due import choices_of
from webapp.reminders.frames import held
from webapp.reminders.mail import Mail, can_post, post
from webapp.reminders.models import ReminderChoice
from webapp.reminders.schedule import is_quiet, next_bedtime, still
from webapp.reminders.schemas import AddressForm
from webapp.reminders.wording import letter

blueprint = Blueprint("ways", __name__, url_prefix="/reminders")

OFTEN = "So many letters are not sent at once. Wait a while, then try again."
NOT_SENT = "The mail server did not take the letter. Try again in a while, or tell whoever runs this house."
HOLDS = timedelta(days=3)
CONFIRM = """Somebody, hopefully you, wants Evenrow's reminders sent to this address:
to take cross stitch off its frame at bedtime. If it was you, open this:

{link}

The link holds for three days. If it was not you, do nothing; no other letter will come.
"""


@blueprint.post("/calendar")
@signed_in
def new_calendar() -> Answer:
    """Make her calendar's address, shown this once; one made before ends."""
    choice = hers()
    token = choosing.new_feed(choice)
    link = choice.origin + url_for(".show_calendar", token=token)
    db.session.commit()
    return page(link=link)


@blueprint.post("/calendar/end")
@signed_in
def end_calendar() -> Answer:
    """End her calendar's address."""
    hers().feed = None
    db.session.commit()
    return back()


@blueprint.get("/calendar/<token>.ics")
def show_calendar(token: str) -> Response:
    """Give a calendar to whoever has its address: her bedtime tonight, if there is work on a frame."""
    query = select(Account, ReminderChoice).join(ReminderChoice, ReminderChoice.stitcher == Account.id)
    found = db.session.execute(query.where(ReminderChoice.feed == hash_token(token))).first()
    if found is None:
        abort(404)
    account, choice = found
    now, rules = clock.now(), choices_of(account, choice)
    night, begin = next_bedtime(now, rules)
    says = rules.at_bedtime and not is_quiet(night, rules)
    works = still(held(account.id)) if says else ()
    evenings = [Evening(night, begin, letter(works, choice.show_title)[1])] if works else []
    response = Response(calendar.written(str(account.id), evenings, now), mimetype="text/calendar")
    response.headers["Cache-Control"] = "private, no-store"
    return response


@blueprint.post("/email")
@signed_in
def ask_email() -> Answer:
    """Send a letter that finds out whether the address is hers."""
    if not (can_post(settings()) and stitcher().claimed):
        abort(404)
    given, errors = load_form(AddressForm())
    if errors:
        return page(errors), 422
    choice = hers()
    db.session.flush()
    if not may_write(choice, given["email"]):
        return page({"email": [OFTEN]}), 429
    token = f"{clock.now() + HOLDS:%Y%m%d}-{new_token()}"  # of which only a hash is kept: its end holds
    choice.email_asked, choice.email_token = given["email"], hash_token(token)
    link = settings().address + url_for(".confirm", token=token)
    mail = Mail(given["email"], "Reminders from Evenrow?", CONFIRM.format(link=link))
    db.session.commit()
    end_writing()
    if not post(settings(), mail):
        return page({"email": [NOT_SENT]}), 502
    return back()


@blueprint.get("/email/<token>")
def confirm(token: str) -> str:
    """Ask whoever has the letter to say yes: what merely looks at links says nothing."""
    if by_token(token) is None:
        abort(404)
    return render_template("reminders/confirm.html")


@blueprint.post("/email/<token>")
def confirmed(token: str) -> Answer:
    """Take the address."""
    begin_writing()
    choice = by_token(token)
    if choice is None:
        abort(404)
    choice.email, choice.email_failures = choice.email_asked, 0
    choice.email_asked = choice.email_token = None
    db.session.commit()
    return render_template("reminders/confirm.html", done=True)


@blueprint.post("/email/end")
@signed_in
def end_email() -> Answer:
    """Send no more letters."""
    choice = hers()
    choice.email = choice.email_asked = choice.email_token = None
    db.session.commit()
    return back()


def may_write(choice: ReminderChoice, address: str) -> bool:
    """Take one letter that finds out: one a minute, three a day to one address, twenty from one place."""
    letters: Throttle = current_app.extensions["evenrow_letters"]
    bounds = [Bound(f"to {address.lower()}", 3), Bound(neighbourhood(request.remote_addr), 20)]
    if not choosing.take_trial(choice.stitcher, clock.now()):
        return False
    return not letters.take(bounds, clock.now())


@blueprint.record_once
def set_up(state: BlueprintSetupState) -> None:
    """Give the application its own count of letters."""
    state.app.extensions["evenrow_letters"] = Throttle(timedelta(days=1))


def by_token(token: str) -> ReminderChoice | None:
    """Find whose letter it was; one that is too old is nobody's."""
    if token[:8] < f"{clock.now():%Y%m%d}":
        return None
    query = select(ReminderChoice).where(ReminderChoice.email_token == hash_token(token))
    return db.session.scalar(query)


def back() -> BaseResponse:
    """Lead back to her reminders."""
    return redirect(url_for("reminders.choices.show"), 303)
