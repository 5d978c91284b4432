"""Sittings laid on the time line: each moment counted once, cut at her midnights."""

import heapq
from bisect import bisect_right
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import datetime, timedelta
from itertools import pairwise
from uuid import UUID

from webapp.hours.week import Day

QUIET = timedelta(hours=2)
PAUSE = timedelta(minutes=30)
NOTHING = timedelta()


@dataclass(frozen=True)
class Stretch:
    """One stretch of stitching at one project, in UTC; it may be empty, never negative."""

    project: UUID
    begin: datetime
    end: datetime

    @property
    def length(self) -> timedelta:
        """Tell how long it lasted."""
        return self.end - self.begin


def stretch(
    project: UUID, begin: datetime, end: datetime | None, last_stitch: datetime | None, now: datetime
) -> Stretch:
    """Tell what a sitting counts for.

    One that is still open counts up to ``now``, but no further than two hours after its last stitch (or its
    beginning): a block of a hundred stitches, tapped at once when it is done, takes about that long.
    """
    if end is None:
        last = max(begin, last_stitch or begin)
        end = last + QUIET if now - last > QUIET else now  # never past the end of time
    return Stretch(project, begin, max(begin, end))


def laid_out(stretches: Iterable[Stretch]) -> list[Stretch]:
    """Count each moment once: give pieces in order that do not overlap and cover what ``stretches`` cover.

    A moment in several belongs to the one begun latest: that is the work she turned to. So the parts of
    projects and days add up to the whole.
    """
    waiting = sorted((s for s in stretches if s.length), key=lambda s: (s.begin, s.project))
    bounds = sorted({s.begin for s in waiting} | {s.end for s in waiting})
    pieces: list[Stretch] = []
    under_way: list[tuple[timedelta, int]] = []  # a heap with the latest begun on top
    upcoming = 0
    for begin, end in pairwise(bounds):
        while upcoming < len(waiting) and waiting[upcoming].begin <= begin:
            heapq.heappush(under_way, (bounds[0] - waiting[upcoming].begin, -upcoming))
            upcoming += 1
        while under_way and waiting[-under_way[0][1]].end <= begin:
            heapq.heappop(under_way)
        if under_way:
            pieces.append(Stretch(waiting[-under_way[0][1]].project, begin, end))
    return pieces


def cut(pieces: Iterable[Stretch], days: tuple[Day, ...]) -> Iterator[tuple[int, UUID, timedelta]]:
    """Cut pieces at the days' bounds: give (which day, project, time); what lies outside falls away."""
    begins = [day.begin for day in days]
    for piece in pieces:
        which = max(bisect_right(begins, piece.begin) - 1, 0)
        while which < len(days) and days[which].begin < piece.end:
            inside = min(piece.end, days[which].end) - max(piece.begin, days[which].begin)
            if inside > NOTHING:
                yield which, piece.project, inside
            which += 1


def length(pieces: Iterable[Stretch], begin: datetime, end: datetime) -> timedelta:
    """Measure what of the pieces lies between two moments."""
    spans = (min(piece.end, end) - max(piece.begin, begin) for piece in pieces)
    return sum((span for span in spans if span > NOTHING), NOTHING)


def joins(earlier: Stretch, later: Stretch) -> bool:
    """Tell whether two are shown as one sitting: the same project, with a pause under 30 minutes."""
    return earlier.project == later.project and later.begin - earlier.end < PAUSE
