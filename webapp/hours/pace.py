"""How fast she stitches, and when a project will be done: a range of dates out of her own weeks. Pure.

The finish is a bootstrap: what is left is laid by weeks of hers drawn at random, in blocks of weeks that
followed each other, so that holidays and busy spells come as they came. It is drawn twice over: first a past
she might as well have had, then the future out of that; so a short past gives a wide range.
"""

from bisect import bisect_left
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from functools import lru_cache
from itertools import accumulate
from math import cbrt, ceil, sqrt
from random import Random
from typing import NamedTuple, TypeVar

Item = TypeVar("Item")
Week = tuple[float, ...]  # what she laid on each of seven days

SITTINGS = 8  # nothing is forecast from fewer
WEEKS = 3  # nor from fewer whole weeks, the rested ones left out
MOST_WEEKS = 40  # older ones tell little of how she stitches now
REST = 8  # empty weeks on end that are no holiday any more: common practice, no source
RUNS = 250
HORIZON = 20 * 52  # weeks; what takes longer has no date
SEED = 1851
PLACES = 3  # rows or blocks done from which the rest is reckoned
DAY, SEVEN = timedelta(days=1), 7


class Finish(NamedTuple):
    """The dates before which 10, 50 and 90 of 100 such futures have it done."""

    early: date
    middle: date
    late: date


@dataclass(frozen=True)
class Span:
    """Days from ``first`` up to, not including, ``end``; none: it goes on."""

    first: date
    end: date | None

    def holds(self, day: date) -> bool:
        """Tell whether a day lies in it."""
        return self.first <= day and (self.end is None or day < self.end)


def weeks_before(
    today: date, laid: Mapping[date, float], since: date, rested: Sequence[Span] = ()
) -> tuple[Week, ...]:
    """Give her weeks, the oldest first, counted back from yesterday to ``since``; rested ones are left out.

    They begin on today's weekday, so that each is whole, and a day that she keeps free stays that day. A week
    is rested where the project was, for most of it. So many empty weeks on end as no holiday has are a rest
    as well, whether she called it one or not; fewer count as they fell.
    """
    weeks: list[Week] = []
    empty: list[Week] = []
    first = today - SEVEN * DAY
    while first >= since and len(weeks) < MOST_WEEKS:
        days = [first + n * DAY for n in range(SEVEN)]
        if sum(any(span.holds(day) for span in rested) for day in days) <= SEVEN // 2:
            empty.append(tuple(laid.get(day, 0) for day in days))
        if empty and any(empty[-1]):
            weeks += empty if len(empty) <= REST else empty[-1:]
            empty = []
        first -= SEVEN * DAY
    weeks += empty if len(empty) < REST else []
    return tuple(reversed(weeks[:MOST_WEEKS]))


@lru_cache(maxsize=512)
def finish(weeks: tuple[Week, ...], left: float, today: date) -> Finish | None:
    """Forecast when ``left`` stitches will be laid, counted from the beginning of today.

    None where there are too few weeks, or where too many futures do not come to an end in twenty years.
    """
    if len(weeks) < WEEKS or left <= 0:
        return None
    luck = Random(SEED)
    days = sorted(_days_until(weeks, left, luck) for _ in range(RUNS))
    early, middle, late = (days[ceil(part * RUNS) - 1] for part in (0.1, 0.5, 0.9))
    if late >= HORIZON * SEVEN:
        return None
    return Finish(*(today + n * DAY for n in (early, middle, late)))


def _days_until(weeks: Sequence[Week], left: float, luck: Random) -> int:
    """Live one future: give the days from today to the one on which the last stitch is laid."""
    block = block_weeks(len(weeks))
    past = drawn(weeks, len(weeks), block, luck)
    was, now = (sum(map(sum, some)) for some in (weeks, past))
    further = was + apart(len(weeks)) * (now - was)
    if now <= 0 or further <= 0 or left * len(weeks) / further > HORIZON:
        return HORIZON * SEVEN
    left *= now / further  # instead of scaling each week
    weeks_done = 0
    while weeks_done < HORIZON:
        future = drawn(past, ceil(left * len(past) / now) + 8, block, luck)
        sums = list(accumulate(map(sum, future)))
        if sums[-1] >= left:
            which = bisect_left(sums, left)
            before = sums[which - 1] if which else 0
            return (weeks_done + which) * SEVEN + bisect_left(list(accumulate(future[which])), left - before)
        left -= sums[-1]
        weeks_done += len(future)
    return HORIZON * SEVEN


def apart(weeks: int) -> float:
    """Tell how many times as far from the truth the pace of so few weeks may lie as a draw from them shows.

    The root is that of the variance of a sample, and the part of one in so many stands for the tails of
    Student's t. The factor before them is set by simulated stitchers (``python -m tests.bench finish``): busy
    spells last longer than the blocks, and few weeks show few holidays.
    """
    return 1.4 * sqrt(weeks / (weeks - 1)) * weeks / (weeks - 1)


def drawn(items: Sequence[Item], count: int, block: int, luck: Random) -> list[Item]:
    """Draw ``count`` items in blocks of neighbours; the first follows the last."""
    ring = [*items, *items[: block - 1]]
    starts = luck.choices(range(len(items)), k=ceil(count / block))
    return [item for start in starts for item in ring[start : start + block]][:count]


def block_weeks(weeks: int) -> int:
    """Choose how many weeks a block has: the cube root of how many there are, as is usual for a bootstrap."""
    return round(cbrt(weeks))


def left_to_lay(
    total: int | None, laid: int, area: int, done: Iterable[tuple[int, int]], expected: int | None = None
) -> float | None:
    """Tell how many stitches are left.

    ``total`` is the chart's own number, where it is known: then that decides. Else the part of ``area``
    (squares of the chart) that is not done is taken to be as full as the places that are: ``done`` gives the
    area and the stitches of each. With fewer than three of them, or where nothing is counted in them,
    ``expected`` stitches for the whole chart; without that, none: it cannot be told. Where more was taken out
    than was ever counted, nothing is there.
    """
    laid = max(laid, 0)
    if total is not None:
        return max(total - laid, 0)
    places = list(done)
    full = sum(of for of, _ in places)
    if full >= area:
        return 0
    counted = sum(max(stitches, 0) for _, stitches in places)
    if len(places) >= PLACES and full and counted:
        whole = counted / full * area
    elif expected is not None:
        whole = expected
    else:
        return None
    return max(whole - laid, 0)
