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
from webapp.reminders.models import ReminderChoice
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


def leave_it(account: Account, choice: ReminderChoice, now: datetime) -> None:
    """Say no more of tonight: the night it is until noon, else the coming one."""
    choice.left, _ = next_bedtime(now, choices_of(account, choice))


def hear_again(account: Account, choice: ReminderChoice, now: datetime) -> None:
    """Say it again in half an hour; that she did not want to hear of it tonight is then over."""
    rules = choices_of(account, choice)
    night, begin = next_bedtime(now, rules)
    choice.left = None if choice.left == night else choice.left
    later = now + HALF_AN_HOUR
    if later >= begin:
        ledger.say_again(Key(account.id, night, "bedtime"), later, later + ITSELF)
    elif choice.hours is not None:  # bedtime has its own word still
        ledger.say_again(Key(account.id, night_of(now, rules.zone), "hours"), later, later + ITSELF)


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
