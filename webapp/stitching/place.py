"""Where on the chart the needle is: columns, ten-lines, edges. Pure; its twin is place.js.

A *line* lies between two columns and is counted from the chart's left edge: 0 is the edge itself, 10 the
first of the bolder ten-lines. Cells moved over are stitches and bare cloth together.
"""

from collections.abc import Mapping, Sequence
from typing import Any, Literal, TypedDict

Way = Literal["right", "left"]
Block = Sequence[int]

TENS_IN_SIGHT = 30


class Start(TypedDict):
    """Where a row is begun: a chart column from 1, and the side it is worked to."""

    column: int
    way: Way


class Reach(TypedDict):
    """How far the row has come: its line, the cells of this ten behind it, and those to the chart's edge."""

    line: int
    gone: int
    edge: int


def reach(width: int, start: Start, moved: int) -> Reach:
    """Tell how far ``moved`` cells from ``start`` lead on a chart ``width`` cells wide."""
    if start["way"] == "left":
        line = start["column"] - moved
        return {"line": line, "gone": -line % 10, "edge": line}
    line = start["column"] - 1 + moved
    return {"line": line, "gone": line % 10, "edge": width - line}


def in_hand(at: Reach, moved: int) -> int:
    """Tell how many cells lie behind of the ten in hand: at a ten-line the whole ten, if any was worked."""
    return at["gone"] or (10 if moved else 0)


def legs(at: Reach, moved: int) -> list[list[int]]:
    """Tell what is laid of the two legs of the great cross: from and to, in fifths of a leg each.

    The cross is one ten of the chart; a tenth that lies before the row's start stays empty.
    """
    to = in_hand(at, moved)
    start = max(0, to - moved)
    return [[min(max(n - leg, 0), 5) for n in (start, to)] for leg in (0, 5)]


def band(width: int, start: Start, moved: int) -> dict[str, int]:
    """Tell what the band shows, in lines: its sight, the tens behind, and the left line of the ten in hand.

    At most thirty tens are in sight; a wider chart is turned over like pages.
    """
    at = reach(width, start, moved)
    left, gone = start["way"] == "left", in_hand(at, moved)
    first = start["column"] - (not left)
    reached = at["line"] + (gone if left else -gone)
    whole = [first, first] if moved < gone else sorted((first, reached))
    tens = -(-width // 10)
    sight = -(-tens // -(-tens // TENS_IN_SIGHT)) * 10
    ten = reached - (10 if left else 0)
    low = min(max(ten, 0), width - 1) // sight * sight
    high = min(width, low + sight)
    return {
        "low": low,
        "high": high,
        "from": min(max(whole[0], low), high),
        "to": min(max(whole[1], low), high),
        "ten": ten,
    }


def block_size(width: int, height: int, block: Block) -> tuple[int, int]:
    """Give the cells of a block across and down: ten by ten, fewer at the right and lower edge."""
    across, down = block
    return min(10, width - 10 * (across - 1)), min(10, height - 10 * (down - 1))


def side(plan: Mapping[str, Any], row: int) -> str:
    """Say from where a row is numbered, if not from the top."""
    if plan["direction"] == "bottom":
        return "from the bottom"
    off = row - plan["first_row"] if plan["direction"] == "middle" else 0
    if not off:
        return ""
    return f"{abs(off)} {'below' if off > 0 else 'above'}"


def label(count: int, of: int | None, at: Reach, moved: int) -> str:
    """Say what lies ahead, in as few words as the corner of an eye takes in."""
    if of is not None and count >= of:
        return f"{count - of} over" if count > of else "Full"
    if moved and at["gone"] == 0:
        return "At the ten-line"
    if moved and at["edge"] == 0:
        return "At the edge"
    ahead = 10 - at["gone"]
    return f"{at['edge']} to the edge" if 0 < at["edge"] < ahead else f"{ahead} to the ten-line"


def scene(
    plan: Mapping[str, Any], place: int | Block, stitches: int, bare: int = 0, start: Start | None = None
) -> dict[str, Any]:
    """Tell everything the page shows of one row or block, from its raw sums; painting stops at 0."""
    count = max(0, stitches)
    if isinstance(place, int):
        width, of = plan["width"], plan["expected"]
        start = start or {"column": plan["start_column"], "way": plan["start_way"]}
        moved, said = max(0, count + bare), side(plan, place)
    else:
        size = block_size(plan["width"], plan["height"], place)
        width = of = size[0] * size[1]
        start, moved, said = {"column": 1, "way": "right"}, count, f"{size[0]} by {size[1]}"
    at = reach(width, start, moved)
    ahead = 10 - at["gone"]
    return {
        "count": count,
        "of": of,
        "left": max(0, of - count) if of is not None else max(0, at["edge"]),
        "ahead": at["edge"] if 0 < at["edge"] < ahead else ahead,
        "whole": bool(moved) and (at["gone"] == 0 or at["edge"] == 0 or count == of),
        "legs": legs(at, moved),
        "band": band(width, start, moved),
        "label": label(count, of, at, moved),
        "side": said,
    }
