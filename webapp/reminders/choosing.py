"""Her row of choices: found, made when she first chooses, changed. The caller commits."""

from datetime import datetime, timedelta
from uuid import UUID

from sqlalchemy import or_, update

from webapp.accounts.models import Account
from webapp.accounts.tokens import hash_token, new_token
from webapp.db import db
from webapp.reminders import ledger
from webapp.reminders.due import choices_of
from webapp.reminders.ledger import Key
from webapp.reminders.models import ReminderChoice, Told
from webapp.reminders.schedule import HALF_AN_HOUR, ITSELF, next_bedtime, night_of

A_MINUTE = timedelta(minutes=1)


def choice_of(stitcher: UUID) -> ReminderChoice | None:
    """Find what she chose; none if she never did."""
    return db.session.get(ReminderChoice, stitcher)


def own_choice(stitcher: UUID, origin: str) -> ReminderChoice:
    """Find what she chose, or begin it; ``origin`` is that of the page she does it on."""
    choice = choice_of(stitcher)
    if choice is None:
        choice = ReminderChoice(stitcher=stitcher, at_bedtime=True, show_title=False, email_failures=0)
        db.session.add(choice)
    choice.origin = origin or choice.origin or ""
    return choice


def leave_it(account: Account, choice: ReminderChoice, at: datetime, now: datetime) -> None:
    """Say no more of the night that it was ``at`` until noon, else of the coming one; not if it is over."""
    night, _ = next_bedtime(at, choices_of(account, choice))
    if _is_last(choice, at) and night == next_bedtime(now, choices_of(account, choice))[0]:
        choice.left = night


def hear_again(account: Account, choice: ReminderChoice, at: datetime, now: datetime) -> None:
    """Say it again half an hour after ``at``; that she did not want to hear of it tonight is then over.

    A phone may tell it late, and again: what it told before, or is of no use any more, changes nothing.
    """
    rules = choices_of(account, choice)
    night, begin = next_bedtime(at, rules)
    if not _is_last(choice, at) or night != next_bedtime(now, rules)[0]:
        return
    choice.left = None if choice.left == night else choice.left
    later = at + HALF_AN_HOUR
    if later >= begin:
        _open_anew(Key(account.id, night, "bedtime"), later, now)
    else:  # bedtime has its own word still
        _open_anew(Key(account.id, night_of(at, rules.zone), "again"), later, now)


def _is_last(choice: ReminderChoice, at: datetime) -> bool:
    """Note when she answered; tells whether it is her last word: one told late undoes no later one."""
    if choice.answered is not None and at < choice.answered:
        return False
    choice.answered = at
    return True


def _open_anew(key: Key, later: datetime, now: datetime) -> None:
    row = db.session.get(Told, tuple(key))
    if now < later + ITSELF and (row is None or row.due < later):
        ledger.say_again(key, later, later + ITSELF)


def take_trial(stitcher: UUID, now: datetime) -> bool:
    """Take one trial, of whatever way; tells whether it may be made: one a minute."""
    waited = or_(ReminderChoice.tested.is_(None), ReminderChoice.tested <= now - A_MINUTE)
    taken = update(ReminderChoice).where(ReminderChoice.stitcher == stitcher, waited).values(tested=now)
    changed: object = db.session.execute(taken)
    return bool(getattr(changed, "rowcount", 0))


def new_feed(choice: ReminderChoice) -> str:
    """Give her calendar another secret, which ends the one before; kept is its hash alone."""
    token = new_token()
    choice.feed = hash_token(token)
    return token
