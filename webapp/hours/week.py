"""Her week and her days: from dates and a zone to moments, right across every change of the clocks."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import UTC, date, datetime, time, timedelta
from functools import lru_cache
from zoneinfo import ZoneInfo

THURSDAY = 3
FIRST_YEAR, LAST_YEAR = 1970, 2199


class BadWeek(ValueError):
    """A week that cannot be meant; the message is a sentence."""


@dataclass(frozen=True)
class Day:
    """One day of hers: from ``begin`` up to, not including, ``end``, both in UTC."""

    date: date
    begin: datetime
    end: datetime


@dataclass(frozen=True)
class Days:
    """Days that follow one another without a gap."""

    days: tuple[Day, ...]

    @property
    def first(self) -> date:
        """Tell its first date."""
        return self.days[0].date

    @property
    def last(self) -> date:
        """Tell its last date."""
        return self.days[-1].date

    @property
    def begin(self) -> datetime:
        """Tell the moment it begins."""
        return self.days[0].begin

    @property
    def end(self) -> datetime:
        """Tell the moment the next one begins."""
        return self.days[-1].end


@dataclass(frozen=True)
class Week(Days):
    """Seven days."""

    @property
    def iso(self) -> tuple[int, int]:
        """Tell the ISO year and week of its Thursday (ISO 8601 numbers weeks by their Thursday)."""
        return thursday(self.first).isocalendar()[:2]

    @property
    def name(self) -> str:
        """Name it as addresses do: 2026-W07."""
        return "{:04}-W{:02}".format(*self.iso)

    @property
    def has_page(self) -> bool:
        """Tell whether it can be looked back on."""
        return has_page(self.iso[0])


@lru_cache(maxsize=8192)
def midnight(day: date, zone: ZoneInfo) -> datetime:
    """Give the moment from which her calendar never again shows an earlier date, in UTC.

    Usually that is 00:00. Where the clocks skip midnight it is the first moment after the gap; where they are
    turned back over midnight it is the second 00:00; where they are turned back to midnight, the first. A day
    that was skipped whole has no length.
    """
    shown = datetime.combine(day, time(), zone)
    early, late = sorted(shown.replace(fold=fold).astimezone(UTC) for fold in (0, 1))
    if early == late:
        return early
    if early.astimezone(zone).date() >= day:  # shown twice
        moment_before = (late - timedelta(seconds=1)).astimezone(zone)
        return late if moment_before.date() < day else early
    while late - early > timedelta(seconds=1):  # never shown: close in on the moment of the change
        half = early + timedelta(seconds=(late - early) // timedelta(seconds=2))
        early, late = (early, half) if half.astimezone(zone).date() >= day else (half, late)
    return late


def week_from(first: date, zone: ZoneInfo) -> Week:
    """Lay out the seven days from ``first``."""
    return Week(_laid_out(first, first + timedelta(days=7), zone))


def days_from(first: date, end: date, zone: ZoneInfo) -> Days:
    """Lay out the days from ``first`` up to, not including, ``end``."""
    return Days(_laid_out(first, end, zone))


def _laid_out(first: date, end: date, zone: ZoneInfo) -> tuple[Day, ...]:
    dates = [first + timedelta(days=n) for n in range((end - first).days + 1)]
    bounds = [midnight(day, zone) for day in dates]
    return tuple(map(Day, dates[:-1], bounds[:-1], bounds[1:]))


def runs(days: Sequence[Day]) -> Iterator[tuple[int, int]]:
    """Gather days of one length that follow each other: give (first, how many) of each run."""
    first = 0
    for n in range(1, len(days) + 1):
        if n == len(days) or days[n].end - days[n].begin != days[first].end - days[first].begin:
            yield first, n - first
            first = n


def first_of(day: date, week_start: int) -> date:
    """Give the first date of the week that holds ``day``; ``week_start`` is 0 for Monday to 6 for Sunday."""
    return day - timedelta(days=(day.weekday() - week_start) % 7)


def thursday(first: date) -> date:
    """Give the one Thursday among the seven days from ``first``."""
    return first + timedelta(days=(THURSDAY - first.weekday()) % 7)


def week_holding(moment: datetime, zone: ZoneInfo, week_start: int) -> Week:
    """Give her week that holds ``moment``."""
    return week_from(first_of(moment.astimezone(zone).date(), week_start), zone)


def week_named(name: str, zone: ZoneInfo, week_start: int) -> Week:
    """Give her week that holds the Thursday of the ISO week ``name``; raise BadWeek with a sentence."""
    match = re.fullmatch(r"([0-9]{4})-W([0-9]{2})", name)
    if not match:
        raise BadWeek("A week is written like 2026-W07: the year, then W and the week's number.")
    year, number = int(match[1]), int(match[2])
    if not has_page(year):
        raise BadWeek(f"The year of a week must lie between {FIRST_YEAR} and {LAST_YEAR}.")
    try:
        day = date.fromisocalendar(year, number, THURSDAY + 1)
    except ValueError as error:
        raise BadWeek(f"{year} has no week {number}. Weeks go from 01 to 52, in some years 53.") from error
    return week_from(first_of(day, week_start), zone)


def has_page(year: int) -> bool:
    """Tell whether a year, and what lies in it, can be looked back on."""
    return FIRST_YEAR < year < LAST_YEAR


def week_beside(week: Week, weeks: int, zone: ZoneInfo) -> Week:
    """Give the week so many later, or earlier where negative."""
    return week_from(week.first + timedelta(weeks=weeks), zone)
