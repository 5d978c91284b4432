"""Cloth for a class: so many equal cuts off the bolt or out of a piece, and what is left.

Pure, and the same in static/js/cloth/classroom.js: texts by slot, and strips in mm for the drawing.
"""

from collections.abc import Mapping
from typing import Any

from webapp.cloth import reads
from webapp.cloth.bounds import LENGTHS
from webapp.cloth.lengths import area, written
from webapp.cloth.packing import Cutting, Strip, class_cuts, off_the_bolt
from webapp.cloth.piece import BOTH, cloth_of, margin_of
from webapp.cloth.piece_drawing import box
from webapp.cloth.reads import Asked
from webapp.cloth.sizing import STEPS, round_up, size

DESIGN, CUT = ("width", "height", "count"), ("cut_width", "cut_height")
BOLT, PIECE = ("bolt_width",), ("piece_width", "piece_height")
STRIPS = 6  # left-over strips said one by one, the largest first


def ask(typed: Mapping[str, str]) -> Asked:
    """Read what was typed: how many, of which design or cut, off a bolt or out of a piece."""
    chosen = reads.choices(typed)
    of = CUT if chosen["by"] == "cut" else DESIGN
    off = PIECE if chosen["off"] == "piece" else BOLT
    asked = reads.read(typed, ("n", *of, *off), () if of == CUT else ("across", "own"))
    asked.values |= {name: asked.values.get(name) for name in ("across", "own")}
    if of == DESIGN:
        reads.together(asked, "width", "height", BOTH)
    return asked


def cut_of(values: Mapping[str, Any], table: Mapping[str, Any]) -> tuple[float, float]:
    """Give one cut's width and height, mm, rounded up to what can be cut."""
    step = STEPS[values["unit"]]
    if values["by"] == "cut":
        return round_up(values["cut_width"], step), round_up(values["cut_height"], step)
    side = margin_of(values, table)
    sized = size(cloth_of(values), values["width"], values["height"], side, step)
    return sized.cut_width, sized.cut_height


def possible(wide: float, high: float) -> bool:
    """Tell whether there is such a cut at all."""
    low, most = LENGTHS
    return low <= min(wide, high) and max(wide, high) <= most


def cutting(values: Mapping[str, Any], table: Mapping[str, Any]) -> tuple[int, Cutting | None]:
    """Lay the cuts: gives how many could be laid, and how; none where not one can."""
    n, turn = values["n"], values["turn"] == "yes"
    wide, high = cut_of(values, table)
    if not possible(wide, high):
        return 0, None
    if values["off"] == "bolt":
        try:
            return n, off_the_bolt(n, wide, high, values["bolt_width"], turn)
        except ValueError:
            return 0, None
    piece = values["piece_width"], values["piece_height"]
    whole = class_cuts(n, wide, high, *piece, turn)
    if whole:
        return n, whole
    one = class_cuts(1, wide, high, *piece, turn)
    return (one.most, class_cuts(one.most, wide, high, *piece, turn)) if one else (0, None)


def slots(asked: Asked, table: Mapping[str, Any], straightened: float) -> dict[str, str]:
    """Say what to ask for, or whether the piece does; ``straightened``: mm lost in straightening an edge."""
    values, unit = asked.values, asked.values["unit"]
    cut = area(*cut_of(values, table), unit, cut=True)
    laid, found = cutting(values, table)
    said = {"each": f"Each cut is {cut}.", "left": _left(found, unit), "also": ""}
    if not possible(*cut_of(values, table)):
        return said | {"headline": "No cut", "sub": "There is no such cut. Check the figures."}
    if found is None:
        where = "The bolt" if values["off"] == "bolt" else "The piece"
        return said | {"headline": "Too small", "sub": f"{where} does not hold one such cut."}
    if values["off"] == "bolt":
        length = round_up(found.length, STEPS[unit])
        said |= {"headline": written(length, unit, cut=True), "sub": _off(values, length, unit)}
        return said | {"also": f"Ask for {written(straightened, unit)} more: edges are rarely straight."}
    if laid < values["n"]:
        short = f"cuts at most, of the {values['n']} asked for." if laid > 1 else "cut at most."
        return said | {"headline": str(laid), "sub": short}
    more = f"This piece gives {found.most}." if found.most > laid else "This piece gives no more than that."
    return said | {"headline": "Enough", "sub": more}


def _off(values: Mapping[str, Any], length: float, unit: str) -> str:
    other = "cm" if unit == "in" else "in"
    return f"off a bolt {written(values['bolt_width'], unit)} wide, or {written(length, other)}."


def _left(found: Cutting | None, unit: str) -> str:
    """List what is left over, the largest first."""
    if found is None:
        return ""
    strips = sorted(found.left, key=lambda strip: -strip[2] * strip[3])[:STRIPS]
    if not strips:
        return "Nothing is left over."
    return f"Left over: {', '.join(area(strip[2], strip[3], unit) for strip in strips)}."


def drawing(asked: Asked, table: Mapping[str, Any]) -> tuple[str, list[Strip], list[Strip]]:
    """Give the drawing: its viewBox, the cuts, and the strips left over; mm from the cloth's top left."""
    values = asked.values
    _laid, found = cutting(values, table)
    if found is None:
        return "0 0 1 1", [], []
    wide = values["bolt_width"] if values["off"] == "bolt" else values["piece_width"]
    high = found.length if values["off"] == "bolt" else values["piece_height"]
    edge = max(wide, high) / 100
    return box(-edge, -edge, wide + 2 * edge, high + 2 * edge), found.cuts, found.left
