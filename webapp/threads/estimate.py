"""How much thread a line of a legend takes, as a range, and what to buy of it.

Everything comes from the drawing of the stitches (``geometry``), the ends that each working length wastes,
and how the stitches lie: moving from patch to patch the thread is carried behind, or broken off and begun
anew. A range is what holds in about nineteen of twenty cases. All lengths in mm; *in the needle* is the
thread as it is worked, *as sold* has all the strands of a skein side by side. The same in
static/js/threads/estimate.js.
"""

from collections.abc import Mapping, Sequence
from math import ceil, sqrt
from typing import Any, NamedTuple

from webapp.threads import bounds
from webapp.threads.geometry import STITCHES, STRAND, Ground, bundle, stitch

__all__ = [
    *("Counts", "Estimate", "Ground", "Own", "Range", "Worked"),
    *("estimate", "patches_of", "reach", "wasted", "whole"),
]

START = END = 50.8  # mm: 4 in of each working length are ends (TRADE: 1,960-2,130 crosses a skein, derived)
LOOP = 10.0  # mm: what a loop start takes of the length (common practice, no source)
PATCH = {"together": 250, "mixed": 40, "scattered": 6}  # stitches a patch (common practice, no source)
CARRIED = 0.75  # of the moves to another patch; else broken off and begun anew (common practice, no source)
TRAVEL = 6  # stitches that the thread is carried behind (common practice, no source)
# What each may be off, as a share of itself (one sd): her hand against the drawing, her ends, her moves where
# patches are guessed and where they are counted (no source; her own figure takes the place of the first two).
HAND, ENDS, GUESSED, COUNTED = 0.105, 0.25, 0.5, 0.25
SURE = 1.96  # sd: nineteen of twenty. No share may be above 1 / SURE, or more could come out as less
SPARE, LEAST_SPARE = 0.05, 5  # of beads (common practice, no source)
FORGIVEN = 1e-9  # of a unit: what arithmetic may add to a whole one


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
    method: rows (out and back) or each (each cross finished at once); working: mm, the working length;
    loop: whether it begins with a loop, which only an even number of one plain colour can; diameter: mm, of
    a strand (of a blend, of them all on the whole).
    """

    strands: int
    together: int
    method: str
    working: float
    loop: bool = False
    diameter: float = STRAND


class Own(NamedTuple):
    """Her own figure: her thread ÷ the drawing's, ends included; sd of its logarithm; what it rests on."""

    factor: float
    spread: float
    rests_on: str


class Estimate(NamedTuple):
    """What a line takes.

    each: mm in the needle of one full cross, its share of ends and travel included; laid: mm in the needle
    that stays in and behind the cloth, all stitches; lengths: working lengths to cut, whole; sold: mm as it
    is sold, wasted ends included (of beads: beads); units: whole skeins, spools or beads, least and most, of
    which the most is what buys safely; rests_on: "the drawing", or what of hers.
    """

    each: Range
    laid: Range
    lengths: Range
    sold: Range
    units: tuple[int, int]
    rests_on: str


def patches_of(counts: Counts, scatter: str) -> int:
    """Give how many patches stitches lie in that are together, mixed or scattered; at least one, if any.

    Raises ValueError with a sentence where they lie no such way.
    """
    if scatter not in PATCH:
        raise ValueError("Stitches lie together, mixed or scattered.")
    return ceil(sum(counts) / PATCH[scatter])


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
    bounds.estimated(counts, worked, patches, own)
    thread = bundle(worked.together, worked.diameter)
    lone = {what: stitch(what, ground, worked.method, thread) for what in STITCHES}
    drawn = 0.0
    for what, many in zip(STITCHES, counts, strict=True):
        drawn += many * lone[what]  # one by one: sum() rounds otherwise than JavaScript can
    moves = max(0, min(patches or patches_of(counts, scatter), sum(counts)) - 1)
    factor = own.factor if own else 1.0
    lost, carried = wasted(worked.loop), moves * CARRIED * TRAVEL * (ground.across + ground.down) / 2
    room = worked.working - lost
    stitched = factor * drawn
    ends = factor * lost * max(1.0, drawn / room) if drawn else 0.0
    moved = carried * worked.working / room + moves * (1 - CARRIED) * lost
    guess = COUNTED if patches else GUESSED
    hand = [(own.spread, stitched + ends)] if own else [(HAND, stitched), (ENDS, ends)]
    needle = _range(stitched + ends + moved, [*hand, (guess, moved)])
    laid = _range(stitched + carried, [(own.spread if own else HAND, stitched), (guess, carried)])
    one = lone["full"] * (factor * worked.working / room + (moved / drawn if drawn else 0.0))
    sold = Range(*(mm * worked.strands / kind["strands"] for mm in needle))
    return Estimate(
        each=Range(*(one * (mm / needle.usual if drawn else 1.0) for mm in needle)),
        laid=laid,
        lengths=Range(*(float(whole(mm / worked.working)) for mm in needle)),
        **_bought(counts, sold, kind),
        rests_on=own.rests_on if own else "the drawing",
    )


def wasted(loop: bool) -> float:
    """Give the mm of each working length that start and end take."""
    return (LOOP if loop else START) + END


def whole(units: float) -> int:
    """Round up to what can be cut or bought."""
    return ceil(units - FORGIVEN)


def _range(usual: float, terms: Sequence[tuple[float, float]]) -> Range:
    """Spread a sum whose parts are each off by a share of themselves, independently."""
    square = 0.0
    for share, mm in terms:
        square += share * mm * (share * mm)
    off = SURE * sqrt(square)
    return Range(usual - off, usual, usual + off)


def _bought(counts: Counts, sold: Range, kind: Mapping[str, Any]) -> dict[str, Any]:
    """Give what to buy: beads by their number and a spare, thread by the skein or spool."""
    if kind["sold"] == "bead":
        beads = sum(counts) - counts.back
        most = beads + (max(LEAST_SPARE, whole(beads * SPARE)) if beads else 0)
        return {"sold": Range(float(beads), float(beads), float(most)), "units": (beads, most)}
    least, _usual, most = (whole(mm / kind["length_mm"]) for mm in sold)
    return {"sold": sold, "units": (least, most)}


def reach(
    had: float,
    ground: Ground,
    worked: Worked,
    kind: Mapping[str, Any],
    scatter: str = "mixed",
    own: Own | None = None,
) -> tuple[int, int]:
    """Give how many full crosses thread of ``had`` mm, as sold, surely reaches to, and perhaps.

    Raises ValueError with a sentence where something cannot be.
    """
    if not 0 <= had <= 1e9:
        raise ValueError("Thread that is had is from nothing to a thousand kilometres.")

    def most(end: int) -> int:
        low, high = 0, bounds.MOST + 1
        while high - low > 1:
            middle = (low + high) // 2
            takes = estimate(ground, Counts(full=middle), worked, kind, None, scatter, own).sold[end]
            low, high = (middle, high) if takes <= had else (low, middle)
        return low

    return most(2), most(0)
