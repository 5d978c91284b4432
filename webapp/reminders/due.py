"""Whom to remind now: those whose bedtime it is or who count hours, with work on a frame."""

from collections.abc import Iterator
from datetime import datetime
from typing import Any
from uuid import UUID
from zoneinfo import ZoneInfo

from sqlalchemy import ColumnElement, exists, or_, select, tuple_

from webapp.accounts.models import Account
from webapp.db import db
from webapp.reminders.bedtime import night_at
from webapp.reminders.frames import anything_on_a_frame, held
from webapp.reminders.models import PushPhone, ReminderChoice
from webapp.reminders.schedule import Choices, Reminder, reminders


def choices_of(account: Account, choice: ReminderChoice | None) -> Choices:
    """Give what she chose, as the rules have it."""
    hers = (account.bedtime, ZoneInfo(account.zone))
    if choice is None:
        return Choices(*hers)
    return Choices(*hers, choice.at_bedtime, choice.hours, choice.left, choice.away)


def come_due(now: datetime) -> Iterator[tuple[UUID, Reminder]]:
    """List what has come due, said already or not.

    One statement finds out where it is night (zones and bedtimes are few), one who there has work on a frame
    and a way to be told, and one each how her works are held.
    """
    for account, choice in db.session.execute(_who(_nights(now))).all():
        for one in reminders(held(account.id), now, choices_of(account, choice)):
            yield account.id, one


def _nights(now: datetime) -> list[tuple[Any, ...]]:
    """List the zones and bedtimes at which it is night now."""
    pairs = select(Account.zone, Account.bedtime).join(ReminderChoice, ReminderChoice.stitcher == Account.id)
    asked = db.session.execute(pairs.where(ReminderChoice.at_bedtime).distinct()).all()
    return [tuple(pair) for pair in asked if night_at(now, pair.bedtime, ZoneInfo(pair.zone))]


def _who(nights: list[tuple[Any, ...]]) -> Any:
    it_is_night: ColumnElement[bool] = tuple_(Account.zone, Account.bedtime).in_(nights)
    reachable = or_(
        ReminderChoice.email.is_not(None), exists().where(PushPhone.stitcher == ReminderChoice.stitcher)
    )
    return (
        select(Account, ReminderChoice)
        .join(ReminderChoice, ReminderChoice.stitcher == Account.id)
        .where(or_(ReminderChoice.at_bedtime & it_is_night, ReminderChoice.hours.is_not(None)))
        .where(reachable, anything_on_a_frame(Account.id))
    )
