"""What came of a sending, written beside the way it went. The caller commits."""

from datetime import datetime
from uuid import UUID

from webapp.db import db
from webapp.reminders import ledger
from webapp.reminders.ledger import Claim
from webapp.reminders.models import PushPhone, ReminderChoice
from webapp.reminders.push import Outcome
from webapp.reminders.sending import EMAIL

TWICE = 2
GONE = "No reminder reaches {name} any more. Turn it on there again, or choose another way."
OLD_KEY = "The house has another key: open Evenrow on {name} once, and reminders go on there."
TWICE_FAILED = "The reminder did not get through to {name}, twice. Try it, or choose another way."


def noted(claim: Claim, way: str, outcome: Outcome, now: datetime) -> None:
    """Note on a claimed reminder that one way has it, or never will."""
    is_taken = outcome.what == "taken"
    claim.reached.append(way if is_taken else f"!{way}")
    ledger.note(claim, claim.reached)
    if is_taken:
        reached(claim.key.stitcher, way, now)
    elif outcome.what == "gone":
        gone(claim.key.stitcher, way)
    elif outcome.what == "old key" and (phone := _phone(claim.key.stitcher, way)):
        _choice(claim.key.stitcher).trouble = OLD_KEY.format(name=phone.device)
    else:
        failed(claim.key.stitcher, way)


def reached(stitcher: UUID, way: str, now: datetime) -> None:
    """A way works."""
    if way == EMAIL:
        _choice(stitcher).email_failures = 0
    elif phone := _phone(stitcher, way):
        phone.reached, phone.failures = now, 0


def gone(stitcher: UUID, way: str) -> None:
    """Nobody is there any more: forget the phone, and say so."""
    if phone := _phone(stitcher, way):
        _choice(stitcher).trouble = GONE.format(name=phone.device)
        db.session.delete(phone)


def failed(stitcher: UUID, way: str) -> None:
    """Count a reminder that did not get through; after the second the app says so."""
    choice = _choice(stitcher)
    if way == EMAIL:
        choice.email_failures += 1
        if choice.email_failures >= TWICE:
            choice.trouble = TWICE_FAILED.format(name="your e-mail")
    elif phone := _phone(stitcher, way):
        phone.failures += 1
        if phone.failures >= TWICE:
            choice.trouble = TWICE_FAILED.format(name=phone.device)


def _choice(stitcher: UUID) -> ReminderChoice:
    """Give her choices; where they are gone meanwhile, some that nobody keeps."""
    return db.session.get(ReminderChoice, stitcher) or ReminderChoice(stitcher=stitcher, email_failures=0)


def _phone(stitcher: UUID, way: str) -> PushPhone | None:
    return db.session.get(PushPhone, (stitcher, UUID(way)))
