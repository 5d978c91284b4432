"""Size and cut drawn to scale: a drawing whose unit is a millimetre of cloth; the same in JavaScript.

Cut, design, what holds it, where to begin, and below them a bank card. Only letters and marks go by the
screen: ``u`` is the mm of cloth that one of the drawing's ``WIDE`` × ``HIGH`` dots on it stands for.
"""

from math import floor

from webapp.cloth.lengths import laid_area
from webapp.cloth.size_answer import Answer, ring, yours

CARD = (85.60, 53.98)  # mm: ISO/IEC 7810, ID-1
WIDE, HIGH = 326, 340  # dots
LEFT, RIGHT, TOP, BOTTOM, UNDER = 74, 8, 26, 4, 26  # dots: a height's figure; an edge; up; an edge; a width's

LONG = (12, 14, 16, 18)  # characters of a cut from which on its figure is set smaller, to stand on one line

Shapes = dict[str, dict[str, float | str]]


def shapes(found: Answer) -> Shapes:
    """Give each shape's attributes, mm from the top left of the cut, and the drawing's viewBox."""
    sized, across = found.sized, ring(found)
    wide, high = sized.cut_width, sized.cut_height
    over, under = max(0.0, (across - wide) / 2), max(0.0, (across - high) / 2)
    u = max(
        (wide + 2 * over) / (WIDE - LEFT - RIGHT),
        (high + 2 * under + CARD[1]) / (HIGH - TOP - UNDER - BOTTOM),
    )
    return {
        "figure": {"data-long": _long(found)},
        "view": {"viewBox": _view(found, under, u)},
        "cut": {"x": 0.0, "y": 0.0, "width": wide, "height": high},
        "design": {
            "x": sized.first_in,
            "y": sized.first_down,
            "width": sized.finished_width,
            "height": sized.finished_height,
        },
        "hoop": {"cx": wide / 2, "cy": high / 2, "r": across / 2},
        "frame": _frame(found, across),
        **_marks(found, u),
        **_labels(found, over, under, u),
    }


def _long(found: Answer) -> str:
    text = laid_area(found.sized.cut_width, found.sized.cut_height, found.unit)
    return str(sum(len(text) >= least for least in LONG))


def _view(found: Answer, under: float, u: float) -> str:
    x = (found.sized.cut_width + (RIGHT - LEFT - WIDE) * u) / 2
    return " ".join(_plain(value) for value in (x, -under - TOP * u, WIDE * u, HIGH * u))


def _plain(value: float) -> str:
    rounded = floor(value * 1000 + 0.5) / 1000
    return str(int(rounded)) if rounded == int(rounded) else str(rounded)


def _frame(found: Answer, across: float) -> dict[str, float | str]:
    """Give what a frame leaves open: the cut without what is gripped, all round; nothing beside a hoop."""
    sized, grip = found.sized, found.grip
    if across or not grip:
        return {"x": 0.0, "y": 0.0, "width": 0.0, "height": 0.0}
    x, y = min(grip, sized.first_in), min(grip, sized.first_down)
    return {"x": x, "y": y, "width": sized.cut_width - 2 * x, "height": sized.cut_height - 2 * y}


def _marks(found: Answer, u: float) -> Shapes:
    """Place the first stitch, how far it is in and down, and the middle."""
    sized = found.sized
    x, y, middle = sized.first_in, sized.first_down, (sized.cut_width / 2, sized.cut_height / 2)
    inside = (x + 6 * u, y + 6 * u)
    return {
        "first": {"x": x, "y": y, "width": 8 * u, "height": 8 * u},
        "in": {"x1": 0.0, "y1": inside[1], "x2": x, "y2": inside[1], "stroke-width": u},
        "down": {"x1": inside[0], "y1": 0.0, "x2": inside[0], "y2": y, "stroke-width": u},
        "middle-across": _line(middle[0] - 9 * u, middle[1], middle[0] + 9 * u, middle[1], u),
        "middle-down": _line(middle[0], middle[1] - 9 * u, middle[0], middle[1] + 9 * u, u),
    }


def _line(x1: float, y1: float, x2: float, y2: float, u: float) -> dict[str, float | str]:
    return {"x1": x1, "y1": y1, "x2": x2, "y2": y2, "stroke-width": 2 * u}


def _labels(found: Answer, over: float, under: float, u: float) -> Shapes:
    """Place the figures beside the cut, which way is up, the card and its name, and mark her row."""
    wide, high = found.sized.cut_width, found.sized.cut_height
    below, mine = high + under + UNDER * u, yours(found)
    return {
        "up": {"x": wide / 2, "y": -under - 9 * u, "font-size": 14 * u},
        "wide": {"x": wide / 2, "y": high + under + 17 * u, "font-size": 14 * u},
        "high": {"x": -over - 6 * u, "y": high / 2 + 5 * u, "font-size": 14 * u},
        "card": {"x": 0.0, "y": below, "width": CARD[0], "height": CARD[1], "rx": 3.18},
        "card-name": {"x": CARD[0] + 7 * u, "y": below + CARD[1] / 2 + 4 * u, "font-size": 13 * u},
        **{
            f"row-{row}": {"aria-current": "true" if row == mine else "false"}
            for row in range(len(found.sides))
        },
    }
