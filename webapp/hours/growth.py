"""How a project grew, week by week. Pure."""

from collections.abc import Iterable, Mapping, Sequence
from datetime import date, timedelta
from typing import NamedTuple

SEVEN = timedelta(days=7)
MOST = 24  # drawings


class Grown(NamedTuple):
    """A project as it stood when a week of hers was over: the places that were done by then."""

    first: date
    last: date
    done: frozenset[str]


def weeks_from(first: date, last: date) -> list[date]:
    """Give the first days of the weeks from that which begins on ``first`` to that which holds ``last``."""
    return [first + n * SEVEN for n in range((last - first) // SEVEN + 1)]


def grown(done: Mapping[str, date], weeks: Sequence[date]) -> list[Grown]:
    """Tell what was done by the end of each week in which something was, or of the last."""
    by_week = []
    before: frozenset[str] = frozenset()
    for first in weeks:
        now = frozenset(place for place, day in done.items() if day < first + SEVEN)
        if now != before:
            by_week.append(Grown(first, first + SEVEN - timedelta(days=1), now))
        before = now
    return by_week


def chosen(weeks: Sequence[Grown], most: int = MOST) -> list[Grown]:
    """Choose some, evenly apart, the last one always among them."""
    if len(weeks) <= most:
        return list(weeks)
    return [weeks[round((n + 1) * len(weeks) / most) - 1] for n in range(most)]


def places(done: Iterable[str]) -> tuple[dict[str, dict[str, object]], dict[str, dict[str, object]]]:
    """Give rows and blocks as a cloth is woven from them."""
    whole: dict[str, dict[str, object]] = {place: {"stitches": 0, "done": True} for place in done}
    rows = {place: made for place, made in whole.items() if "." not in place}
    return rows, {place: made for place, made in whole.items() if place not in rows}
