"""Whom to remind now: those whose bedtime it is or who count hours, with work on a frame."""

from collections.abc import Iterator
from datetime import date, datetime
from typing import Any
from uuid import UUID
from zoneinfo import ZoneInfo

from sqlalchemy import ColumnElement, Select, and_, exists, or_, select, tuple_

from webapp.accounts.models import Account
from webapp.db import db
from webapp.reminders.bedtime import night_at
from webapp.reminders.frames import anything_on_a_frame, held
from webapp.reminders.models import PushPhone, ReminderChoice, Told
from webapp.reminders.phones import is_signed_in
from webapp.reminders.schedule import Choices, Reminder, last_moment, night_of, reminders


def choices_of(account: Account, choice: ReminderChoice | None) -> Choices:
    """Give what she chose, as the rules have it."""
    hers = (account.bedtime, ZoneInfo(account.zone))
    if choice is None:
        return Choices(*hers)
    return Choices(*hers, choice.at_bedtime, choice.hours, choice.left, choice.away)


def come_due(now: datetime) -> Iterator[tuple[UUID, Reminder]]:
    """List what has come due; of bedtimes those only that are not in the ledger yet.

    One statement finds out where it is night (zones and bedtimes are few), one who there has work on a frame,
    a way to be told, and was not told yet, and one each how her works are held.
    """
    for account, choice in db.session.execute(_who(_nights(now), now)).all():
        for one in reminders(held(account.id), now, choices_of(account, choice)):
            yield account.id, one


def _nights(now: datetime) -> dict[date, list[tuple[Any, ...]]]:
    """List by the name of the night at which zones and bedtimes it can be said now."""
    pairs = select(Account.zone, Account.bedtime).join(ReminderChoice, ReminderChoice.stitcher == Account.id)
    found: dict[date, list[tuple[Any, ...]]] = {}
    for zone, bedtime in db.session.execute(pairs.where(ReminderChoice.at_bedtime).distinct()).all():
        night = night_at(now, bedtime, ZoneInfo(zone))
        if night and now < last_moment(*night):
            found.setdefault(night_of(night[0], ZoneInfo(zone)), []).append((zone, bedtime))
    return found


def _who(nights: dict[date, list[tuple[Any, ...]]], now: datetime) -> Select[Account, ReminderChoice]:
    counts_hours = ReminderChoice.hours.is_not(None)
    has_phone = exists().where(PushPhone.stitcher == ReminderChoice.stitcher, is_signed_in(now))
    reachable = or_(ReminderChoice.email.is_not(None), has_phone)
    return (
        select(Account, ReminderChoice)
        .join(ReminderChoice, ReminderChoice.stitcher == Account.id)
        .where(or_(counts_hours, *(_untold(*one) for one in nights.items())))
        .where(reachable, anything_on_a_frame(Account.id))
    )


def _untold(night: date, pairs: list[tuple[Any, ...]]) -> ColumnElement[bool]:
    """Ask for those for whom it is that night, and who were not told of it."""
    told = exists().where(Told.stitcher == Account.id, Told.night == night, Told.kind == "bedtime")
    return and_(ReminderChoice.at_bedtime, tuple_(Account.zone, Account.bedtime).in_(pairs), ~told)
