"""The names cloth is sold by: which a measured count could be, how likely each is, and which are ruled out.

A name is not a measurement: cloth sold as 14 is woven to 54 or 55 per 10 cm, so a name stands for the range
of counts published for it. A name *could be* where the 95 % interval reaches its range, is *ruled out*
where even the 99.9 % interval does not, and *unlikely* between. One is *sure* where it could be, every
other is ruled out, and the whole 99.9 % interval is nearer to it than to any other name, so that it holds
for cloth sold by no name as well.

Likelihood is Bayes' rule with a normal error, each name's range being a rectangle and "none of these"
spread evenly (in proportion) from the coarsest to the finest cloth; the weights before measuring are in the
table.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import exp, log, sqrt

from webapp.cloth.gauge import INCH, Measured, Reading, ends

COARSEST, FINEST = 4, 80  # per inch; beyond, no cloth is for counting (common practice, no source)
STRETCHED = 12 / 14  # a 14 stretched on a frame read about 12: lordlibidan.com
SHRUNK_LEAST, SHRUNK = 34 / 32, 35 / 32  # a dyed 32 may shrink to 34 or 35: kittenstitcher.com


@dataclass(frozen=True)
class Standard:
    """A count cloth is sold by, per inch: its name, the range it stands for, its weight before measuring.

    also: figures per 10 cm that are sold by this name too, out of its range.
    """

    count: float
    low: float
    high: float
    weight: float
    kinds: Sequence[str] = ()
    also: Sequence[float] = ()


@dataclass(frozen=True)
class Name:
    """What became of one standard; off: standard uncertainties between the measured count and its range."""

    count: float
    off: float
    verdict: str  # could be, unlikely, ruled out
    likelihood: float


@dataclass(frozen=True)
class Judged:
    """All standards judged; none: how likely it is none of them; sure: the count that is sure, or None."""

    names: Sequence[Name]
    none: float
    sure: float | None


def normal(z: float) -> float:
    """Give the standard normal distribution function to 1e-7: Abramowitz and Stegun, 26.2.17."""
    t = 1 / (1 + 0.2316419 * abs(z))
    series = 0.319381530 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429)))
    tail = exp(-z * z / 2) / 2.5066282746310002 * t * series
    return tail if z < 0 else 1 - tail


def distance(count: float, standard: Standard) -> float:
    """Tell how far, per inch, a count lies from the range a name stands for; 0 within."""
    return max(standard.low - count, count - standard.high, 0.0)


def beyond(measured: Measured, standards: Sequence[Standard]) -> str:
    """Tell whether a count is "coarser" or "finer" than any such cloth, stretched or shrunk, could be; or "".

    Only where the whole 95 % interval is.
    """
    if measured.high < min(s.low for s in standards) * STRETCHED:
        return "coarser"
    return "finer" if measured.low > max(s.high for s in standards) * SHRUNK else ""


def cell(standard: Standard, standards: Sequence[Standard]) -> tuple[float, float]:
    """Give the ends, per inch, of the counts nearer to this name than to any other."""
    counts = [s.count for s in standards]
    below = max((c for c in counts if c < standard.count), default=None)
    above = min((c for c in counts if c > standard.count), default=None)
    left = (standard.count - below) / 2 if below is not None else None
    right = (above - standard.count) / 2 if above is not None else None
    return standard.count - (left or right or 1.0), standard.count + (right or left or 1.0)


def judge(measured: Measured, standards: Sequence[Standard], none_weight: float) -> Judged:
    """Judge every standard by a measured count."""
    u = measured.uncertainty * measured.factor / 1.96  # few places make the error's tails longer
    masses = [_mass(measured.middle, u, s) for s in standards]
    none = none_weight * _density_of_none(measured.middle)
    total = sum(masses) + none
    names = [
        Name(
            s.count, distance(measured.middle, s) / measured.uncertainty, _verdict(measured, s), mass / total
        )
        for s, mass in zip(standards, masses, strict=True)
    ]
    return Judged(names, none / total, _sure(measured, names, standards))


VERDICTS = ("could be", "unlikely", "ruled out")


def either(one: Judged, other: Judged) -> Judged:
    """Judge cloth of two counts, one each way: what holds of either way holds; none of them is sure."""
    pairs = zip(one.names, other.names, strict=True)
    names = [
        Name(
            a.count,
            min(a.off, b.off),
            min(a.verdict, b.verdict, key=VERDICTS.index),
            (a.likelihood + b.likelihood) / 2,
        )
        for a, b in pairs
    ]
    return Judged(names, (one.none + other.none) / 2, None)


def _mass(count: float, u: float, standard: Standard) -> float:
    inside = normal((standard.high - count) / u) - normal((standard.low - count) / u)
    return standard.weight * max(0.0, inside) / (standard.high - standard.low)


def _density_of_none(count: float) -> float:
    return 1 / (count * log(FINEST / COARSEST))


def _verdict(measured: Measured, standard: Standard) -> str:
    off = distance(measured.middle, standard) / measured.uncertainty
    if off <= measured.factor:
        return "could be"
    return "unlikely" if off <= measured.sure_factor else "ruled out"


def _sure(measured: Measured, names: Sequence[Name], standards: Sequence[Standard]) -> float | None:
    left = [s for s, name in zip(standards, names, strict=True) if name.verdict != "ruled out"]
    if len(left) != 1 or distance(measured.middle, left[0]) > measured.factor * measured.uncertainty:
        return None
    low, high = cell(left[0], standards)
    return left[0].count if low < measured.surely_low and measured.surely_high < high else None


def likeliest(judged: Judged) -> float | None:
    """Name the likeliest of the standards it could be, or none."""
    fits = [name for name in judged.names if name.verdict == "could be"]
    return max(fits, key=lambda name: name.likelihood).count if fits else None


def settling_length(reading: Reading, judged: Judged, standards: Sequence[Standard]) -> float | None:
    """Give the length, mm, at which a reading taken like this one would settle the name, 19 times in 20.

    None if it is sure already or no name could be. While other names are left, that is the length that rules
    them out if the likeliest is true; then, the one that makes it sure. The uncertainty of one reading falls
    with its length, u = a / L; the 99.9 % interval and a 95 % run of bad luck must both lie within the room
    there is: L = ((3.291 + 1.960) a + short) / room.
    """
    name = likeliest(judged)
    if judged.sure is not None or name is None:
        return None
    true = next(s for s in standards if s.count == name)
    left = [s for s, n in zip(standards, judged.names, strict=True) if n.verdict != "ruled out"]
    low, high = cell(true, standards)
    rivals = [distance(name, s) for s in left if s is not true]
    room = min(rivals, default=min(name - low, high - name))
    variance, left_out = ends([reading])
    part, tape = sqrt(variance) * INCH, reading.division / 2 * name
    return ((3.291 + 1.960) * sqrt(part * part + 2 / 3 * tape * tape) + left_out * INCH) / room
