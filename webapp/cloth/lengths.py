"""Lengths and areas in words: rounded only here, and alike in both languages (static/js/cloth/lengths.js).

What is laid out on cloth is written as it is found on a tape: inches in eighths, or on the sixteenth where a
length lies on one, centimetres in tenths. What is to be cut is never rounded down, and what is left never
up. How large a design comes out is written to a hundredth of an inch or a millimetre, a half rounded up.
Thousands stand apart. All lengths in mm; a unit is "in" or "cm".
"""

from fractions import Fraction
from math import ceil, floor

from webapp.cloth.bounds import FORGIVEN, INCH
from webapp.cloth.words import plain

OTHER = {"in": "cm", "cm": "in"}
PER = {"in": INCH, "cm": 10.0}  # mm
LEAST = {"in": "0.01", "cm": "0.1"}  # a finished size is written to
SIGNS = {"1/8": "⅛", "1/4": "¼", "3/8": "⅜", "1/2": "½", "5/8": "⅝", "3/4": "¾", "7/8": "⅞"}
HAIR = 1e-9  # so that a half, which arithmetic made a little less than one, is rounded up


def tape(mm: float, way: str = "near") -> str:
    """Write inches as a tape has them, "15¾", rounded ``way``: near, up or down."""
    sixteenths = mm / INCH * 16
    found = floor(sixteenths + 0.5)
    if abs(found - sixteenths) > FORGIVEN:
        found = 2 * _rounded(sixteenths / 2, way)
    whole, rest = divmod(found, 16)
    part = str(Fraction(rest, 16)) if rest else ""
    if whole and part:
        return f"{whole:,}{SIGNS[part]}" if part in SIGNS else f"{whole:,} {part}"
    return SIGNS.get(part, part) or f"{whole:,}"


def laid(mm: float, unit: str, way: str = "near") -> str:
    """Write a length that is laid out on cloth, with its unit: "15¾ in"."""
    return f"{_laid(mm, unit, way)} {unit}"


def laid_area(width: float, height: float, unit: str, way: str = "near") -> str:
    """Write a width and a height that are laid out on cloth: "15¾ × 18 in"."""
    return f"{_laid(width, unit, way)} × {_laid(height, unit, way)} {unit}"


def to_cut(width: float, height: float, unit: str) -> tuple[str, str]:
    """Write a cut in her unit, and in the other, rounded up: ("16¾ × 18 in", "42.6 × 45.8 cm")."""
    return laid_area(width, height, unit), laid_area(width, height, OTHER[unit], "up")


def inches(mm: float) -> str:
    """Write inches to a hundredth, without idle zeros: "8.75"."""
    return _decimals(floor(mm / INCH * 100 + 0.5 + HAIR), 100)


def centimetres(mm: float, way: str = "near") -> str:
    """Write centimetres to a tenth, without an idle zero: "22.2"."""
    return _decimals(_rounded(mm, way), 10)


def number(mm: float, unit: str) -> str:
    """Write a finished length without its unit."""
    return centimetres(mm) if unit == "cm" else inches(mm)


def written(mm: float, unit: str) -> str:
    """Write a finished length with its unit: "8.75 in"."""
    return f"{number(mm, unit)} {unit}"


def area(width: float, height: float, unit: str) -> str:
    """Write a finished width and height: "10 × 12 in"."""
    return f"{_side(width, unit)} × {_side(height, unit)} {unit}"


def both(width: float, height: float, unit: str) -> tuple[str, str]:
    """Write a finished width and height in her unit, and in the other: ("10 × 12 in", "25.4 × 30.5 cm")."""
    return area(width, height, unit), area(width, height, OTHER[unit])


def typed(mm: float, unit: str) -> str:
    """Write a length as a field has it, so that it is read back as it was, and never as more."""
    return plain(floor(mm / PER[unit] * 10_000 + FORGIVEN) / 10_000)


def _laid(mm: float, unit: str, way: str) -> str:
    return centimetres(mm, way) if unit == "cm" else tape(mm, way)


def _rounded(value: float, way: str) -> int:
    if way == "up":
        return ceil(value - FORGIVEN)
    return floor(value + FORGIVEN) if way == "down" else floor(value + 0.5 + HAIR)


def _side(mm: float, unit: str) -> str:
    """Write one side, and do not call nothing what is there."""
    text = number(mm, unit)
    return f"under {LEAST[unit]}" if text == "0" and mm > FORGIVEN else text


def _decimals(many: int, divided: int) -> str:
    found = many / divided
    return f"{int(found) if found == int(found) else found:,}"
