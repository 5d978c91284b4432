"""A week in figures: time and stitches by day and project, pace, and what is usual."""

from bisect import bisect_right
from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from statistics import median
from typing import NamedTuple
from uuid import UUID
from zoneinfo import ZoneInfo

from webapp.hours.split import NOTHING, Stretch, cut, laid_out, length
from webapp.hours.week import Day, Days, Week, week_beside

EARLIER = 4  # weeks that tell what is usual
SHORTEST = timedelta(minutes=10)  # a pace from less time says nothing


class Laid(NamedTuple):
    """Crosses laid at a moment, or taken back where negative."""

    project: UUID
    at: datetime
    by: int


@dataclass
class Share:
    """What one project has of a day or of the week.

    ``time`` counts each moment once over all projects, so that shares add up. ``sat`` is the time of its own
    sittings, those moments included that another project's begun later has: what its pace is told from.
    """

    time: timedelta = NOTHING
    stitches: int = 0
    sat: timedelta = NOTHING

    @property
    def pace(self) -> float | None:
        """Tell the stitches an hour; none where there is too little to tell it from."""
        if self.sat < SHORTEST or self.stitches <= 0:
            return None
        return self.stitches / (self.sat / timedelta(hours=1))


Shares = dict[UUID, Share]


def whole(shares: Mapping[UUID, Share]) -> Share:
    """Add shares up."""
    return Share(
        sum((share.time for share in shares.values()), NOTHING),
        sum(share.stitches for share in shares.values()),
    )


@dataclass(frozen=True)
class Figures:
    """A week's figures. ``projects`` comes in order, the one with most time first."""

    days: list[tuple[Day, Shares]]
    projects: Shares
    total: Share = field(default_factory=Share)


def work_out(week: Days, stretches: Sequence[Stretch], laid: Iterable[Laid]) -> Figures:
    """Work days out from all sittings and stitches that touch it."""
    begins = [day.begin for day in week.days]
    by_day: list[Shares] = [defaultdict(Share) for _ in week.days]
    for which, project, time in cut(laid_out(stretches), week.days):
        by_day[which][project].time += time
    for one in laid:
        if week.begin <= one.at < week.end:
            by_day[bisect_right(begins, one.at) - 1][one.project].stitches += one.by
    sums = _sums(week, by_day, stretches)
    order = sorted(sums, key=lambda project: (-sums[project].time, -sums[project].stitches, project))
    days = [
        (day, {p: shares[p] for p in order if p in shares})
        for day, shares in zip(week.days, by_day, strict=True)
    ]
    return Figures(days, {project: sums[project] for project in order}, whole(sums))


def _sums(week: Days, by_day: Iterable[Shares], stretches: Sequence[Stretch]) -> Shares:
    sums: Shares = defaultdict(Share)
    for shares in by_day:
        for project, share in shares.items():
            sums[project].time += share.time
            sums[project].stitches += share.stitches
    for project in {one.project for one in stretches}:
        sat = length(laid_out(one for one in stretches if one.project == project), week.begin, week.end)
        if sat:
            sums[project].sat = sat
    return sums


def same_point(week: Week, earlier: Week, now: datetime, zone: ZoneInfo) -> datetime:
    """Give the moment in an earlier week when her clock showed the same weekday and time as now in ``week``.

    For a week that is over, that is the earlier week's end.
    """
    if now >= week.end:
        return earlier.end
    wall = now.astimezone(zone).replace(tzinfo=None) - (week.first - earlier.first)
    moment = wall.replace(tzinfo=zone).astimezone(now.tzinfo)
    return min(max(moment, earlier.begin), earlier.end)


def usual(week: Week, stretches: Sequence[Stretch], now: datetime, zone: ZoneInfo) -> timedelta | None:
    """Tell the usual time of a week: the median of those of the four weeks before that have any.

    While the week still runs, only what lay before the same point of each of them counts, so that a
    Tuesday is compared with Tuesdays.
    """
    pieces = laid_out(stretches)
    before = (week_beside(week, -n, zone) for n in range(1, EARLIER + 1))
    worked = [past for past in before if length(pieces, past.begin, past.end) > NOTHING]
    if not worked:
        return None
    until_now = [length(pieces, past.begin, same_point(week, past, now, zone)) for past in worked]
    return timedelta(seconds=median(time.total_seconds() for time in until_now))
