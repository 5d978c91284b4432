"""Months and years of hers, by their names in addresses. Pure."""

import re
from datetime import date, timedelta
from zoneinfo import ZoneInfo

from webapp.hours.week import FIRST_YEAR, LAST_YEAR, BadWeek, Days, days_from, has_page

DAY = timedelta(days=1)


def month_after(first: date, months: int = 1) -> date:
    """Give the first day of the month so many later, or earlier where negative."""
    years, month = divmod(first.month - 1 + months, 12)
    return date(first.year + years, month + 1, 1)


def month_from(first: date, zone: ZoneInfo) -> Days:
    """Lay out the days of the month that begins on ``first``."""
    return days_from(first, month_after(first), zone)


def year_from(year: int, zone: ZoneInfo) -> Days:
    """Lay out the days of a year."""
    return days_from(date(year, 1, 1), date(year + 1, 1, 1), zone)


def month_named(name: str) -> date:
    """Give the first day of the month ``name``, as 2026-02; raise BadWeek with a sentence."""
    match = re.fullmatch(r"([0-9]{4})-(0[1-9]|1[0-2])", name)
    if not match:
        raise BadWeek("A month is written like 2026-02: the year, then the month's number.")
    return date(year_named(match[1]), int(match[2]), 1)


def year_named(name: str) -> int:
    """Give the year ``name``, as 2026; raise BadWeek with a sentence."""
    if not re.fullmatch("[0-9]{4}", name):
        raise BadWeek("A year is written like 2026.")
    if not has_page(int(name)):
        raise BadWeek(f"The year must lie between {FIRST_YEAR} and {LAST_YEAR}.")
    return int(name)


def weeks_of(days: Days, week_start: int) -> list[list[date | None]]:
    """Set a month's dates in weeks from her first day; none where another month's would stand."""
    before = (days.first.weekday() - week_start) % 7
    cells: list[date | None] = [None] * before + [day.date for day in days.days]
    cells += [None] * (-len(cells) % 7)
    return [cells[n : n + 7] for n in range(0, len(cells), 7)]
