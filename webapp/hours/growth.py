"""How a project grew, week by week. Pure."""

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from datetime import date, timedelta
from typing import NamedTuple

SEVEN = timedelta(days=7)
MOST = 24  # drawings


class Grown(NamedTuple):
    """A project as it stood when a week of hers was over, and what that week gave."""

    first: date
    last: date
    done: frozenset[str]  # places closed by then
    closed: int  # of them in that week
    stitches: int
    time: timedelta


def weeks_from(first: date, last: date) -> list[date]:
    """Give the first days of the weeks from that which begins on ``first`` to that which holds ``last``."""
    return [first + n * SEVEN for n in range((last - first) // SEVEN + 1)]


def grown(
    done: Mapping[str, date],
    laid: Iterable[tuple[date, int]],
    times: Mapping[date, timedelta],
    weeks: Sequence[date],
) -> list[Grown]:
    """Tell of each week that closed a place, laid a stitch or took any time how it left the work.

    ``done`` gives the day on which each place was closed, ``laid`` the stitches of days, ``times`` the time
    of weeks by their first day.
    """
    stitches: Counter[date] = Counter()
    for day, some in laid:
        stitches[day - (day - weeks[0]) % SEVEN] += some
    by_week = []
    before: frozenset[str] = frozenset()
    for first in weeks:
        now = frozenset(place for place, day in done.items() if day < first + SEVEN)
        gave = (len(now - before), stitches[first], times.get(first, timedelta()))
        if any(gave):
            by_week.append(Grown(first, first + SEVEN - timedelta(days=1), now, *gave))
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
