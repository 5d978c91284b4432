"""How large a design comes out on its cloth."""

from fractions import Fraction
from typing import NamedTuple

MM_PER_INCH = Fraction(254, 10)  # exact by definition


class Size(NamedTuple):
    """A width and a height in millimetres."""

    width: float
    height: float


def finished_size(width: int, height: int, count: float, over: int = 1) -> Size:
    """Give the finished size in mm of a design of ``width`` × ``height`` stitches.

    ``count``: squares or threads of the cloth per inch, above 0; ``over``: cloth threads each stitch spans.
    Worked out in fractions, with the count as written in decimals: nothing is lost before the last step.
    """
    per_thread = MM_PER_INCH / Fraction(repr(count))
    return Size(float(width * over * per_thread), float(height * over * per_thread))


def size_in_words(size: Size, unit: str) -> str:
    """Write a size for reading, in ``unit`` "in" (to a hundredth) or "cm" (to a tenth): "10 × 7.5 in"."""
    step, places = (25.4, 2) if unit == "in" else (10, 1)
    width, height = (_trimmed(side / step, places) for side in size)
    return f"{width} × {height} {unit}"


def _trimmed(value: float, places: int) -> str:
    text = f"{value:,.{places}f}".rstrip("0").rstrip(".")
    return text if text != "0" else f"under {10**-places:g}"
