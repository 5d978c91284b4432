"""How much of each thread went into a project so far, as a range.

What the journal says was spent, at what a cross of that line takes.
"""

from collections import defaultdict
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from math import fsum

from webapp.projects.models import Project
from webapp.threads import amounts, spending
from webapp.threads.called import Thread, best
from webapp.threads.estimate import Range
from webapp.threads.tables import kinds
from webapp.threads.uses import Use, uses


@dataclass(frozen=True)
class Used:
    """One thread, and how much of it was used: mm as it is sold, its ends included; of beads their number."""

    name: str
    kind: str
    colour: str
    much: Range

    @property
    def is_thread(self) -> bool:
        """Tell whether it is measured by its length."""
        return bool(kinds()[self.kind]["sold"] != "bead")

    def told(self, unit: str) -> str:
        """Write how much, in her unit: "2.1 to 2.6 m", "120 beads"."""
        if self.is_thread:
            return length(self.much, unit)
        return amounts.sold(round(self.much.usual), kinds()[self.kind])


def length(much: Range, unit: str) -> str:
    """Write how much thread, rounded outwards."""
    return amounts.between((much.low, much.high), unit)


def used(project: Project) -> list[Used]:
    """List what was used of the threads of a project's legend, the most first; beads after thread."""
    by_thread: dict[Thread, list[Use]] = defaultdict(list)
    for use in uses(project.stitcher, spending.laid_and_spent(project.stitcher), {project.id}):
        if use.gone > 0:
            by_thread[use.thread].append(use)
    found = [
        Used(best(one.name for one in of), kind, of[0].line.colour or "", together(one.used for one in of))
        for (_name, kind), of in by_thread.items()
    ]
    return sorted(found, key=lambda one: (not one.is_thread, -one.much.usual, one.name))


def whole(found: Sequence[Used]) -> Range | None:
    """Add up what has a length; none where nothing has."""
    lengths = [one.much for one in found if one.is_thread]
    return together(lengths) if lengths else None


def together(many: Iterable[Range]) -> Range:
    """Add ranges up; they may all be off the same way."""
    return Range(*map(fsum, zip(*many, strict=True)))
