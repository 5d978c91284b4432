"""The gauge: how many squares or threads an inch holds, and how far that may be off.

The measurement, after JCGM 100 (GUM), bipm.org/en/committees/jc/jcgm/publications:
    count c = 25.4 N / L, with N squares or threads counted (all places together) along L millimetres of tape.

What is unsure about it, each a rectangular distribution of half-width a, so of standard uncertainty a / √3
(4.3.7):
    part    the part of a square at either end: ½ where whole squares are counted, ¼ where halves are (N is
            not whole), ⅛ between two pins, which stand somewhere in their holes; sensitivity ∂c/∂N = 25.4 / L
    tape    reading the tape at either end: half of its smallest division; sensitivity ∂c/∂L = -c / L
    spread  what several places of one way differ by (4.2.3, type A): the cloth's own unevenness, and what of
            the reading differs too, which is so counted twice: rather too wide than falsely sure

Of m places one end is taken as independent from place to place and the other as common to all, since
counts begun alike (at a line, for the same length) leave the same part of a square each time: u² = ((Σa)²
+ Σa²) / 3, which is 2a² / 3 for one place. Combined, u² = part² + tape² + spread² (5.1.2); the factor k is
Student's for the effective degrees of freedom of Welch and Satterthwaite (G.4), 1.96 where no spread is in
it.

One reading speaks for the place it was taken at. A tape that is stretched, cloth pulled or creased, and a
square missed or counted twice are not in it. Two places of uneven cloth say little about the rest: take
three or more.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import inf, sqrt

INCH = 25.4  # mm, exact
PIN = 0.125  # of a square: a pin stands somewhere in its hole (common practice, no source)

# Student's t, two-sided, at 95 % (JCGM 100 table G.2) and at 99.9 %, by degrees of freedom.
STUDENT = (
    (1, 12.706, 636.62), (2, 4.303, 31.599), (3, 3.182, 12.924), (4, 2.776, 8.610), (5, 2.571, 6.869),
    (6, 2.447, 5.959), (7, 2.365, 5.408), (8, 2.306, 5.041), (9, 2.262, 4.781), (10, 2.228, 4.587),
    (15, 2.131, 4.073), (20, 2.086, 3.850), (30, 2.042, 3.646), (50, 2.009, 3.496), (100, 1.984, 3.390),
    (inf, 1.960, 3.291),
)  # fmt: skip


@dataclass(frozen=True)
class Reading:
    """One count along a tape.

    counted: squares or threads, in halves at the finest; length: mm; division: the tape's smallest, mm;
    pins: counted between two pins, and the tape read from the one to the other; way: "along" or "across"
    the cloth.
    """

    counted: float
    length: float
    division: float
    pins: bool = False
    way: str = "along"


@dataclass(frozen=True)
class Measured:
    """A count per inch with its error.

    uncertainty: standard, per inch, and its components part, tape and spread; freedom: effective degrees of
    freedom, None where endless; low and high hold the truth 19 times in 20, surely_low and surely_high 999
    times in 1,000; length: mm, the longest measured at one place; places: how many.
    """

    count: float
    uncertainty: float
    part: float
    tape: float
    spread: float
    freedom: float | None
    factor: float
    sure_factor: float
    low: float
    high: float
    surely_low: float
    surely_high: float
    length: float
    places: int


def end_part(reading: Reading) -> float:
    """Give the half-width, in squares, of the part of a square unknown at either end."""
    if reading.pins:
        return PIN
    return 0.5 if reading.counted % 1 == 0 else 0.25


def both_ends(half_widths: Sequence[float]) -> float:
    """Give the variance of a sum of readings with two unsure ends, one independent, one common to all."""
    total = sum(half_widths)
    return (total * total + sum(a * a for a in half_widths)) / 3


def student(freedom: float | None) -> tuple[float, float]:
    """Give the factors for 95 % and 99.9 % at so many degrees, rounded down (G.4.1); None is endless."""
    degrees = max(1.0, inf if freedom is None else freedom)
    row = [row for row in STUDENT if row[0] <= degrees][-1]
    return row[1], row[2]


def combine(parts: Sequence[tuple[float, float | None]]) -> tuple[float, float | None]:
    """Combine independent (uncertainty, degrees of freedom or None): 5.1.2, and G.4.1 for the freedom."""
    variance = sum(u * u for u, _freedom in parts)
    limited = sum(u * u * u * u / freedom for u, freedom in parts if freedom is not None)
    return sqrt(variance), variance * variance / limited if limited > 0 else None


def spread(readings: Sequence[Reading]) -> float:
    """Give the standard uncertainty, per inch, of the mean of several places from their scatter.

    The counts are weighted by length (4.2.3); 0 for one place.
    """
    places = len(readings)
    if places < 2:
        return 0.0
    total = sum(r.length for r in readings)
    count = sum(r.counted for r in readings) / total * INCH
    seen = 0.0
    for r in readings:
        off = (r.counted / r.length * INCH - count) * r.length / total
        seen += off * off
    return sqrt(seen * places / (places - 1))


def spreads(readings: Sequence[Reading], total: float) -> list[tuple[float, float]]:
    """Give the spread of either way of the cloth, by its share of the length, with its degrees of freedom."""
    found = []
    for way in ("along", "across"):
        same = [r for r in readings if r.way == way]
        share = sum(r.length for r in same) / total
        found.append((spread(same) * share, len(same) - 1.0))
    return [(u, freedom) for u, freedom in found if u > 0]


def measure(readings: Sequence[Reading]) -> Measured:
    """Give the count per inch of one or several readings of the same cloth, with its error."""
    total = sum(r.length for r in readings)
    count = sum(r.counted for r in readings) / total * INCH
    part = sqrt(both_ends([end_part(r) for r in readings])) * INCH / total
    tape = sqrt(both_ends([r.division / 2 for r in readings])) * count / total
    uneven = spreads(readings, total)
    u, freedom = combine([(part, None), (tape, None), *uneven])
    scatter = combine(uneven)[0]
    return stated(count, u, freedom, part, tape, scatter, max(r.length for r in readings), len(readings))


def stated(
    count: float,
    u: float,
    freedom: float | None,
    part: float,
    tape: float,
    uneven: float,
    length: float,
    places: int,
) -> Measured:
    """State a count with the intervals of its standard uncertainty ``u``, all per inch; length in mm."""
    k, sure = student(freedom)
    return Measured(
        count,
        u,
        part,
        tape,
        uneven,
        freedom,
        k,
        sure,
        count - k * u,
        count + k * u,
        count - sure * u,
        count + sure * u,
        length,
        places,
    )
