"""Stitchers of simulated nights: where they are, when they go to bed, and which nights are looked at."""

import random
from dataclasses import dataclass
from datetime import UTC, date, datetime, timedelta
from datetime import time as wall
from uuid import UUID, uuid4
from zoneinfo import ZoneInfo

from flask import Flask

from tests.reminders.service import Browser, PushService
from webapp.accounts.models import Account, SignedIn
from webapp.db import db, writing
from webapp.projects.models import Project
from webapp.reminders import phones
from webapp.reminders.bedtime import span
from webapp.reminders.endpoints import Where
from webapp.reminders.models import ReminderChoice
from webapp.reminders.vapid import public_key

ZONES = [  # each puts its clocks forward and back within a year
    *("Europe/London", "Europe/Berlin", "Europe/Athens", "Europe/Chisinau", "Atlantic/Azores"),
    *("America/New_York", "America/Los_Angeles", "America/St_Johns", "America/Halifax", "America/Havana"),
    *("America/Santiago", "Australia/Sydney", "Australia/Adelaide", "Australia/Lord_Howe"),
    *("Pacific/Auckland", "Pacific/Chatham", "Africa/Cairo", "Asia/Jerusalem", "Asia/Beirut"),
    "Africa/Casablanca",
]
BEDTIMES = [wall(22, 30), wall(0, 0), wall(1, 30), wall(2, 30), wall(23, 15), wall(2, 0), wall(0, 30)]
AT_ONE_BEDTIME = 5
FIRST = date(2026, 2, 1)
LONG_AGO, FAR_AHEAD = datetime(2026, 1, 1, tzinfo=UTC), datetime(2036, 1, 1, tzinfo=UTC)


@dataclass
class Stitcher:
    """One of them: where she is, when she goes to bed, and her phone."""

    id: UUID
    project: UUID
    zone: str
    bedtime: wall
    browser: Browser


@dataclass
class Night:
    """One night of one stitcher."""

    who: Stitcher
    name: date
    begin: datetime
    noon: datetime
    is_on: bool


def people(app: Flask, service: PushService, zones: list[str], in_each: int) -> list[Stitcher]:
    """Put stitchers into each zone, each with a work, a phone, and a wish to be told."""
    with app.app_context(), writing():
        found = []
        for n, zone in enumerate(zones):
            for m in range(in_each):
                bedtime = BEDTIMES[(n + m // AT_ONE_BEDTIME) % len(BEDTIMES)]
                found.append(Stitcher(uuid4(), uuid4(), zone, bedtime, service.subscribe()))
                move_in(app, found[-1], service)
        db.session.commit()
    return found


def move_in(app: Flask, one: Stitcher, service: PushService) -> None:
    db.session.add(Account(id=one.id, zone=one.zone, bedtime=one.bedtime, created=LONG_AGO))
    db.session.flush()
    plan = {"title": "Moth", "width": 140, "height": 98, "count": 14.0}
    db.session.add(Project(stitcher=one.id, id=one.project, created=LONG_AGO, **plan))
    times = {"created": LONG_AGO, "seen": LONG_AGO, "expires": FAR_AHEAD}
    session = SignedIn(stitcher=one.id, id=uuid4(), token_hash=uuid4().hex, device="Phone", **times)
    db.session.add_all([session, ReminderChoice(stitcher=one.id, at_bedtime=True)])
    db.session.flush()
    key = public_key(app.config["EVENROW"].data)
    house = phones.House(Where.of([service.origin]), key, "https://stitch.example", LONG_AGO)
    phones.take(session, one.browser.subscription(key or ""), house)


def changes(zone: str) -> list[date]:
    """List the first nights from ``FIRST`` on in which the clocks of a zone go forward, and back."""
    found: dict[bool, date] = {}
    for n in range(400):
        noons = [datetime.combine(FIRST + timedelta(days=n + m), wall(12), ZoneInfo(zone)) for m in (0, 1)]
        before, after = (noon.utcoffset() or timedelta() for noon in noons)
        if before != after:
            found.setdefault(after > before, FIRST + timedelta(days=n))
    return sorted(found.values())


def nights_of(who: list[Stitcher], around: int, luck: random.Random) -> list[Night]:
    """List their nights around both changes of their clocks; on most there is work on a frame."""
    found = []
    for one in who:
        for change in changes(one.zone):
            for n in range(-around, around + 1):
                name = change + timedelta(days=n)
                times = span(name, one.bedtime, ZoneInfo(one.zone))
                found.append(Night(one, name, *times, luck.random() < 0.85))
    return found


def outages(until: datetime, luck: random.Random) -> list[tuple[datetime, datetime]]:
    """List when the whole house is down: now and then for two hours, or for six."""
    found, at = [], datetime(2026, 2, 3, tzinfo=UTC)
    while at < until:
        found.append((at, at + timedelta(hours=6 if luck.random() < 0.5 else 2)))
        at += timedelta(hours=luck.uniform(20, 120))
    return found
