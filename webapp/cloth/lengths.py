"""Lengths and areas in words: rounded only here, and alike in both languages (static/js/cloth/lengths.js).

A cut lies on the tape's quarters and is written as they are read there; what is not cut is written to a
hundredth of an inch or a millimetre, a half rounded up; thousands stand apart. All lengths in mm; a unit is
"in" or "cm".
"""

import re
from math import floor

from webapp.cloth.bounds import FORGIVEN, INCH

OTHER = {"in": "cm", "cm": "in"}
LEAST = {"in": "0.01", "cm": "0.1"}  # what is not cut is written to
PARTS = ("", "1/4", "1/2", "3/4")
SIGNS = {"1/4": "¼", "1/2": "½", "3/4": "¾"}
HAIR = 1e-9  # so that a half, which arithmetic made a little less than one, is rounded up


def quarters(mm: float) -> str:
    """Write a length that lies on a quarter inch: "15 3/4"."""
    whole, part = divmod(floor(mm / INCH * 4 + 0.5 + HAIR), 4)
    if not part:
        return f"{whole:,}"
    return f"{whole:,} {PARTS[part]}" if whole else PARTS[part]


def inches(mm: float) -> str:
    """Write inches to a hundredth, without idle zeros: "8.75"."""
    return _decimals(floor(mm / INCH * 100 + 0.5 + HAIR), 100)


def centimetres(mm: float) -> str:
    """Write centimetres to a tenth, without an idle zero: "22.2"."""
    return _decimals(floor(mm + 0.5 + HAIR), 10)


def number(mm: float, unit: str, cut: bool = False) -> str:
    """Write a length without its unit; ``cut``: one that lies on the tape's quarters."""
    if unit == "cm":
        return centimetres(mm)
    return quarters(mm) if cut else inches(mm)


def written(mm: float, unit: str, cut: bool = False) -> str:
    """Write a length with its unit: "8.75 in"."""
    return f"{number(mm, unit, cut)} {unit}"


def area(width: float, height: float, unit: str, cut: bool = False) -> str:
    """Write a width and a height: "16 × 18 in"; ``cut``: both lie on the tape's quarters."""
    return f"{_side(width, unit, cut)} × {_side(height, unit, cut)} {unit}"


def both(width: float, height: float, unit: str, cut: bool = False) -> tuple[str, str]:
    """Write a width and a height in her unit, and in the other: ("16 × 18 in", "40.6 × 45.7 cm")."""
    return area(width, height, unit, cut), area(width, height, OTHER[unit])


def signed(text: str) -> str:
    """Write the quarters in a text as single signs, where it is shown large or in a row: "15¾"."""
    text = re.sub(r"([0-9]) (?=[13]/[24])", r"\1", text)
    for part, sign in SIGNS.items():
        text = text.replace(part, sign)
    return text


def _side(mm: float, unit: str, cut: bool) -> str:
    """Write one side, and do not call nothing what is there."""
    text = number(mm, unit, cut)
    return f"under {LEAST[unit]}" if text == "0" and mm > FORGIVEN else text


def _decimals(many: int, divided: int) -> str:
    found = many / divided
    return f"{int(found) if found == int(found) else found:,}"
