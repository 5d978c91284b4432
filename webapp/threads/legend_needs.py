"""How much thread the lines of a legend need on their cloth, each thread of a blend by itself. Pure."""

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from math import fsum
from typing import Any, NamedTuple

from webapp.cloth import advice
from webapp.threads.estimate import Estimate, Own, Worked, estimate, whole
from webapp.threads.geometry import Ground
from webapp.threads.kinds import deciding, worked
from webapp.threads.legend import Line, Part

Kinds = Mapping[str, Mapping[str, Any]]


class Need(NamedTuple):
    """One thread of a line: how it is worked, and what it takes."""

    part: Part
    worked: Worked
    takes: Estimate


class Bought(NamedTuple):
    """What is to be bought of one kind of thing over all the lines: "skein", least, most."""

    sold: str
    least: int
    most: int


def usual_strands(kind: str, per_inch: float, kinds: Kinds, strands: Mapping[str, Any]) -> int:
    """Give the usual strands: of a thread of six by the stitches an inch, else as its kind is used."""
    row = kinds[kind]
    return advice.strands(per_inch, strands).usual if row["strands"] == 6 else int(row["used"])


def how_worked(line: Line, kinds: Kinds) -> list[Worked]:
    """Tell how each thread of a line is worked."""
    return worked(kinds, [(part.kind, part.strands) for part in line.parts], line.method, line.working)


def lead(line: Line, kinds: Kinds) -> Mapping[str, Any]:
    """Give the row of the kind that decides how a line is cut."""
    return kinds[deciding(kinds, [part.kind for part in line.parts])]


def needs(line: Line, ground: Ground, kinds: Kinds, own: Own | None = None) -> list[Need]:
    """Estimate each thread of a line."""
    return [
        Need(part, how, estimate(ground, line.counts, how, kinds[part.kind], line.patches, line.scatter, own))
        for part, how in zip(line.parts, how_worked(line, kinds), strict=True)
    ]


def bought(found: Iterable[Sequence[Need]], kinds: Kinds) -> list[Bought]:
    """Add up what is to be bought, by what it is sold in: a thread that several lines use is bought once."""
    threads: dict[tuple[str, str], list[Need]] = defaultdict(list)
    for need in (need for line in found for need in line):
        threads[need.part.used.casefold(), need.part.kind].append(need)
    sums: dict[str, list[int]] = defaultdict(lambda: [0, 0])
    for (_name, kind), needed in threads.items():
        row = kinds[kind]
        for n, many in enumerate(_units(needed, row)):
            sums[str(row["sold"])][n] += many
    return [Bought(sold, *sums[sold]) for sold in ("skein", "spool", "bead") if sums[sold][1]]


def _units(needed: Sequence[Need], row: Mapping[str, Any]) -> tuple[int, int]:
    """Give the least and the most of one thread; its lines may all be off the same way."""
    if len(needed) == 1 or row["sold"] == "bead":
        least, most = zip(*(need.takes.units for need in needed), strict=True)
        return sum(least), sum(most)
    low, high = (
        fsum(end) for end in zip(*((n.takes.sold.low, n.takes.sold.high) for n in needed), strict=True)
    )
    return whole(low / row["length_mm"]), whole(high / row["length_mm"])
