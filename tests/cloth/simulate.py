"""A stitcher, a tape and a piece of cloth whose count is known: the reference for the gauge.

Nothing of the gauge's arithmetic is used: lines, marks and misreadings are placed one by one.
"""

from math import ceil, floor
from random import Random

from webapp.cloth.gauge import INCH, Reading


def to_a_mark(rng: Random, count: float, length: float, division: float, at_a_line: bool = False) -> Reading:
    """Count the squares from 0 to a mark of the tape, laid anywhere on the cloth (or 0 at a line of it)."""
    begin = 0.0 if at_a_line else rng.random()  # where 0 lies, in squares from a line
    misread = (rng.random() + rng.random() - 1) * division  # both ends, half a division either way each
    end = begin + count * (length + misread) / INCH
    return Reading(round(end) - round(begin), length, division)


def whole_only(rng: Random, count: float, length: float, division: float, at_a_line: bool = True) -> Reading:
    """Count whole squares only, and leave out what is over at the end (at both, if not from a line)."""
    begin = 0.0 if at_a_line else rng.random()
    misread = (rng.random() + rng.random() - 1) * division
    end = begin + count * (length + misread) / INCH
    return Reading(floor(end) - ceil(begin), length, division)


def between_pins(rng: Random, count: float, squares: int, division: float) -> Reading:
    """Count so many squares, set a pin at either end, and read the tape from pin to pin."""
    stand = (rng.random() + rng.random() - 1) * 0.25  # each pin somewhere in its hole, an eighth either way
    laid = (rng.random() - 0.5) * division
    length = round(((squares + stand) * INCH / count + laid) / division) * division
    return Reading(squares, length, division, pins=True)
