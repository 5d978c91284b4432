"""A piece of cloth and the design on it as a drawing to scale, in mm of the cloth.

Pure, and the same in static/js/cloth/piece_drawing.js.
"""

from collections.abc import Mapping
from typing import Any

from webapp.cloth.piece import better, cloth_of, margin_of, ways
from webapp.cloth.reads import Asked
from webapp.cloth.sizing import largest
from webapp.cloth.words import plain


def shapes(asked: Asked, table: Mapping[str, Any]) -> dict[str, dict[str, float]]:
    """Draw to scale, in mm from the piece's top left: the piece, the room inside its margins, the design."""
    values, side = asked.values, margin_of(asked.values, table)
    cloth, (wide, high) = cloth_of(values), (values["piece_width"], values["piece_height"])
    most = largest(cloth, wide, high, side)
    if values["width"]:
        way = better(*ways(cloth, values, side))
        wide, high = (high, wide) if way.turned else (wide, high)
        x, y = way.margin_across, way.margin_down
    elif all(most):
        x, y = (
            (wide - most[0] * cloth.pitch_across) / 2,
            (high - most[1] * cloth.pitch_down) / 2,
        )
    else:
        x, y = wide / 2, high / 2
    room = [max(0.0, wide - 2 * side), max(0.0, high - 2 * side)]
    return {
        "piece": {"x": 0.0, "y": 0.0, "width": wide, "height": high},
        "room": {"x": (wide - room[0]) / 2, "y": (high - room[1]) / 2, "width": room[0], "height": room[1]},
        "design": {"x": x, "y": y, "width": wide - 2 * x, "height": high - 2 * y},
    }


def frame(drawn: Mapping[str, Mapping[str, float]]) -> str:
    """Give the drawing's viewBox: the piece, and the design where it reaches beyond it."""
    piece, design = drawn["piece"], drawn["design"]
    x, y = min(0.0, design["x"]), min(0.0, design["y"])
    wide, high = max(piece["width"], design["width"]), max(piece["height"], design["height"])
    edge = max(wide, high) / 100
    return box(x - edge, y - edge, wide + 2 * edge, high + 2 * edge)


def box(*numbers: float) -> str:
    """Write a viewBox, to a tenth of a mm."""
    return " ".join(map(_tenth, numbers))


def _tenth(number: float) -> str:
    return plain(int(number * 10 + (0.5 if number >= 0 else -0.5)) / 10)
