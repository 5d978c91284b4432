"""How much cloth to leave round a design: what the finish needs or the frame grips, and what frays away.

The table is shared/tables/margins.json, its lengths in inches as the trade gives them; out come mm a side.
The same in static/js/cloth/margins.js.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from webapp.cloth import bounds
from webapp.cloth.bounds import INCH


@dataclass(frozen=True)
class Part:
    """One thing that asks for cloth: "finish", "own", "frame" or "frays", and how much, mm a side."""

    what: str
    mm: float


@dataclass(frozen=True)
class Margin:
    """A margin, mm a side.

    parts: all that asked; decided: which of finish, own and frame asked most; sources: keys of the table's
    sources, "common practice" where none is published.
    """

    mm: float
    parts: list[Part]
    decided: str
    sources: list[str]


def margin(finish: str, frame: str, frays: bool, own: float | None, table: Mapping[str, Any]) -> Margin:
    """Give the margin for a finish and a frame, both keys of the table (KeyError where they are not).

    ``own``, mm, stands in for what the finish needs and for nothing else: a frame must still grip, and what
    frays is lost. The larger of finish and frame counts, since both use the same cloth; fraying is on top.
    """
    finishing, framing = table["finishes"][finish], table["frames"][frame]
    needed = Part("finish", finishing["inches"] * INCH) if own is None else Part("own", own)
    bounds.edged(needed.mm)
    parts, sources = [needed], [] if own is not None else list(finishing["sources"])
    if framing["inches"] > 0:
        parts.append(Part("frame", framing["inches"] * INCH))
        sources += framing["sources"]
    most = parts[-1] if parts[-1].mm > needed.mm else needed
    mm = most.mm
    if frays:
        parts.append(Part("frays", table["frays"]["inches"] * INCH))
        sources += table["frays"]["sources"]
        mm += parts[-1].mm
    return Margin(mm, parts, most.what, list(dict.fromkeys(sources)))
