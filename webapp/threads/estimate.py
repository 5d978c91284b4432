"""How much thread a line of a legend takes, as a range, and what to buy of it.

Everything comes from the drawing of the stitches (``geometry``), the ends that each working length wastes,
and how the stitches lie: moving from patch to patch the thread is carried behind, or broken off and begun
anew. A range is what holds in about nineteen of twenty cases. All lengths in mm; *in the needle* is the
thread as it is worked, *as sold* has all the strands of a skein side by side. The same in
static/js/threads/estimate.js.
"""

from collections.abc import Mapping
from typing import Any, NamedTuple

from webapp.threads.geometry import STRAND, Ground

__all__ = ["Counts", "Estimate", "Ground", "Own", "Range", "Worked", "estimate", "patches_of", "reach"]


class Range(NamedTuple):
    """The least, the usual and the most, in that order."""

    low: float
    usual: float
    high: float


class Counts(NamedTuple):
    """How many stitches of each kind; backstitch in lengths of one stitch."""

    full: int = 0
    half: int = 0
    quarter: int = 0
    three_quarter: int = 0
    back: int = 0
    knots: int = 0
    beads: int = 0


class Worked(NamedTuple):
    """How a thread is worked.

    strands: of this part, in the needle; together: in the needle in all (of a blend, of all its parts);
    method: rows (out and back) or each (each cross finished at once); working: mm, the working length; loop:
    whether it begins with a loop, which only an even number of one plain colour can; diameter: mm, of a strand.
    """

    strands: int
    together: int
    method: str
    working: float
    loop: bool = False
    diameter: float = STRAND


class Own(NamedTuple):
    """Her own figure: her thread ÷ the drawing's, ends included; the sd of its logarithm; what it rests on."""

    factor: float
    spread: float
    rests_on: str


class Estimate(NamedTuple):
    """What a line takes.

    each: mm in the needle of one full cross, its share of ends and travel included; laid: mm in the needle
    that stays in and behind the cloth, all stitches; lengths: working lengths to cut, whole; sold: mm as it is
    sold, wasted ends included (of beads: beads); units: whole skeins, spools or beads, least and most, of which
    the most is what buys safely; rests_on: "the drawing", or what of hers.
    """

    each: Range
    laid: Range
    lengths: Range
    sold: Range
    units: tuple[int, int]
    rests_on: str


def estimate(
    ground: Ground,
    counts: Counts,
    worked: Worked,
    kind: Mapping[str, Any],
    patches: int | None = None,
    scatter: str = "mixed",
    own: Own | None = None,
) -> Estimate:
    """Estimate one thread of a line: ``kind`` is its row of shared/tables/threads.json.

    patches: how many the stitches lie in, counted on the chart; None: worked out from ``scatter``. Of a blend
    each part is estimated with its own strands. Raises ValueError with a sentence where something cannot be.
    """
    raise NotImplementedError


def patches_of(counts: Counts, scatter: str) -> int:
    """Give how many patches stitches lie in that are together, mixed or scattered."""
    raise NotImplementedError


def reach(
    had: float,
    ground: Ground,
    worked: Worked,
    kind: Mapping[str, Any],
    scatter: str = "mixed",
    own: Own | None = None,
) -> tuple[int, int]:
    """Give how many full crosses thread of ``had`` mm, as sold, surely reaches to, and perhaps."""
    raise NotImplementedError
