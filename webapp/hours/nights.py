"""Nights that the work was left on the frame. Pure."""

from bisect import bisect_left
from collections.abc import Iterable, Mapping, Sequence
from datetime import date, datetime, timedelta
from itertools import pairwise
from typing import NamedTuple, TypeVar

from webapp.hours.week import Day

Key = TypeVar("Key")
DEEP = timedelta(hours=4)  # after her midnight: whatever is still held then is held for the night


class Held(NamedTuple):
    """How the work is held from ``at`` on: on, slack or off."""

    at: datetime
    state: str


def nights_on(
    held: Mapping[Key, Sequence[Held]], days: Iterable[Day], now: datetime
) -> dict[Key, list[date]]:
    """List on which of these days nights began through which each was on the frame, drawn tight.

    ``held`` gives what was done to each, in order, the last before the first night included. A day that the
    calendar skipped has no night.
    """
    nights = [day for day in days if day.begin < day.end and day.end + DEEP <= now]
    deep = [day.end + DEEP for day in nights]
    found: dict[Key, list[date]] = {}
    for key, entries in held.items():
        bounds = [*(bisect_left(deep, one.at) for one in entries), len(deep)]
        for one, (first, last) in zip(entries, pairwise(bounds), strict=True):
            if one.state == "on" and first < last:
                found.setdefault(key, []).extend(day.date for day in nights[first:last])
    return found
