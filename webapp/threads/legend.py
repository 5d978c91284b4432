"""A legend: its lines, each a symbol, what is in the needle, and how many stitches of each kind. Pure."""

from collections.abc import Collection, Iterable
from dataclasses import dataclass, replace
from typing import NamedTuple

from webapp.threads.estimate import Counts

MOST_LINES = 500
MOST_PARTS = 4  # threads of a blend
KEY = 100  # characters


@dataclass(frozen=True)
class Part:
    """One thread: as printed, its kind and strands; what she uses ``instead``, or ""; marks of its lots."""

    thread: str
    kind: str = "cotton"
    strands: int = 2
    instead: str = ""
    lots: tuple[str, ...] = ()

    @property
    def used(self) -> str:
        """Name what is in the needle."""
        return self.instead or self.thread


@dataclass(frozen=True)
class Line:
    """One line; backstitch in lengths of one stitch, working length in mm; None: as follows from its kind."""

    parts: tuple[Part, ...]
    symbol: str = ""
    colour: str | None = None
    full: int = 0
    half: int = 0
    quarter: int = 0
    three_quarter: int = 0
    back: int = 0
    knots: int = 0
    beads: int = 0
    method: str | None = None
    scatter: str = "mixed"
    patches: int | None = None
    working: float | None = None
    note: str = ""

    @property
    def counts(self) -> Counts:
        """Count its stitches."""
        return Counts(*(getattr(self, name) for name in Counts._fields))

    @property
    def printed(self) -> str:
        """Name it as the pattern does."""
        return " + ".join(part.thread for part in self.parts)

    @property
    def used(self) -> str:
        """Name what is in the needle."""
        return " + ".join(part.used for part in self.parts)

    def beside(self, hers: "Line") -> "Line":
        """Give the line as it is pasted over ``hers``: what a paste does not say stays as she has it."""
        alike = len(self.parts) == len(hers.parts)
        kept = [
            replace(part, instead=part.instead or own.instead, lots=part.lots or own.lots)
            for part, own in zip(self.parts, hers.parts, strict=False)
        ]
        return replace(
            self,
            parts=tuple(kept) if alike else self.parts,
            colour=self.colour or hers.colour,
            method=self.method or hers.method,
            scatter=hers.scatter if self.scatter == "mixed" else self.scatter,
            patches=self.patches or hers.patches,
            working=self.working or hers.working,
            note=self.note or hers.note,
        )

    @property
    def same(self) -> tuple[str, str]:
        """Tell it from other lines of its legend: a line pasted again is the same, whatever else it says."""
        return self.symbol, self.printed


class Totals(NamedTuple):
    """Full crosses of the legend, and those printed on the chart, if she wrote them down."""

    legend: int
    chart: int | None

    @property
    def agree(self) -> bool | None:
        """Tell whether they are the same; None where nothing can be said."""
        return None if self.chart is None else self.legend == self.chart


def totals(lines: Iterable[Line], chart: int | None) -> Totals:
    """Add up the full crosses, for holding against the chart's."""
    return Totals(sum(line.full for line in lines), chart)


def new_key(name: str, taken: Collection[str]) -> str:
    """Make what the journal calls a line by: its first name, told apart from those that are taken."""
    if name not in taken:
        return name
    numbers = (f" {n}" for n in range(2, len(taken) + 3))
    return next(key for end in numbers if (key := name[: KEY - len(end)] + end) not in taken)
