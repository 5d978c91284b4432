"""Everything the gauge answers, from readings and the table of standards; figures only, unrounded."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from webapp.cloth.changed import Changed, changed
from webapp.cloth.gauge import INCH, Measured, Reading, combine, measure, student
from webapp.cloth.naming import Judged, Standard, distance, either, judge, likeliest, settling_length

KINDS = ("squares", "threads")


@dataclass(frozen=True)
class Table:
    """The reference table: standards, the weight of none of them, steps [per 10 cm up to, least mm]."""

    standards: Sequence[Standard]
    none_weight: float
    steps: Sequence[Sequence[float]]

    def of(self, kind: str) -> list[Standard]:
        """List the standards that are counted in ``kind``."""
        return [s for s in self.standards if kind in s.kinds]


@dataclass(frozen=True)
class Square:
    """Along against across.

    verdict: "square" where reading explains the difference at 95 %, "uneven" where it does not at 99.9 %,
    "perhaps" between; along_mm, across_mm: what 100 squares or threads measure; percent: across against
    along.
    """

    verdict: str
    along_mm: float
    across_mm: float
    percent: float


@dataclass(frozen=True)
class Answer:
    """What cloth this is. Counts per inch, lengths in mm, None where it does not apply.

    measured: of both ways together if square, else along; ways: along and across judged each by itself where
    it may not be square, and then judged is of either; changed: what may have become it; holes: the count if
    holes were counted (n squares have n + 1 holes,
    catkinandlillie.com/post/all-about-cross-stitch-fabric-count), holes_name its likeliest name, holes_across
    the other way where it may not be square; over_two: the stitches an inch over two threads, over_two_name
    the Aida its one name is then the same as; asked_length: the least length good practice asks, None if
    reached; settling: the length that would settle the name; other_unit, other_kind: the name it would have
    if the unit, or what was counted, was the other one, given only where no name could be.
    """

    kind: str
    unit: str
    measured: Measured
    along: Measured
    across: Measured | None
    square: Square | None
    judged: Judged
    ways: tuple[Judged, Judged] | None
    changed: Sequence[Changed]
    holes: float
    holes_name: float | None
    holes_across: float | None
    over_two: float | None
    over_two_name: float | None
    asked_length: float | None
    settling: float | None
    other_unit: float | None
    other_kind: float | None


def answer(readings: Sequence[Reading], kind: str, unit: str, table: Table) -> Answer:
    """Answer for readings of one cloth, at least one of them along."""
    standards = table.of(kind)
    lengthwise = [r for r in readings if r.way == "along"]
    crosswise = [r for r in readings if r.way == "across"]
    along, across = measure(lengthwise), measure(crosswise) if crosswise else None
    square = compare(along, across) if across else None
    apart = across if square and square.verdict != "square" else None
    used = lengthwise if apart else readings
    measured = measure(used)
    judged = judge(measured, standards, table.none_weight)
    ways = (judged, judge(apart, standards, table.none_weight)) if apart else None
    judged = either(*ways) if ways else judged
    fits = likeliest(judged) is not None
    holes = _holes(used)
    return Answer(
        kind=kind,
        unit=unit,
        measured=measured,
        along=along,
        across=across,
        square=square,
        judged=judged,
        ways=ways,
        changed=[] if ways else changed(measured, judged, standards),
        holes=holes.count,
        holes_name=likeliest(judge(holes, standards, table.none_weight)),
        holes_across=_holes(crosswise).count if apart else None,
        over_two=measured.count / 2 if kind == "threads" else None,
        over_two_name=_over_two(judged, table) if kind == "threads" else None,
        asked_length=_asked(measured, table.steps),
        settling=None if ways else settling_length(max(used, key=_length), judged, standards),
        other_unit=None if fits else _other_unit(measured, unit, standards),
        other_kind=None if fits else _fitting(measured, 1.0, table.of(KINDS[kind == "squares"])),
    )


def _length(reading: Reading) -> float:
    return reading.length


def _holes(readings: Sequence[Reading]) -> Measured:
    return measure([replace(r, counted=r.counted - 1) for r in readings])


def _over_two(judged: Judged, table: Table) -> float | None:
    """Give the Aida that cloth of one name is the same as over two threads, if there is such."""
    fits = [name.count / 2 for name in judged.names if name.verdict == "could be"]
    return fits[0] if len(fits) == 1 and fits[0] in {s.count for s in table.of("squares")} else None


def compare(along: Measured, across: Measured) -> Square:
    """Tell whether the cloth is square, and what 100 squares or threads of it measure either way."""
    u, freedom = combine([(along.uncertainty, along.freedom), (across.uncertainty, across.freedom)])
    factor, sure = student(freedom)
    off = abs(along.middle - across.middle) / u
    verdict = "square" if off <= factor else "perhaps" if off <= sure else "uneven"
    ratio = along.count / across.count
    return Square(verdict, 100 * INCH / along.count, 100 * INCH / across.count, (ratio - 1) * 100)


def _asked(measured: Measured, steps: Sequence[Sequence[float]]) -> float | None:
    dense = measured.count * 100 / INCH
    asked = next((least for upto, least in steps if dense <= upto), steps[-1][1])
    return asked if measured.length < asked else None


def _other_unit(measured: Measured, unit: str, standards: Sequence[Standard]) -> float | None:
    return _fitting(measured, 2.54 if unit == "in" else 1 / 2.54, standards)


def _fitting(measured: Measured, times: float, standards: Sequence[Standard]) -> float | None:
    count, reach = measured.middle * times, measured.factor * measured.uncertainty * times
    near = [s for s in standards if distance(count, s) <= reach]
    return min(near, key=lambda s: abs(s.count - count)).count if near else None
