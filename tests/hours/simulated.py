"""Stitchers of known habit, invented: which evenings, how long, how fast, and when they are away."""

from collections.abc import Iterator
from datetime import date, timedelta
from math import exp
from random import Random
from typing import NamedTuple

from webapp.hours.pace import SITTINGS, WEEKS, Finish, finish, weeks_before

DAY = timedelta(days=1)


class Case(NamedTuple):
    """A forecast made somewhere on the way, and when the work was really done."""

    forecast: Finish
    done: date
    weeks: int


class Habit:
    """One stitcher: a chance for each weekday, minutes, a pace, holidays, moods."""

    def __init__(self, luck: Random) -> None:
        self.luck = luck
        busy = luck.uniform(0.15, 0.8)
        self.evenings = [min(1, max(0, luck.gauss(busy, 0.25))) for _ in range(7)]
        self.minutes, self.spread = luck.uniform(30, 110), luck.uniform(0.15, 0.6)
        self.pace = luck.uniform(30, 120)
        self.away, self.length = luck.uniform(0, 0.06), luck.choice((7, 7, 10, 14))
        self.sway, self.keeps = luck.uniform(0, 0.35), luck.uniform(0, 0.6)  # from week to week

    def days(self, first: date) -> Iterator[tuple[date, int]]:
        """Go on without end: each day, and the stitches laid on it."""
        mood, away, day = 0.0, 0, first
        while True:
            if day.weekday() == first.weekday():
                mood = self.keeps * mood + self.luck.gauss(0, self.sway)
                away = away or (self.length if self.luck.random() < self.away else 0)
            stitches = 0
            if away:
                away -= 1
            elif self.luck.random() < self.evenings[day.weekday()]:
                hours = self.minutes / 60 * self.luck.lognormvariate(0, self.spread)
                stitches = round(self.pace * self.luck.uniform(0.8, 1.15) * hours * exp(mood))
            yield day, stitches
            day += DAY


def case(seed: int) -> Case | None:
    """Let one stitcher work a project to its end; none where no forecast could be made on the way."""
    luck = Random(seed)
    size = round(luck.lognormvariate(9, 0.8))
    asked_at = luck.uniform(0.1, 0.9) * size
    first = date(2026, 1, 5) + luck.randrange(365) * DAY
    laid: dict[date, float] = {}
    sum_laid, sittings, forecast, weeks = 0, 0, None, 0
    for day, stitches in Habit(luck).days(first):
        if forecast is None and sum_laid >= asked_at and sittings >= SITTINGS:
            past = weeks_before(day, laid, first)
            if len(past) >= WEEKS:
                forecast, weeks = finish(past, size - sum_laid, day), len(past)
        laid[day] = stitches
        sum_laid += stitches
        sittings += stitches > 0
        if sum_laid >= size:
            return Case(forecast, day, weeks) if forecast else None
        if (day - first).days > 40 * 366:
            return None
    raise AssertionError("the days came to an end")
