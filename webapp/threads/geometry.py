"""The thread of one stitch, hole by hole, from the drawing of the stitch itself.

Plain geometry on a ground of holes ``across`` and ``down`` apart (mm; over and uneven cloth are in them),
d = √(across² + down²) being one leg. Worked in rows out and back, every leg goes up a diagonal on the face
and straight down behind: a cross takes 2 d + 2 down, on square cloth 4.83 p. Each cross finished before the
next: two legs on the face, straight down and a diagonal behind: 3 d + down, 5.24 p (both derived). Every
passage through the cloth adds its thickness, and the upper leg rises over the lower by the thickness of the
thread in the needle. The same in static/js/threads/geometry.js, operation for operation.
"""

from math import pi, sqrt
from typing import NamedTuple

METHODS = ("rows", "each")
THICK = 0.5  # mm: cloth as the needle passes it, Aida or linen (common practice, no source)
STRAND = 0.2  # mm: one strand of six, lightly twisted (common practice, no source)
WRAPS = 2  # of the thread round the needle for a French knot (common practice, no source)
NEEDLE = 0.7  # mm: a tapestry needle 24 (from memory)
STITCHES = ("full", "half", "quarter", "three_quarter", "back", "knots", "beads")


class Ground(NamedTuple):
    """Cloth as stitches lie on it: mm from one to the next across and down, over included; its thickness."""

    across: float
    down: float
    thick: float = THICK


def ground_of(count: float, over: int = 1, down: float | None = None, thick: float = THICK) -> Ground:
    """Give the ground of cloth of ``count`` squares or threads an inch, ``down`` the other way if not alike.

    Raises ValueError with a sentence where no cloth has such a count.
    """
    raise NotImplementedError


def stitch(what: str, ground: Ground, method: str, bundle: float, wraps: int = WRAPS) -> float:
    """Give the mm of thread of one stitch on the face and behind, up to where the next begins.

    what: one of ``STITCHES``; a backstitch is one length of a stitch, a bead is sewn on by a half cross.
    bundle: mm, how thick the thread is that lies in the needle. Raises ValueError with a sentence.
    """
    raise NotImplementedError


def bundle(strands: int, diameter: float = STRAND) -> float:
    """Give how thick so many strands are side by side and twisted, mm: as one of the same area."""
    return diameter * sqrt(strands)
