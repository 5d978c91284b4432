"""A piece of cloth: the largest design it takes, whether one fits, on which counts, and what is over.

Pure, and the same in static/js/cloth/piece.js. All that the page shows comes out as texts by slot and as
numbers by shape, in mm of the cloth; what is typed is read by ``reads``.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from webapp.cloth import reads
from webapp.cloth.bounds import FORGIVEN, INCH
from webapp.cloth.cut import cut
from webapp.cloth.lengths import laid
from webapp.cloth.margins import margin
from webapp.cloth.reads import Asked
from webapp.cloth.sizing import Cloth, Fit, fit, largest
from webapp.cloth.words import plain

# Stitches an inch, coarsest first, as (count, over): what they are called stands beside them.
GROUNDS = ((11.0, 1), (25.0, 2), (14.0, 1), (16.0, 1), (18.0, 1), (20.0, 1))
NAMED = ("11", "25 over two", "14, 28 over two", "16, 32 over two", "18, 36 over two", "20, 40 over two")
BOTH = "Write both sides of the design, or neither."


@dataclass(frozen=True)
class Laid:
    """A piece with what lies on it, mm: the cloth and its piece as turned for the design, and how it fits."""

    fit: Fit
    width: float
    height: float
    across: float
    down: float


def ask(typed: Mapping[str, str]) -> Asked:
    """Read what was typed of the piece, the cloth, and perhaps a design."""
    asked = reads.read(typed, ("piece_width", "piece_height", "count"), ("across", "width", "height", "own"))
    reads.together(asked, "width", "height", BOTH)
    return asked


def margin_of(values: Mapping[str, Any], table: Mapping[str, Any]) -> float:
    """Give the margin a side, mm."""
    return margin(values["finish"], values["held"], values["frays"] == "yes", values["own"], table).mm


def cloth_of(values: Mapping[str, Any]) -> Cloth:
    """Give the cloth as the piece lies: counted across its width, and the other way if that was given."""
    return Cloth(values["count"], values["across"] or values["count"], int(values["over"]))


def ways(cloth: Cloth, values: Mapping[str, Any], side: float) -> list[Fit]:
    """Lay the design on the piece as it lies, and on the piece turned."""
    piece = values["piece_width"], values["piece_height"]
    return [fit(cloth, values["width"], values["height"], side, *piece, turned) for turned in (False, True)]


def better(straight: Fit, turned: Fit) -> Fit:
    """Choose the way that fits, as it lies before turned; where neither does, the one less short."""
    if straight.fits or not (turned.fits or _least(turned) > _least(straight)):
        return straight
    return turned


def _least(way: Fit) -> float:
    return min(way.spare_across, way.spare_down)


def slots(asked: Asked, tables: Mapping[str, Any]) -> dict[str, str]:
    """Say everything the page says of a question that was read: texts by slot."""
    values, side = asked.values, margin_of(asked.values, tables["margins"])
    cloth = cloth_of(values)
    most = largest(cloth, values["piece_width"], values["piece_height"], side)
    said = _most(most, side, values["unit"])
    if values["width"]:
        said = _fitting(values, cloth, side)
        said["also"] = " ".join(text for text in (said["also"], _hooped(values, cloth, tables)) if text)
    said["most"] = f"It takes {_times(most)} stitches at most." if values["width"] and all(most) else ""
    return said | _rows(values, side)


def _most(most: tuple[int, int], side: float, unit: str) -> dict[str, str]:
    if not all(most):
        sentence = f"With {laid(side, unit, 'up')} a side nothing is left for a design."
        return {"headline": "No room", "spare": sentence, "also": ""}
    sentence = f"stitches at most, with {laid(side, unit, 'up')} a side."
    return {"headline": _times(most), "spare": sentence, "also": ""}


def _fitting(values: Mapping[str, Any], cloth: Cloth, side: float) -> dict[str, str]:
    straight, turned = ways(cloth, values, side)
    way, unit = better(straight, turned), values["unit"]
    if not way.fits:
        return {"headline": "Too small", "spare": _short(way, side, unit), "also": _finer(values, side)}
    over = [laid(max(0.0, spare), unit, "down") for spare in (way.spare_across, way.spare_down)]
    return {
        "headline": "It fits, turned" if way.turned else "It fits",
        "spare": f"{over[0]} over across and {over[1]} down, beside {laid(side, unit, 'up')} a side.",
        "also": "Turned by a quarter it fits as well." if straight.fits and turned.fits else "",
    }


def _hooped(values: Mapping[str, Any], cloth: Cloth, tables: Mapping[str, Any]) -> str:
    """Say that the hoop which goes round the design finds no room on the piece, if it does not."""
    found, unit = cut(cloth, values, tables), values["unit"]
    if found.least <= min(values["piece_width"], values["piece_height"]) + FORGIVEN:
        return ""
    across = laid((found.hoop.diameter or 0) * INCH, unit)
    return f"A hoop of {across} goes round it, and asks for {laid(found.least, unit, 'up')} each way."


def _short(way: Fit, side: float, unit: str) -> str:
    short = [
        f"{laid(-spare, unit, 'up')} {where}"
        for spare, where in ((way.spare_across, "across"), (way.spare_down, "down"))
        if spare < -FORGIVEN
    ]
    left = min(way.margin_across, way.margin_down)
    rest = f"it would leave {laid(max(0.0, left), unit, 'down')} a side, not {laid(side, unit, 'up')}"
    return f"Short by {' and '.join(short)}: {rest if left >= 0 else 'the design itself is larger'}."


def _finer(values: Mapping[str, Any], side: float) -> str:
    per_inch = values["count"] / int(values["over"])
    for count, over in GROUNDS:
        if count / over > per_inch and _fits(values, side, count, over):
            return f"From {plain(count / over)} stitches an inch on it fits."
    return "No usual count is fine enough."


def _fits(values: Mapping[str, Any], side: float, count: float, over: int) -> str:
    straight, turned = ways(Cloth(count, count, over), values, side)
    return "fits" if straight.fits else "turned" if turned.fits else ""


def _rows(values: Mapping[str, Any], side: float) -> dict[str, str]:
    """Say of each usual count the most it takes, and whether the design fits."""
    said = {}
    for row, (count, over) in enumerate(GROUNDS):
        cloth = Cloth(count, count, over)
        most = largest(cloth, values["piece_width"], values["piece_height"], side)
        said[f"most-{row}"] = _times(most) if all(most) else "nothing"
        said[f"yours-{row}"] = (_fits(values, side, count, over) or "no") if values["width"] else ""
    return said


def _times(size: tuple[int, int]) -> str:
    return f"{size[0]:,} × {size[1]:,}"
