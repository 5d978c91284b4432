"""What a slip says, as texts by the slots of its page, and what it draws: those of size and cut, and its own.

Pure, and the same in static/js/cloth/slip_saying.js; all of it is worked out from what the slip carries.
"""

from collections.abc import Mapping
from typing import Any

from webapp.cloth import drawing, size_answer, size_saying, slip_rows
from webapp.cloth.bounds import INCH
from webapp.cloth.lengths import number, written
from webapp.cloth.slip_text import Slip
from webapp.cloth.words import plain

SAME = (  # as on the page of size and cut
    *("cut", "cut-other", "finished", "finished-other", "margin", "why", "middle", "middle-down", "first"),
    *("first-other", "needle", "needle-more", "strands", "hoop", "care", "wide", "high"),
)
NIGHT = {
    "hoop": "Take it out of hoop or frame every night: what is left on marks the cloth.",
    "clamps": "Take the clamps off every night, the ones that lie on stitches first.",
    "scroll": "Slacken the scroll frame every night.",
    "stretched": "",
    "hand": "",
}


def answer(slip: Slip, tables: Mapping[str, Any]) -> size_answer.Answer:
    """Answer for size and cut, from what the slip carries."""
    asked = {name: getattr(slip, name) for name in ("width", "height", "count", "across", "over")}
    asked |= {name: getattr(slip, name) for name in ("finish", "held", "own", "unit")}
    return size_answer.answer({**asked, "frays": "yes" if slip.frays else ""}, tables)


def slots(slip: Slip, tables: Mapping[str, Any]) -> dict[str, str]:
    """Say all that a slip says."""
    said = size_saying.slots(answer(slip, tables))
    return {
        "title": slip.title or stitches(slip),
        "stitches": f"{stitches(slip)} stitches",
        "cloth": _cloth(slip),
        "measured": _measured(slip),
        "night": NIGHT[slip.held],
        **{name: said[name] for name in SAME},
        **slip_rows.texts(slip, tables["threads"]),
    }


def shapes(slip: Slip, tables: Mapping[str, Any]) -> drawing.Shapes:
    """Draw a slip to scale."""
    drawn = drawing.shapes(answer(slip, tables))
    return {name: shape for name, shape in drawn.items() if not name.startswith("row-")}


def stitches(slip: Slip) -> str:
    """Write the design's size in stitches."""
    return f"{slip.width:,} × {slip.height:,}"


def _cloth(slip: Slip) -> str:
    off = "" if slip.error is None else f", give or take {plain(slip.error)}"
    count = f"{plain(slip.count)} count{off}"
    if slip.across is not None and slip.across != slip.count:
        count = f"{plain(slip.count)} count across{off}, {plain(slip.across)} down"
    return f"{count}, over {'two' if slip.over == 2 else 'one'}"


def _measured(slip: Slip) -> str:
    if slip.error is None:
        return ""
    least, most = (slip.width * slip.over * INCH / (slip.count + off) for off in (slip.error, -slip.error))
    return f"so {number(least, slip.unit)} to {written(most, slip.unit)} wide"
