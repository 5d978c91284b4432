"""A stitcher whose hand nobody knows: she cuts lengths, stitches patch by patch, unpicks, finishes skeins.

Everything about her is drawn at random, and wider or of another shape than the forecast believes: tension,
ends, how long she really cuts, how far apart patches lie, how often the thread is carried, what she unpicks.
The forecast is told only what the app is: the legend, what stitches the journal holds, and her readings.
"""

from dataclasses import dataclass, field
from math import exp
from random import Random

from webapp.threads.estimate import Worked
from webapp.threads.geometry import Ground, bundle, stitch

STRANDS_SOLD = 6


@dataclass
class Stitcher:
    """How she truly works; all lengths in mm."""

    rng: Random
    ground: Ground
    worked: Worked
    tension: float = field(init=False)  # her thread ÷ the drawing's
    start: float = field(init=False)
    end: float = field(init=False)
    cut: float = field(init=False)  # what she cuts, on the mean, when she says 18 in
    carries: float = field(init=False)  # how often, from patch to patch
    unpicks: float = field(init=False)  # of stitches laid

    def __post_init__(self) -> None:
        rng = self.rng
        self.tension = rng.uniform(0.85, 1.2)
        self.start = rng.uniform(4, 25) if self.worked.loop else rng.uniform(20, 80)
        self.end = rng.uniform(25, 75)
        self.cut = self.worked.working * rng.uniform(0.92, 1.08)
        self.carries = rng.uniform(0.5, 0.95)
        self.unpicks = rng.uniform(0.0, 0.05)

    def length(self) -> tuple[float, float]:
        """Cut a working length: gives all of it, and what there is to stitch with."""
        whole = self.cut * exp(self.rng.gauss(0, 0.03))
        return whole, whole - self.start * self.rng.uniform(0.7, 1.3) - self.end * self.rng.uniform(0.6, 1.6)

    def cross(self) -> float:
        """Lay one cross: what it takes."""
        drawn = stitch("full", self.ground, self.worked.method, bundle(self.worked.together))
        return drawn * self.tension * exp(self.rng.gauss(0, 0.05))


@dataclass
class Colour:
    """One line of the legend, and what is truly done with it."""

    full: int
    scatter: str
    patch: float  # crosses in a patch, on the mean; not what the forecast takes
    skeins: int = 0
    laid: int = 0  # crosses in the cloth
    spent: int = 0  # laid and perhaps unpicked: what the journal holds
    used: float = 0.0  # mm of thread in the needle, ends and all
    left: float = 0.0  # of the working length, to stitch with
    here: int = 0  # crosses left in this patch
    finished: list[tuple[int, int]] = field(default_factory=list)  # skeins used up, and crosses spent by then


def work(her: Stitcher, colour: Colour, until: int, skein: float) -> None:
    """Stitch a colour until so many crosses are in the cloth, and note each skein as it is used up."""
    in_a_skein = skein * STRANDS_SOLD / her.worked.strands
    while colour.laid < until:
        if colour.here == 0:
            colour.here = 1 + int(her.rng.expovariate(1 / colour.patch))
            if colour.spent and her.rng.random() < her.carries:
                colour.left -= her.ground.across * her.rng.uniform(1, 12)
            elif colour.spent:  # ended, and begun anew with what is left
                colour.left -= her.start + her.end
        need = her.cross()
        while need > colour.left:
            whole, colour.left = her.length()
            colour.used += whole
            if colour.used > in_a_skein * (len(colour.finished) + 1):
                colour.finished.append((len(colour.finished) + 1, colour.spent))
        colour.left -= need
        colour.spent += 1
        if her.rng.random() < her.unpicks:
            continue
        colour.laid += 1
        colour.here -= 1


def one_length(her: Stitcher) -> int:
    """Stitch one working length on the real cloth, as she is asked to: gives the crosses."""
    _whole, left = her.length()
    crosses = 0
    while (left := left - her.cross()) >= 0:
        crosses += 1
    return crosses
