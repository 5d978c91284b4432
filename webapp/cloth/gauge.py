"""The gauge: how many squares or threads an inch holds, and how far that may be off.

The measurement, after JCGM 100 (GUM), bipm.org/en/committees/jc/jcgm/publications:
    count c = 25.4 N / L, with N squares or threads counted (all places together) along L millimetres of tape.

What is unsure about it, each a rectangular distribution of half-width a, so of standard uncertainty a / √3
(4.3.7):
    part    the part of a square at either end: ½ where she rounds to whole squares, ¼ where to halves (N is
            not whole), ⅛ between two pins, which stand somewhere in their holes; sensitivity ∂c/∂N = 25.4 / L
    tape    reading the tape at either end: half of its smallest division; sensitivity ∂c/∂L = -c / L
    spread  what several places of one way differ by (4.2.3, type A): the cloth's own unevenness, and what of
            the reading differs too, which is so counted twice: rather too wide than falsely sure

Of m places one end is taken as independent from place to place and the other as common to all, since
counts begun alike (at a line, for the same length) leave the same part of a square each time: u² = ((Σa)²
+ Σa²) / 3, which is 2a² / 3 for one place.

Whole numbers may also come of counting whole squares only, from a line: the part at the end, rectangular
from 0 to 1 square, is then left out at each place alike. That is taken of one stitcher in four (common
practice, no source), and both together as one distribution: N is short by m / 8 squares in the mean, and
part² = ¾ u² + ¼ (m / 2)² / 3 + ¼ · ¾ (m / 2)². Being a guess about her and not about the cloth, the mean is
no correction of the count itself: the intervals lie about c + short (F.2.4.5 allows for it so). Whole
squares counted with the tape laid anywhere are short at both ends, and not in it: the page says to begin on
a line.

Combined, u² = part² + tape² + spread² (5.1.2); the factor k is
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
WHOLE_ONLY = 0.25  # how many who give whole numbers leave the part out (common practice, no source)
NOISE = 1e-9  # of the count: what arithmetic may make of places that are alike

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

    uncertainty: standard, per inch, and its components part, tape and spread; short: how much of the count,
    per inch, is left out at the ends in the mean: the intervals lie about count + short, the middle; freedom:
    effective degrees of freedom, None where endless; low and high hold the truth 19 times in 20, surely_low
    and surely_high 999 times in 1,000; length: mm, the longest measured at one place; places: how many.
    """

    count: float
    uncertainty: float
    part: float
    tape: float
    spread: float
    short: float
    freedom: float | None
    factor: float
    sure_factor: float
    low: float
    high: float
    surely_low: float
    surely_high: float
    length: float
    places: int

    @property
    def middle(self) -> float:
        """Give the middle of the intervals, per inch."""
        return self.count + self.short


def end_part(reading: Reading) -> float:
    """Give the half-width, in squares, of the part of a square unknown at either end."""
    if reading.pins:
        return PIN
    return 0.5 if reading.counted % 1 == 0 else 0.25


def both_ends(half_widths: Sequence[float]) -> float:
    """Give the variance of a sum of readings with two unsure ends, one independent, one common to all."""
    total = sum(half_widths)
    return (total * total + sum(a * a for a in half_widths)) / 3


def ends(readings: Sequence[Reading]) -> tuple[float, float]:
    """Give the variance that the parts at the ends leave in a count, and how many squares it is short."""
    rounded = both_ends([end_part(r) for r in readings])
    if any(r.pins or r.counted % 1 for r in readings):
        return rounded, 0.0
    half = len(readings) / 2  # of what is left out, the mean and the half-width both
    left_out = WHOLE_ONLY * half * half / 3 + WHOLE_ONLY * (1 - WHOLE_ONLY) * half * half
    return (1 - WHOLE_ONLY) * rounded + left_out, WHOLE_ONLY * half


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
    count = sum(r.counted for r in readings) / total * INCH
    return [(u, freedom) for u, freedom in found if u > NOISE * count]


def measure(readings: Sequence[Reading]) -> Measured:
    """Give the count per inch of one or several readings of the same cloth, with its error."""
    total = sum(r.length for r in readings)
    count = sum(r.counted for r in readings) / total * INCH
    variance, left_out = ends(readings)
    part, short = sqrt(variance) * INCH / total, left_out * INCH / total
    tape = sqrt(both_ends([r.division / 2 for r in readings])) * count / total
    uneven = spreads(readings, total)
    u, freedom = combine([(part, None), (tape, None), *uneven])
    k, sure = student(freedom)
    middle = count + short
    return Measured(
        *(count, u, part, tape, combine(uneven)[0], short, freedom, k, sure),
        low=middle - k * u,
        high=middle + k * u,
        surely_low=middle - sure * u,
        surely_high=middle + sure * u,
        length=max(r.length for r in readings),
        places=len(readings),
    )
