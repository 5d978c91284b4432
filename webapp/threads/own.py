"""Her own figure: what she measured, against what the drawing says, sharpened by every reading.

A reading is one working length stitched (so many crosses), or thread used up (so many crosses of all it
gave). Each says her thread ÷ the drawing's, ends included. On the logarithm these are weighed by how much
each may be off, together with what is believed before any: one, give or take ``PRIOR``. The same in
static/js/threads/own.js.
"""

from collections.abc import Sequence
from datetime import date
from math import exp, log, sqrt
from typing import NamedTuple

from webapp.threads.bounds import FACTOR
from webapp.threads.estimate import COUNTED, GUESSED, Counts, Own, Worked, estimate, wasted
from webapp.threads.geometry import Ground

# One sd of the logarithm (no source; set so that tests/bench/thread.py holds what is claimed):
PRIOR = 0.25  # her hand and her ends against the drawing's, before any reading
LENGTH = 0.06  # one working length: where its ends fell, an easy stretch or an awkward one
SKEIN = 0.04  # thread used up: what was unpicked or dropped, how it lay
CHANGE = 0.03  # from one thread to another, one month to the next: no reading takes this away


class Reading(NamedTuple):
    """What she measured on this cloth.

    what: length (one working length stitched up) or skein (thread used up); stitches: full crosses it gave;
    length: mm, the working length, or the thread used up as it is sold; strands: in the needle, of this
    thread; made: the day. loop: begun with a loop. Of a skein also: split, the strands it is sold of;
    working, mm, as it was cut; scatter, patches: how those crosses lay.
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
    if not readings:
        return None
    weight, total = 1 / (PRIOR * PRIOR), 0.0
    for one in readings:
        found, off = ratio(one, ground)
        weight += 1 / (off * off)
        total += log(found) / (off * off)
    return Own(exp(total / weight), sqrt(1 / weight + CHANGE * CHANGE), rests_on(readings))


def ratio(reading: Reading, ground: Ground) -> tuple[float, float]:
    """Give her thread ÷ the drawing's, ends included, as one reading has it; and the sd of its logarithm.

    Raises ValueError with a sentence for a reading that cannot be meant.
    """
    if reading.what not in ("length", "skein"):
        raise ValueError("Measured is one working length, or thread used up.")
    if not 1 <= reading.stitches <= 1_000_000 or reading.stitches % 1:
        raise ValueError("Write how many whole crosses it gave.")
    found, off = _length(reading, ground) if reading.what == "length" else _skein(reading, ground)
    if not FACTOR[0] <= found <= FACTOR[1]:
        raise ValueError("No cross takes so little or so much: check the crosses and the length.")
    return found, off + 0.5 / reading.stitches


def _length(reading: Reading, ground: Ground) -> tuple[float, float]:
    worked = Worked(reading.strands, reading.strands, reading.method, reading.length, reading.loop)
    drawn = estimate(ground, Counts(full=reading.stitches), worked, ONE, patches=1).laid.usual
    return (reading.length - wasted(reading.loop)) / drawn, LENGTH


def _skein(reading: Reading, ground: Ground) -> tuple[float, float]:
    """Take what its moves are thought to have taken off, and be the less sure the more that is."""
    if not 0 < reading.length <= 1e9 or not 1 <= reading.split <= 24:
        raise ValueError("Write how much thread was used up.")
    worked = Worked(reading.strands, reading.strands, reading.method, reading.working, reading.loop)
    counts, kind = Counts(full=reading.stitches), {**ONE, "strands": reading.split}
    still = estimate(ground, counts, worked, kind, patches=1).sold.usual
    moved = estimate(ground, counts, worked, kind, reading.patches, reading.scatter).sold.usual - still
    guess = (COUNTED if reading.patches else GUESSED) * moved / still
    return (reading.length - moved) / still, sqrt(SKEIN * SKEIN + guess * guess)


ONE = {"sold": "skein", "length_mm": 1.0, "strands": 1}


def rests_on(readings: Sequence[Reading]) -> str:
    """Say what her own figure rests on: "one length on 2026-02-03"."""
    lengths = sum(one.what == "length" for one in readings)
    counted = ((lengths, "length"), (len(readings) - lengths, "skein"))
    said = [f"{NUMBERS.get(n, n)} {what}{'s' if n > 1 else ''}" for n, what in counted if n]
    last = max(one.made for one in readings).isoformat()
    return f"{' and '.join(said)}{', the last' if len(readings) > 1 else ''} on {last}"


NUMBERS = {1: "one", 2: "two", 3: "three", 4: "four", 5: "five", 6: "six"}
