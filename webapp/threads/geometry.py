"""The thread of one stitch, hole by hole, from the drawing of the stitch itself.

Plain geometry on a ground of holes ``across`` and ``down`` apart (mm; over and uneven cloth are in them),
d = √(across² + down²) being one leg. Worked in rows out and back, every leg goes up a diagonal on the face
and straight down behind: a cross takes 2 d + 2 down, on square cloth 4.83 p. Each cross finished before the
next: two legs on the face, straight down and a diagonal behind: 3 d + down, 5.24 p (both derived, on flat
cloth). Cloth and thread are not flat: each stretch runs from the middle of the cloth in one hole to the
middle of it in the next, over a crest of half the cloth and half the thread, so that one of s mm takes
√(s² + (thick + bundle)²). All lengths in mm. The same in static/js/threads/geometry.js, operation for
operation.
"""

from math import pi, sqrt
from typing import NamedTuple

METHODS = ("rows", "each")
INCH = 25.4  # mm, exact
THICK = 0.5  # mm: Aida or linen where a thread passes it (common practice, no source)
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
    for one in (count, count if down is None else down):
        if not 1 <= one <= 100:
            raise ValueError("A count is a number from 1 to 100 an inch.")
    if over not in (1, 2, 3):
        raise ValueError("A stitch is made over 1, 2 or 3 threads.")
    return check(Ground(over * INCH / count, over * INCH / (count if down is None else down), thick))


def check(ground: Ground) -> Ground:
    """Give the ground back; ValueError with a sentence where no cloth is such."""
    if not (0.1 <= ground.across <= 100 and 0.1 <= ground.down <= 100):
        raise ValueError("Stitches lie from 0.1 to 100 mm apart.")
    if not 0 <= ground.thick <= 5:
        raise ValueError("Cloth is from nothing to 5 mm thick.")
    return ground


def bundle(strands: int, diameter: float = STRAND) -> float:
    """Give how thick so many strands are in the needle, mm: as thick as one round thread of the same area."""
    return diameter * sqrt(strands)


def stitch(what: str, ground: Ground, method: str, thread: float, wraps: int = WRAPS) -> float:
    """Give the mm of thread of one stitch on the face and behind, up to where the next begins.

    what: one of ``STITCHES``; a backstitch is one length of a stitch, a bead is sewn on by a half cross, a
    knot goes round its needle ``wraps`` times. thread: mm, how thick it lies in the needle (``bundle``).
    Raises ValueError with a sentence.
    """
    if method not in METHODS:
        raise ValueError("Crosses are worked in rows out and back, or each is finished at once.")
    if not 1 <= wraps <= 9:
        raise ValueError("A French knot is wrapped 1 to 9 times.")
    across, down, thick = check(ground)
    leg, straight = sqrt(across * across + down * down), (across + down) / 2
    crest = thick + thread

    def over(span: float) -> float:
        return sqrt(span * span + crest * crest)

    if what == "full":
        return 2 * over(leg) + over(down) + (over(down) if method == "rows" else over(leg))
    if what in ("half", "beads"):  # one leg, and straight down behind
        return over(leg) + over(down)
    if what == "quarter":  # corner to middle, and behind to the next corner
        return 2 * over(leg / 2)
    if what == "three_quarter":  # a leg, straight down behind, a quarter
        return over(leg) + over(down) + 2 * over(leg / 2)
    if what == "back":  # one back on the face, two on behind
        return over(straight) + over(2 * straight)
    if what == "knots":  # round the needle, down half a leg away, and behind to the next
        return wraps * pi * (NEEDLE + thread) + over(leg / 2) + over(leg)
    raise ValueError("There is no such stitch.")
