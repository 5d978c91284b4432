"""Time as woven bands: one weft thread for so many minutes, a weave and a colour for each project. Pure."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import timedelta
from typing import TypeVar

Key = TypeVar("Key")

MINUTES = (3, 5, 6, 10, 15, 20, 30, 60, 90, 120, 180, 240, 360)  # what one thread may stand for
WEAVES = 5


@dataclass(frozen=True)
class Loom:
    """What bands are woven on, in the units of the drawing."""

    wide: float  # a band
    pitch: float  # from thread to thread
    slip: float  # by which every other thread is set off
    threads: int  # at most, in the tallest band


WIDTH, FOOT = 294, 164
COLUMN = WIDTH / 7
WEEK = Loom(29.0, 6.0, 1.5, 24)

# Where the floats of a thread lie, as parts of the band's width, over the threads that repeat.
PATTERNS: tuple[tuple[tuple[tuple[float, float], ...], ...], ...] = (
    (((0, 1),), ((0, 1),)),  # plain: whole threads
    (((0.0, 0.28), (0.5, 1.0)), ((0.0, 0.5), (0.72, 1.0))),  # twill: the gap steps
    (((0, 0.4), (0.6, 1)), ((0, 0.4), (0.6, 1))),  # two cords
    (((0.16, 0.84),), ((0, 1),)),  # cogged edges
    (((0, 0.2), (0.4, 0.6), (0.8, 1)), ((0, 0.2), (0.4, 0.6), (0.8, 1))),  # three cords
)


@dataclass(frozen=True)
class Float:
    """The threads of one weave and tone in a band, as the path of an SVG."""

    weave: int
    back: bool
    path: str


@dataclass(frozen=True)
class Band:
    """One day's column: its middle, how high it stands, and its threads."""

    middle: float
    top: float
    floats: list[Float]


def weaves_of(shown: Iterable[Key], all_of_hers: Sequence[Key]) -> dict[Key, int]:
    """Give each project shown a weave, 0 to 4: its own from week to week, by its age among all of hers.

    Where two of a week would share one, the younger takes the next that is free, while there is one.
    """
    given: dict[Key, int] = {}
    for project in sorted(shown, key=all_of_hers.index):
        age = all_of_hers.index(project)
        ways = [(age + n) % WEAVES for n in range(WEAVES)]
        given[project] = next((way for way in ways if way not in given.values()), ways[0])
    return given


def thread_minutes(longest: timedelta, loom: Loom = WEEK) -> int:
    """Choose what one thread stands for, so that the longest day has no more than fit."""
    return next((m for m in MINUTES if longest <= timedelta(minutes=m * loom.threads)), MINUTES[-1])


def thread_counts(times: Sequence[timedelta], each: timedelta) -> list[int]:
    """Share out as many threads as all the times come to together, one where that is less than half of one.

    First the longest have one each, while there are any, so that what is there is seen; every further one
    goes where the most time is for the threads so far (the method of odd numbers, by which seats are given).
    """
    counts, parts = [0] * len(times), [time / each for time in times]
    for _ in range(max(round(sum(times, timedelta()) / each), any(times))):
        due = [(part > 0 and not n, part / (2 * n + 1)) for part, n in zip(parts, counts, strict=True)]
        counts[due.index(max(due))] += 1
    return counts


def drawn(
    weave: int, left: float, first: int, count: int, foot: float = FOOT, loom: Loom = WEEK
) -> list[Float]:
    """Draw ``count`` threads of a weave upwards, the first one ``first`` threads above the foot."""
    tones: dict[bool, list[str]] = {False: [], True: []}
    for n in range(first, first + count):
        back = bool(n % 2)
        start, y = left + loom.slip * back, foot - n * loom.pitch
        for begin, end in PATTERNS[weave][n % 2]:
            tones[back].append(f"M{start + begin * loom.wide:.1f} {y:.4g}h{(end - begin) * loom.wide:.1f}")
    return [Float(weave, back, "".join(path)) for back, path in tones.items() if path]


def swatch(weave: int) -> list[Float]:
    """Weave four threads, to show which weave is whose."""
    return drawn(weave, 0, 0, 4)


def stacked(
    shares: Sequence[tuple[int, timedelta]], each: timedelta, left: float, foot: float, loom: Loom
) -> tuple[list[Float], int]:
    """Weave one day from its (weave, time), one upon the other; gives the threads and how many there are."""
    floats: list[Float] = []
    height = 0
    for (weave, _), count in zip(shares, thread_counts([time for _, time in shares], each), strict=True):
        floats += drawn(weave, left, height, count, foot, loom)
        height += count
    return floats, height


def band(day: int, shares: Sequence[tuple[int, timedelta]], each: timedelta) -> Band:
    """Weave one day of a week, 0 to 6, from its (weave, time)."""
    left = day * COLUMN + (COLUMN - WEEK.wide - WEEK.slip) / 2
    floats, height = stacked(shares, each, left, FOOT, WEEK)
    return Band(day * COLUMN + COLUMN / 2, FOOT - max(height - 1, 0) * WEEK.pitch, floats)
