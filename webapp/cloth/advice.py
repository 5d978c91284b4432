"""Needle, strands and hoop as ranges, the usual first, from the tables of the trade and their sources.

Needles and strands go by stitches an inch, which is also the spacing of the holes the needle passes: 28
over two is as 14. Sources disagree: a range holds what they say. The same in static/js/cloth/advice.js.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from math import sqrt
from typing import Any

from webapp.cloth import bounds
from webapp.cloth.bounds import FORGIVEN, INCH


@dataclass(frozen=True)
class Needles:
    """Tapestry needle sizes (a larger number is a finer needle): the usual, and the range sources give."""

    usual: int
    low: int
    high: int
    sources: list[str]


@dataclass(frozen=True)
class Strands:
    """Strands of six-strand cotton for full crosses and for backstitch.

    half: for half crosses, None where they are not told apart.
    """

    usual: int
    low: int
    high: int
    back_usual: int
    back_low: int
    back_high: int
    half: int | None
    sources: list[str]


@dataclass(frozen=True)
class Advice:
    """What holds it: a hoop's diameter in inches, or None; frame: whether a frame is as good, or needed.

    needed: mm, the least diameter inside which no stitch is gripped; why: "small", "comfortable" or "large"
    of a hoop, "frame" where no hoop holds it.
    """

    diameter: float | None
    frame: bool
    needed: float
    why: str
    sources: list[str]


def _row(per_inch: float, rows: list[dict[str, Any]]) -> dict[str, Any]:
    bounds.counted(per_inch)
    return next((row for row in rows if per_inch <= row["up_to"]), rows[-1])


def needles(holes_per_inch: float, table: Mapping[str, Any]) -> Needles:
    """Give the needle for holes so many to the inch, from shared/tables/needles.json."""
    row = _row(holes_per_inch, table["needles"])
    return Needles(*(row[name] for name in ("usual", "low", "high", "sources")))


def beside_needles(strands_: Strands, table: Mapping[str, Any]) -> tuple[str, list[str]]:
    """Say what some sources add or say otherwise, with their keys.

    For backstitch; and, where two strands are worked, the view that goes by the thread.
    """
    more = next(of for of in table["published"] if "back" in of)
    said, sources = f"{more['back'].capitalize()}.", [more["source"]]
    if strands_.low <= 2 <= strands_.high:
        dissent = table["dissent"]
        said, sources = f"{said} Or {dissent['says']}.", [*sources, dissent["source"]]
    return said, sources


def strands(stitches_per_inch: float, table: Mapping[str, Any]) -> Strands:
    """Give the strands for stitches so many to the inch, from shared/tables/strands.json."""
    row = _row(stitches_per_inch, table["strands"])
    (usual, low, high), (back, back_low, back_high) = row["full"], row["back"]
    return Strands(usual, low, high, back, back_low, back_high, row["half"], row["sources"])


def hoop(finished_width: float, finished_height: float, table: Mapping[str, Any]) -> Advice:
    """Give the hoop or frame for a design, mm, from shared/tables/hoops.json.

    Round a design about an inch larger than its longer side, and never smaller than its diagonal, so that
    the ring closes on no stitch; the next size that is sold. Large ones, and what no hoop goes round, have
    a frame.
    """
    bounds.drawn(finished_width, finished_height)
    diagonal = sqrt(finished_width * finished_width + finished_height * finished_height)
    longer = max(finished_width, finished_height) + table["clear"]["inches"] * INCH
    needed = max(diagonal, longer)
    sold = [inches for inches in table["sizes"]["inches"] if inches * INCH >= needed - FORGIVEN]
    if not sold:
        return Advice(None, True, needed, "frame", table["frame"]["sources"])
    low, high = table["comfortable"]["inches"]
    why = "small" if sold[0] < low else "comfortable" if sold[0] <= high else "large"
    told = table["frame" if why == "large" else "comfortable"]
    return Advice(sold[0], why == "large", needed, why, told["sources"])
