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
from datetime import datetime, timedelta
from itertools import groupby, repeat
from multiprocessing.connection import Connection
from pathlib import Path
from uuid import uuid4

from flask import Flask
from sqlalchemy import func, insert, select

from tests.reminders.service import PushService
from tests.reminders.stitchers import LONG_AGO, ZONES, Night, nights_of, outages, people
from webapp import create_app
from webapp.config import Config
from webapp.db import db, writing
from webapp.journal.models import Entry
from webapp.reminders import ledger, rounds
from webapp.reminders.models import Told
from webapp.reminders.schedule import LATE

MARGIN = timedelta(minutes=20)  # nearer to "too late" than that, either is right


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
            line.send(rounds.run(config, repeat(now).__next__))


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
