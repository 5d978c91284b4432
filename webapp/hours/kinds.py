"""Stitches an hour by kind of row: with few changes of thread, and with many, where it shows. Pure.

Changes of colour are what slows people down: 60 to 70 an hour, falling to 40 with many of them
(readwhat42.blogspot.com/2006/04). Each stitcher is measured against herself alone.
"""

from collections import defaultdict
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from itertools import pairwise
from statistics import median
from typing import NamedTuple

from webapp.hours.split import PAUSE

ROWS = 5  # of each kind, at least
SHOWS = 1.2  # the one pace at least so many times the other
HOUR = timedelta(hours=1)


class Tap(NamedTuple):
    """Crosses laid at a place with a thread, at a moment."""

    at: datetime
    place: str
    by: int
    thread: str | None


@dataclass
class Worked:
    """One row or block: the time it took, what was laid, how often the thread changed."""

    time: timedelta = timedelta()
    stitches: int = 0
    changes: int = 0

    @property
    def changing(self) -> float:
        """Tell how often the thread changed, a stitch."""
        return self.changes / self.stitches


def by_changes(taps: Iterable[Tap]) -> tuple[float, float] | None:
    """Give her stitches an hour where the thread changed seldom, and where it changed often.

    None where that does not show: too few rows, under an hour of either, threads not named, or as fast. The
    time since the tap before belongs to a tap, unless a pause lay between.
    """
    rows = _rows(sorted(taps))
    whole = [row for row in rows.values() if row.stitches > 0 and row.time]
    if len(whole) < 2 * ROWS:
        return None
    middle = median(row.changing for row in whole)
    kinds = [row for row in whole if row.changing <= middle], [row for row in whole if row.changing > middle]
    if any(len(kind) < ROWS or _time(kind) < HOUR for kind in kinds):
        return None
    few, many = (sum(row.stitches for row in kind) / (_time(kind) / HOUR) for kind in kinds)
    return (few, many) if few >= SHOWS * many or many >= SHOWS * few else None


def _rows(taps: Sequence[Tap]) -> dict[str, Worked]:
    rows: dict[str, Worked] = defaultdict(Worked)
    for before, tap in pairwise(taps):
        row = rows[tap.place]
        if tap.at - before.at < PAUSE:
            row.time += tap.at - before.at
            row.stitches += tap.by
            row.changes += None not in (before.thread, tap.thread) and before.thread != tap.thread
    return rows


def _time(rows: Iterable[Worked]) -> timedelta:
    return sum((row.time for row in rows), timedelta())
