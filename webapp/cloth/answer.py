"""Everything the gauge answers, from readings and the table of standards; figures only, unrounded."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from webapp.cloth.gauge import INCH, Measured, Reading, combine, measure, student
from webapp.cloth.naming import Judged, Standard, distance, judge, likeliest, settling_length

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

    measured: of both ways together if square, else along; holes: the count if holes were counted (n squares
    have n + 1 holes, catkinandlillie.com/post/all-about-cross-stitch-fabric-count), holes_name its
    likeliest name; over_two: the stitches an inch over two threads; asked_length: the least length good
    practice asks, None if reached; settling: the length that would settle the name; other_unit, other_kind:
    the name it would have if the unit, or what was counted, was the other one, given only where no name
    could be.
    """

    kind: str
    unit: str
    measured: Measured
    along: Measured
    across: Measured | None
    square: Square | None
    judged: Judged
    holes: float
    holes_name: float | None
    over_two: float | None
    asked_length: float | None
    settling: float | None
    other_unit: float | None
    other_kind: float | None


def answer(readings: Sequence[Reading], kind: str, unit: str, table: Table) -> Answer:
    """Answer for readings of one cloth, at least one of them along."""
    standards = table.of(kind)
    along = measure([r for r in readings if r.way == "along"])
    crosswise = [r for r in readings if r.way == "across"]
    across = measure(crosswise) if crosswise else None
    square = compare(along, across) if across else None
    used = (
        readings
        if square is None or square.verdict == "square"
        else [r for r in readings if r.way == "along"]
    )
    measured = measure(used)
    judged = judge(measured, standards, table.none_weight)
    fits = likeliest(judged) is not None
    holes = measure([replace(r, counted=r.counted - 1) for r in used])
    return Answer(
        kind=kind,
        unit=unit,
        measured=measured,
        along=along,
        across=across,
        square=square,
        judged=judged,
        holes=holes.count,
        holes_name=likeliest(judge(holes, standards, table.none_weight)),
        over_two=measured.count / 2 if kind == "threads" else None,
        asked_length=_asked(measured, table.steps),
        settling=settling_length(max(used, key=lambda r: r.length), judged, standards),
        other_unit=None if fits else _other_unit(measured, unit, standards),
        other_kind=None if fits else _fitting(measured, 1.0, table.of(KINDS[kind == "squares"])),
    )


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
