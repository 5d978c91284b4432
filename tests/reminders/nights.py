"""Nights of many stitchers, simulated: two real processes remind at once, and are killed at random moments.

Time is what each round is told; all else is as it is in a house: the database, the processes, what is sent
and signed, and a push service (on loopback) that decrypts it.
"""

import multiprocessing
import random
import time
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, field
from datetime import UTC, date, datetime, timedelta
from datetime import time as wall
from itertools import groupby
from multiprocessing.connection import Connection
from pathlib import Path
from uuid import UUID, uuid4
from zoneinfo import ZoneInfo

from flask import Flask
from sqlalchemy import func, insert, select

from tests.reminders.service import Browser, PushService
from webapp import create_app
from webapp.accounts.models import Account, SignedIn
from webapp.config import Config
from webapp.db import db, writing
from webapp.journal.models import Entry
from webapp.projects.models import Project
from webapp.reminders import ledger, phones, rounds
from webapp.reminders.bedtime import span
from webapp.reminders.endpoints import Where
from webapp.reminders.models import ReminderChoice, Told
from webapp.reminders.schedule import LATE
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
MARGIN = timedelta(minutes=20)  # nearer to "too late" than that, either is right


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


@dataclass
class Outcome:
    """What came of them all."""

    counts: Counter[str] = field(default_factory=Counter)
    wrong: list[str] = field(default_factory=list)


def remind(line: Connection, config: Config) -> None:
    """Be one of the two processes: do a round whenever a moment comes in."""
    app = create_app(config)
    line.send("ready")
    while True:
        now = line.recv()
        with app.app_context():
            line.send(rounds.run(config, now))


class Reminder:
    """One of the two, from outside."""

    def __init__(self, config: Config) -> None:
        self.config = config
        self.processes = multiprocessing.get_context("forkserver")
        self.processes.set_forkserver_preload(["webapp.reminders.rounds", "webapp.reminders.views", __name__])
        self.start()

    def start(self) -> None:
        self.line, theirs = self.processes.Pipe()
        self.process = self.processes.Process(target=remind, args=(theirs, self.config), daemon=True)
        self.process.start()
        theirs.close()
        assert self.line.recv() == "ready"

    def kill(self) -> bool:
        """Kill it as a power cut would; tells whether it was in the midst of a round."""
        was_busy = not self.line.poll()
        self.process.kill()
        self.process.join()
        self.line.close()
        self.start()
        return was_busy


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


@dataclass(frozen=True)
class Size:
    """How many: so many in each zone, so many nights on both sides of each change of the clocks."""

    zones: int
    in_each: int
    around: int


class Simulation:
    """The house, its two processes, and the clock that all go by."""

    def __init__(self, app: Flask, service: PushService, size: Size, seed: int) -> None:
        self.luck = random.Random(seed)
        self.app, config = app, app.config["EVENROW"]
        self.people = people(self.app, service, ZONES[: size.zones], size.in_each)
        self.nights = nights_of(self.people, size.around, self.luck)
        self.down = outages(max(night.noon for night in self.nights), self.luck)
        self.reminders = [Reminder(config), Reminder(config)]
        self.outcome = Outcome()
        self.now = LONG_AGO

    def run(self) -> Outcome:
        events = sorted(self._events(), key=lambda event: event[:2])
        for (at, kind), group in groupby(events, key=lambda event: event[:2]):
            if kind == "round":
                self._rounds(max(at, self.now))
            else:
                self._hold([night for _, _, night in group], kind, at)
        for one in self.reminders:
            one.process.kill()
        self._look()
        return self.outcome

    def _events(self) -> Iterator[tuple[datetime, str, Night]]:
        for night in self.nights:
            if night.is_on:
                yield night.begin - timedelta(hours=2), "on", night
                yield night.noon + timedelta(minutes=1), "off", night
                if self.luck.random() < 0.03:
                    night.who.browser.answers.append((503, {}))
            yield self._up(night.begin + timedelta(seconds=self.luck.choice((0, 7, 19)))), "round", night

    def _up(self, at: datetime) -> datetime:
        """Move a moment at which the house is down to when it is up again."""
        return next((end for begin, end in self.down if begin <= at < end), at)

    def _hold(self, nights: list[Night], state: str, at: datetime) -> None:
        same = {"at": at, "said": at, "kind": "frame", "fields": {"state": state}, "cancelled": False}
        rows = [
            {"stitcher": night.who.id, "project": night.who.project, "id": uuid4(), **same}
            for night in nights
        ]
        with self.app.app_context(), writing():
            db.session.execute(insert(Entry), rows)
            db.session.commit()

    def _rounds(self, at: datetime) -> None:
        """Have both do a round at once, and go on until nothing waits; kill now and then."""
        self.now = at
        self._round()
        while self._waits():
            self.now = self._up(self.now + ledger.LEASE + timedelta(seconds=1))
            self._round()

    def _round(self) -> None:
        doomed = [one for one in self.reminders if self.luck.random() < 0.04]
        for one in self.reminders:
            one.line.send(self.now)
        if doomed:
            time.sleep(self.luck.uniform(0, 0.03))
        for one in doomed:
            self.outcome.counts["killed in a round" if one.kill() else "killed after it"] += 1
        for one in self.reminders:
            if one not in doomed:
                one.line.recv()
        self.outcome.counts["rounds"] += len(self.reminders)

    def _waits(self) -> bool:
        with self.app.app_context():
            return bool(db.session.scalar(select(func.count()).where(Told.state == "waiting")))

    def _look(self) -> None:
        """Hold what stands on each phone against what should."""
        counts = self.outcome.counts
        for night in self.nights:
            stands = f"night-{night.name}" in night.who.browser.standing
            until = min(night.noon, night.begin + LATE)
            up = self._up(night.begin)
            should = (
                None
                if until - MARGIN < up < until
                else night.is_on and night.begin < night.noon and up < until
            )
            counts["nights"] += 1
            counts["nights with work on a frame"] += night.is_on
            counts["told"] += stands
            counts["late"] += stands and up > night.begin
            counts["too late to tell"] += night.is_on and should is False
            if should is not None and stands != should:
                self.outcome.wrong.append(f"{night.who.zone} {night.name}: {'told' if stands else 'missed'}")
        for one in self.people:
            standing: dict[str, set[tuple[str, str]]] = {}  # by night: what cannot take another's place
            for came in one.browser.came:
                names = (came["topic"], came["said"]["tag"])
                standing.setdefault(came["said"]["open"], set()).add(names)
            counts["sent"] += len(one.browser.came)
            counts["more than one standing"] += sum(len(names) > 1 for names in standing.values())


def simulate(data: Path, service: PushService, size: Size, seed: int, **more: str) -> Outcome:
    """Simulate these nights in a house of its own."""
    from webapp.migrate import migrate
    from webapp.reminders.vapid import make_key

    settings = {"EVENROW_DATA": str(data), "EVENROW_PUSH_SERVICES": service.origin, **more}
    config = Config.from_environment(settings)
    app = create_app(config)
    migrate(app)
    make_key(data)
    try:
        return Simulation(app, service, size, seed).run()
    finally:
        with app.app_context():
            db.engine.dispose()
