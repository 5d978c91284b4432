"""What other cloth may have come to the very count that was measured.

Dyed, it shrinks: a 32 to 34 or 35 (kittenstitcher.com). Drawn on a frame it stretches: a 14 read about 12
(lordlibidan.com). And some is sold by a figure far from its name: 120 per 10 cm as 28
(angolostefania.it/main/?p=148). That two or three reports hold for every count is taken for granted (common
practice, no source), so it is said only where the measured count is of no name, or of one that is seldom
sold: there a usual cloth that was changed is as likely.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from webapp.cloth.gauge import INCH, Measured
from webapp.cloth.naming import SHRUNK, SHRUNK_LEAST, STRETCHED, Judged, Standard
from webapp.cloth.words import plain

USUAL = 1  # the weight of a count that is usually asked for
MOST = 3  # said at once; more say nothing
AN = (8, 11, 18)


@dataclass(frozen=True)
class Changed:
    """A usual count that may be the measured one; how: shrunk, stretched, or sold at ``figure`` per 10 cm."""

    count: float
    how: str
    figure: float | None = None


def changed(measured: Measured, judged: Judged, standards: Sequence[Standard]) -> list[Changed]:
    """List what usual cloth may have become the measured one, within its 95 % interval."""
    fits = [s for s, n in zip(standards, judged.names, strict=True) if n.verdict == "could be"]
    if len(fits) > 1 or any(s.weight >= USUAL for s in fits):
        return []
    found = [_become(measured, s) for s in standards if s.weight >= USUAL]
    return [one for one in found if one]


def _become(measured: Measured, standard: Standard) -> Changed | None:
    for figure in standard.also:
        if _within(measured, (figure - 0.5) * INCH / 100, (figure + 0.5) * INCH / 100):
            return Changed(standard.count, "sold", figure)
    if _within(measured, standard.low * SHRUNK_LEAST, standard.high * SHRUNK):
        return Changed(standard.count, "shrunk")
    if _within(measured, standard.low * STRETCHED, standard.high * STRETCHED):
        return Changed(standard.count, "stretched")
    return None


def _within(measured: Measured, low: float, high: float) -> bool:
    return low <= measured.high and measured.low <= high


def in_words(found: Sequence[Changed], named: bool) -> str:
    """Say what it may have been, beside the name it has (``named``) or where it has none."""
    if not 0 < len(found) <= MOST:
        return "" if named else "Shrunk in dyeing, stretched on a frame, or sold so."
    each = [_one(one) for one in found]
    return f"Or {', or '.join(each)}." if named else f"Perhaps {', '.join(each)}, or sold so."


def _one(one: Changed) -> str:
    cloth = f"{'an' if one.count in AN else 'a'} {plain(one.count)}"
    if one.how == "sold":
        return f"{cloth} ({plain(one.figure or 0)} per 10 cm is sold as {plain(one.count)})"
    return f"{cloth} {'that shrank in dyeing' if one.how == 'shrunk' else 'stretched on a frame'}"
