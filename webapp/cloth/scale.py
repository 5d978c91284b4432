"""The line under the figure: where the count and its interval lie among the standards. Geometry only."""

from collections.abc import Sequence
from dataclasses import dataclass

from webapp.cloth.gauge import Measured
from webapp.cloth.naming import Judged

LEFT, RIGHT = 20, 306  # the line's ends, in units of a drawing 326 wide
SHOWN = 4  # at least so many counts
APART = 20  # least between two of them that are written out


@dataclass(frozen=True)
class Mark:
    """One standard count on the line; written: whether there is room for its figure."""

    x: float
    count: float
    verdict: str
    written: bool


@dataclass(frozen=True)
class Scale:
    """The marks, where the interval begins and ends, where the count is; the same across, if it differs."""

    marks: Sequence[Mark]
    low: float
    high: float
    at: float
    across: tuple[float, float, float] | None = None


def scale(measured: Measured, judged: Judged, across: Measured | None = None) -> Scale:
    """Lay the counts round the interval out along the line, the outermost of them (or of it) at its ends."""
    counts = [name.count for name in judged.names]
    low = min(measured.low, across.low) if across else measured.low
    high = max(measured.high, across.high) if across else measured.high
    first, last = _window(counts, low, high)
    least, most = min(counts[first], low), max(counts[last], high)

    def place(count: float) -> float:
        x = LEFT + (RIGHT - LEFT) * (count - least) / (most - least)
        return int(x * 10 + 0.5) / 10

    shown = judged.names[first : last + 1]
    written = _written([place(n.count) for n in shown], [n.verdict == "could be" for n in shown])
    marks = [Mark(place(n.count), n.count, n.verdict, i in written) for i, n in enumerate(shown)]
    other = (place(across.low), place(across.high), place(across.count)) if across else None
    return Scale(marks, place(measured.low), place(measured.high), place(measured.count), other)


def _window(counts: Sequence[float], low: float, high: float) -> tuple[int, int]:
    """Choose from the last count below the interval to the first above it, and widen it in turn."""
    first = max((i for i, c in enumerate(counts) if c <= low), default=0)
    last = min((i for i, c in enumerate(counts) if c >= high), default=len(counts) - 1)
    while last - first < SHOWN - 1:
        if last < len(counts) - 1:
            last += 1
        if first > 0 and last - first < SHOWN - 1:
            first -= 1
    return first, last


def _written(places: Sequence[float], fits: Sequence[bool]) -> list[int]:
    """Choose the counts that are written out, those that could be first, and none too near another."""
    written: list[int] = []
    for i in sorted(range(len(places)), key=lambda i: not fits[i]):
        if all(abs(places[i] - places[other]) >= APART for other in written):
            written.append(i)
    return written
