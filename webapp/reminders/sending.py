"""What is to be sent of one claimed reminder, and to whom."""

from collections.abc import Callable
from dataclasses import dataclass, field, replace
from datetime import datetime
from uuid import UUID

from webapp.accounts.models import Account
from webapp.config import Config
from webapp.db import db
from webapp.reminders import push
from webapp.reminders.due import choices_of
from webapp.reminders.endpoints import Where
from webapp.reminders.frames import held
from webapp.reminders.ledger import Claim
from webapp.reminders.mail import Mail, can_post, post
from webapp.reminders.models import PushPhone, ReminderChoice
from webapp.reminders.phones import as_sent, contact, phones_of
from webapp.reminders.push import Outcome, Push
from webapp.reminders.schedule import Works, is_quiet, over_hours, still
from webapp.reminders.vapid import NAME, public_key
from webapp.reminders.wording import letter, notice, tag

EMAIL = "email"
Job = Callable[[], Outcome]


@dataclass
class Letter:
    """One claimed reminder: how it ends at once, or else what each way has to do."""

    claim: Claim
    ends: bool = False  # nothing is to be said any more
    jobs: dict[str, Job] = field(default_factory=dict)  # by way: a phone's id, or "email"


def compose(config: Config, claim: Claim, now: datetime) -> Letter:
    """See how things stand now, and write what is to be sent by the ways that do not have it yet."""
    who = claim.key.stitcher
    account = db.session.get_one(Account, who)
    choice = db.session.get(ReminderChoice, who)
    if choice is None or is_quiet(claim.key.night, choices_of(account, choice)):
        return Letter(claim, ends=True)
    works = still(held(who))
    if claim.key.kind == "hours":  # not of what was put on just now
        works = over_hours(works, now, choice.hours)
    if not works:
        return Letter(claim, ends=True)
    if now >= claim.until:
        return Letter(claim)
    return Letter(claim, jobs=dict(_ways(config, claim, choice, works, now)))


def to_phone(config: Config, phone: PushPhone, told: Push, now: datetime) -> Job:
    """Make the sending to one phone; what is too large for its service is sent in fewer words."""
    house = push.House(
        config.data / NAME, contact(config.address or phone.origin), Where.of(config.push_services)
    )
    if phone.key != public_key(config.data):
        return lambda: Outcome("old key")
    address = as_sent(phone)
    short = replace(told, payload={name: told.payload[name] for name in ("tag", "open")})

    def send() -> Outcome:
        outcome = push.send(address, told, house, now)
        return push.send(address, short, house, now) if outcome.what == "too large" else outcome

    return send


def _ways(
    config: Config, claim: Claim, choice: ReminderChoice, works: Works, now: datetime
) -> list[tuple[str, Job]]:
    night, kind = claim.key.night, claim.key.kind
    told = Push(notice(works, kind, night, choice.show_title), tag(night), claim.until)
    phones = [one for one in phones_of(claim.key.stitcher, now) if not _has(claim, one.id)]
    ways = [(str(one.id), to_phone(config, one, told, now)) for one in phones]
    if choice.email and can_post(config) and not _has(claim, EMAIL):
        subject, text = letter(works, choice.show_title)
        mail = Mail(choice.email, subject, f"{text}\n\n{config.address}{told.payload['open']}\n")
        ways.append((EMAIL, lambda: Outcome("taken" if post(config, mail) else "later")))
    return ways


def _has(claim: Claim, way: UUID | str) -> bool:
    return bool({str(way), f"!{way}"} & set(claim.reached))
