"""Cloth for a class: so many equal cuts off the bolt or out of a piece, and what is left.

Pure, and the same in static/js/cloth/classroom.js: texts by slot, and strips in mm for the drawing.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from webapp.cloth import reads, slip_threads
from webapp.cloth.bounds import INCH, LENGTHS
from webapp.cloth.cut import cut
from webapp.cloth.lengths import OTHER, area, laid, laid_area
from webapp.cloth.packing import Cutting, Strip, class_cuts, off_the_bolt
from webapp.cloth.piece import BOTH, cloth_of
from webapp.cloth.piece_drawing import box
from webapp.cloth.reads import Asked
from webapp.cloth.sizing import STEPS, round_up

DESIGN, CUT = ("width", "height", "count"), ("cut_width", "cut_height")
BOLT, PIECE = ("bolt_width",), ("piece_width", "piece_height")
STRIPS = 6  # left-over strips said one by one, the largest first
SCRAP = INCH / 8  # mm: what is narrower is not called left over


def ask(typed: Mapping[str, str]) -> Asked:
    """Read what was typed: how many, of which design or cut, off a bolt or out of a piece.

    And the threads a slip brought along, if it did: None where they cannot be read.
    """
    chosen = reads.choices(typed)
    of = CUT if chosen["by"] == "cut" else DESIGN
    off = PIECE if chosen["off"] == "piece" else BOLT
    asked = reads.read(typed, ("n", *of, *off), () if of == CUT else ("across", "own"))
    asked.values |= {name: asked.values.get(name) for name in ("across", "own")}
    if of == DESIGN:
        reads.together(asked, "width", "height", BOTH)
    asked.typed = {**asked.typed, "threads": typed.get("threads", "")}
    asked.values["threads"] = slip_threads.brought(asked.typed["threads"])
    return asked


@dataclass(frozen=True)
class Each:
    """One cut, mm, width and height as the design has them; turned: the same, the design lying across.

    done, done_turned: the design's finished size either way, None where a cut was asked for. On cloth that is
    not square the two are not alike.
    """

    cut: tuple[float, float]
    turned: tuple[float, float]
    done: tuple[float, float] | None = None
    done_turned: tuple[float, float] | None = None

    @property
    def lying(self) -> tuple[float, float]:
        """Give the turned cut's width and height as it lies on the cloth."""
        return self.turned[1], self.turned[0]

    @property
    def possible(self) -> bool:
        """Tell whether there is such a cut at all."""
        low, most = LENGTHS
        sides = (*self.cut, *self.turned)
        return low <= min(sides) and max(sides) <= most


def cut_of(values: Mapping[str, Any], tables: Mapping[str, Any]) -> Each:
    """Give one cut, as it is and turned, rounded up to what can be cut."""
    step = STEPS[values["unit"]]
    if values["by"] == "cut":
        sides = round_up(values["cut_width"], step), round_up(values["cut_height"], step)
        return Each(sides, sides)
    cloth = cloth_of(values)
    sized, turned = (cut(on, values, tables).sized for on in (cloth, cloth.turned))
    return Each(
        (sized.cut_width, sized.cut_height),
        (turned.cut_width, turned.cut_height),
        (sized.finished_width, sized.finished_height),
        (turned.finished_width, turned.finished_height),
    )


def cutting(values: Mapping[str, Any], each: Each) -> tuple[int, Cutting | None]:
    """Lay the cuts: gives how many could be laid, and how; none where not one can."""
    n, turn = values["n"], values["turn"] == "yes"
    if not each.possible:
        return 0, None
    if values["off"] == "bolt":
        try:
            return n, off_the_bolt(n, *each.cut, values["bolt_width"], turn, each.lying)
        except ValueError:
            return 0, None

    def lay(many: int) -> Cutting | None:
        piece = values["piece_width"], values["piece_height"]
        return class_cuts(many, *each.cut, *piece, turn, each.lying)

    whole = lay(n)
    if whole:
        return n, whole
    one = lay(1)
    return (one.most, lay(one.most)) if one else (0, None)


def slots(asked: Asked, tables: Mapping[str, Any], straightened: float) -> dict[str, str]:
    """Say what to ask for, or whether the piece does; ``straightened``: mm lost in straightening an edge."""
    values, unit = asked.values, asked.values["unit"]
    each = cut_of(values, tables)
    many, found = cutting(values, each)
    said = {"each": _each(each, found, unit), "left": _left(found, unit), "also": ""}
    if not each.possible:
        return said | {"headline": "No cut", "sub": "There is no such cut. Check the figures."}
    if found is None:
        where = "The bolt" if values["off"] == "bolt" else "The piece"
        return said | {"headline": "Too small", "sub": f"{where} does not hold one such cut."}
    if values["off"] == "bolt":
        length = round_up(found.length, STEPS[unit])
        said |= {"headline": laid(length, unit), "sub": _off(values, length, unit)}
        return said | {"also": f"Ask for {laid(straightened, unit)} more: edges are rarely straight."}
    if many < values["n"]:
        short = f"cuts at most, of the {values['n']} asked for." if many > 1 else "cut at most."
        return said | {"headline": str(many), "sub": short}
    more = f"This piece gives {found.most}." if found.most > many else "This piece gives no more than that."
    return said | {"headline": "Enough", "sub": more}


def _each(each: Each, found: Cutting | None, unit: str) -> str:
    """Say how large each cut is, and what becomes of those that are turned on cloth that is not square."""
    as_is, turned = (laid_area(*sides, unit) for sides in (each.cut, each.turned))
    if found is None or not found.turned or each.done == each.done_turned:
        return f"Each cut is {as_is}."
    straight = len(found.cuts) - found.turned
    some = f"Each cut is {as_is}; {found.turned} turned, {turned}"
    first = some if straight else f"Each, turned, is {turned}"
    done, done_turned = (area(*sides, unit) for sides in (each.done, each.done_turned) if sides)
    return f"{first}: the design then comes out {done_turned}, not {done}."


def _off(values: Mapping[str, Any], length: float, unit: str) -> str:
    other = laid(length, OTHER[unit], "up")
    return f"off a bolt {laid(values['bolt_width'], unit)} wide, or {other}."


def _left(found: Cutting | None, unit: str) -> str:
    """List what is left over, the largest first."""
    if found is None:
        return ""
    strips = [strip for strip in found.left if min(strip[2:]) >= SCRAP]
    strips = sorted(strips, key=lambda strip: -strip[2] * strip[3])[:STRIPS]
    if not strips:
        return "Nothing is left over."
    return f"Left over: {', '.join(laid_area(*strip[2:], unit, 'down') for strip in strips)}."


def drawing(asked: Asked, tables: Mapping[str, Any]) -> tuple[str, list[Strip], list[Strip]]:
    """Give the drawing: its viewBox, the cuts, and the strips left over; mm from the cloth's top left."""
    values = asked.values
    _laid, found = cutting(values, cut_of(values, tables))
    if found is None:
        return "0 0 1 1", [], []
    wide = values["bolt_width"] if values["off"] == "bolt" else values["piece_width"]
    high = found.length if values["off"] == "bolt" else values["piece_height"]
    edge = max(wide, high) / 100
    return box(-edge, -edge, wide + 2 * edge, high + 2 * edge), found.cuts, found.left
