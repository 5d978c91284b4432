"""Nights that the work was left on the frame. Pure."""

from collections.abc import Iterable, Mapping, Sequence
from datetime import datetime, timedelta
from typing import NamedTuple, TypeVar

from webapp.hours.week import Day

Key = TypeVar("Key")
DEEP = timedelta(hours=4)  # after her midnight: whatever is still held then is held for the night


class Held(NamedTuple):
    """How the work is held from ``at`` on: on, slack or off."""

    at: datetime
    state: str


def nights_on(held: Mapping[Key, Sequence[Held]], days: Iterable[Day], now: datetime) -> dict[Key, int]:
    """Count the nights that began in these days and through which each was on the frame, drawn tight.

    ``held`` gives what was done to each, in order, the last before the first night included.
    """
    deep = [day.end + DEEP for day in days if day.end + DEEP <= now]
    counts = {key: sum(_state(entries, moment) == "on" for moment in deep) for key, entries in held.items()}
    return {key: count for key, count in counts.items() if count}


def _state(entries: Sequence[Held], moment: datetime) -> str | None:
    return next((one.state for one in reversed(entries) if one.at <= moment), None)
