"""The line under the figure: where the count and its interval lie among the standards. Geometry only."""

from collections.abc import Sequence
from dataclasses import dataclass

from webapp.cloth.gauge import Measured
from webapp.cloth.naming import Judged

LEFT, RIGHT = 20, 306  # the line's ends, in units of a drawing 326 wide
SHOWN = 4  # at least so many counts


@dataclass(frozen=True)
class Mark:
    """One standard count on the line."""

    x: float
    count: float
    verdict: str


@dataclass(frozen=True)
class Scale:
    """The marks, where the interval begins and ends, and where the count is."""

    marks: Sequence[Mark]
    low: float
    high: float
    at: float


def scale(measured: Measured, judged: Judged) -> Scale:
    """Lay the counts round the interval out along the line, the outermost of them (or of it) at its ends."""
    counts = [name.count for name in judged.names]
    first, last = _window(counts, measured.low, measured.high)
    least, most = min(counts[first], measured.low), max(counts[last], measured.high)

    def place(count: float) -> float:
        x = LEFT + (RIGHT - LEFT) * (count - least) / (most - least)
        return int(x * 10 + 0.5) / 10

    marks = [Mark(place(n.count), n.count, n.verdict) for n in judged.names[first : last + 1]]
    return Scale(marks, place(measured.low), place(measured.high), place(measured.count))


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
