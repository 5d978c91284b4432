"""Her own figure: what she measured, against what the drawing says, sharpened by every reading.

A reading is one working length stitched (so many crosses), or thread used up (so many crosses of all it
gave). Each says her thread ÷ the drawing's, ends included; on the logarithm these are weighed by how much
each can be off, together with what is believed before any: one, give or take ``PRIOR``.
"""

from collections.abc import Sequence
from datetime import date
from typing import NamedTuple

from webapp.threads.estimate import Own
from webapp.threads.geometry import Ground


class Reading(NamedTuple):
    """What she measured on this cloth.

    what: length (one working length stitched up) or skein (thread used up); stitches: full crosses it gave;
    length: mm, the working length, or the thread used up as it is sold; strands: in the needle; made: the day.
    Of a skein also: split, the strands it is sold of; working, mm, and loop, as it was cut and begun; patches,
    scatter: how those crosses lay.
    """

    what: str
    stitches: int
    length: float
    strands: int
    method: str
    made: date
    split: int = 6
    working: float = 457.2
    loop: bool = False
    scatter: str = "mixed"
    patches: int | None = None


def own(readings: Sequence[Reading], ground: Ground) -> Own | None:
    """Give her own figure from all her readings on a ground; None where there is none.

    Raises ValueError with a sentence for a reading that cannot be meant.
    """
    raise NotImplementedError
