"""What the gauge hands on to size and cut, a piece, a class and the slip, under the names their pages take.

There a design lies with the selvedge upright: ``count`` is along its width, which runs across the cloth, and
``across`` along its height, the way of the selvedge, which the gauge calls along. Threads are stitched over
two. ``error`` is half of the 95 % interval, the longer side of it, both ways.
"""

from math import ceil, floor

from webapp.cloth.answer import Answer
from webapp.cloth.gauge import Measured
from webapp.cloth.words import plain


def onward(answer: Answer) -> dict[str, str]:
    """Give the measured count, and that down the design where it may differ, with how far it may be off."""
    given = {"count": _hundredth(answer.measured.count)}
    ways = [answer.measured]
    if answer.ways and answer.across:
        ways = [answer.across, answer.along]
        given = {"count": _hundredth(answer.across.count), "across": _hundredth(answer.along.count)}
    off = max(_off(of) for of in ways)
    over = "2" if answer.kind == "threads" else "1"
    return given | {"over": over, "unit": answer.unit, "error": plain(ceil(off * 100 - 1e-9) / 100)}


def _hundredth(count: float) -> str:
    return plain(floor(count * 100 + 0.5) / 100)


def _off(of: Measured) -> float:
    return max(of.high - of.count, of.count - of.low)
