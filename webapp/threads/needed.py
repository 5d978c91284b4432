"""What the threads of a slip take: each once however many lines it is on, for one or for a class.

Lengths are added up before they are rounded to what is sold. For a class they are whole working lengths,
since that is what is handed out: so many a skein, what is left of it being too short. Pure, and the same in
static/js/threads/needed.js.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from math import floor
from typing import Any

from webapp.threads import kinds as habits
from webapp.threads.estimate import Estimate, estimate, whole
from webapp.threads.geometry import Ground
from webapp.threads.legend import Line, Part

Kinds = Mapping[str, Mapping[str, Any]]


@dataclass
class Need:
    """What one thread takes.

    sold: of what it is sold in, unrounded, at most; in_lengths: the same if it is handed out in whole working
    lengths; cut: those lengths a learner, by (strands, mm). counted: whether any stitch of it is.
    """

    kind: str
    name: str
    symbols: list[str] = field(default_factory=list)
    sold: float = 0.0
    in_lengths: float = 0.0
    cut: dict[tuple[int, float], int] = field(default_factory=dict)
    counted: bool = False

    @property
    def units(self) -> int:
        """Give the skeins, spools or beads that buy safely."""
        return whole(self.sold)

    def for_class(self, learners: int) -> int:
        """Give the same for so many learners, added up before it is rounded."""
        return whole(learners * self.in_lengths)


def needs(lines: Sequence[Line], on: Ground, kinds: Kinds) -> dict[tuple[str, str], Need]:
    """Give what every thread takes, by kind and name, in the order of the lines."""
    found: dict[tuple[str, str], Need] = {}
    for line in lines:
        for part, estimated, working in each_part(line, on, kinds):
            need = found.setdefault((part.kind, part.used), Need(part.kind, part.used))
            if line.symbol and line.symbol not in need.symbols:
                need.symbols.append(line.symbol)
            _add(need, part, estimated, working, kinds[part.kind])
    return found


def each_part(line: Line, on: Ground, kinds: Kinds) -> list[tuple[Part, Estimate, float]]:
    """Estimate every part of a line; gives with each the working length, mm."""
    worked = habits.worked(kinds, [(part.kind, part.strands) for part in line.parts])
    return [
        (part, estimate(on, line.counts, how, kinds[part.kind]), how.working)
        for part, how in zip(line.parts, worked, strict=True)
    ]


def _add(need: Need, part: Part, estimated: Estimate, working: float, kind: Mapping[str, Any]) -> None:
    need.counted = need.counted or estimated.units[1] > 0
    if kind["sold"] == "bead":
        need.sold += estimated.units[1]
        need.in_lengths += estimated.units[1]
        return
    need.sold += estimated.sold.high / kind["length_mm"]
    lengths = int(estimated.lengths.high)
    need.in_lengths += lengths * part.strands / (floor(kind["length_mm"] / working) * kind["strands"])
    if lengths:
        need.cut[part.strands, working] = need.cut.get((part.strands, working), 0) + lengths
