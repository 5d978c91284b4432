"""What an estimate takes: whatever lies outside is a slip, and is refused with a sentence. Pure."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from webapp.threads.estimate import Counts, Own, Worked

MOST = 10_000_000  # stitches of a line
STRANDS = (1, 24)  # in the needle
WORKING = (150.0, 5_000.0)  # mm: shorter than that is all ends
DIAMETER = (0.01, 5.0)  # mm of a strand
FACTOR = (0.2, 5.0)  # of her own figure
SPREAD = (0.0, 0.5)  # sd of its logarithm


def estimated(counts: Counts, worked: Worked, patches: int | None, own: Own | None) -> None:
    """Refuse what no line of a legend has: raises ValueError with a sentence."""
    for many in counts:
        _within(many, 0, MOST, "Stitches are whole numbers from 0 to 10,000,000.", whole=True)
    _within(worked.together, *STRANDS, "The needle holds 1 to 24 strands.", whole=True)
    _within(worked.strands, 1, worked.together, "A part has at least one of the strands.", whole=True)
    _within(worked.working, *WORKING, "A working length is from 15 cm to 5 m (6 in to 5 yards).")
    _within(worked.diameter, *DIAMETER, "A strand is from 0.01 to 5 mm thick.")
    if worked.loop and worked.together % 2:
        raise ValueError("A loop begins only an even number of strands.")
    if patches is not None:
        _within(patches, 1, MOST, "Patches are counted from 1.", whole=True)
    if own:
        _within(own.factor, *FACTOR, "Her own figure is between a fifth and five times the drawing's.")
        _within(own.spread, *SPREAD, "Her own figure may be off by half of itself at most.")


def _within(value: float, low: float, high: float, sentence: str, whole: bool = False) -> None:
    if not low <= value <= high or (whole and value % 1 != 0):
        raise ValueError(sentence)
