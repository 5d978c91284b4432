"""How large a design comes out, how big to cut, where to begin, and what a piece of cloth takes.

Plain geometry of cloth that lies flat: a stitch over ``over`` threads of cloth of ``count`` an inch takes
over · 25.4 / count mm, and a design takes so many of them. The margin is added to each of four sides, and
the cut rounded up to what can be cut. All lengths in mm; counts per inch; designs in whole stitches. What
``bounds`` refuses raises ValueError with a sentence. The same in static/js/cloth/sizing.js, operation for
operation, so that both come to the same last bit.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil, floor

from webapp.cloth import bounds
from webapp.cloth.bounds import FORGIVEN, INCH

STEPS = {"in": 6.35, "cm": 5.0}  # mm: a quarter inch, half a centimetre (common practice, no source)


@dataclass(frozen=True)
class Cloth:
    """Cloth as the design lies on it: count per inch along the design's width (across) and height (down)."""

    across: float
    down: float
    over: int = 1

    def __post_init__(self) -> None:
        bounds.counted(self.across)
        bounds.counted(self.down)
        bounds.spanned(self.over)

    @property
    def pitch_across(self) -> float:
        """Give the mm from one stitch to the next along the width."""
        return self.over * INCH / self.across

    @property
    def pitch_down(self) -> float:
        """Give the mm from one stitch to the next along the height."""
        return self.over * INCH / self.down

    @property
    def turned(self) -> "Cloth":
        """Give the same cloth turned by a quarter."""
        return Cloth(self.down, self.across, self.over)


@dataclass(frozen=True)
class Sized:
    """A design on its cloth, mm; cut: the exact one rounded up.

    first_in, first_down: from the cut's left and top edge to the first stitch's outer corner, the design
    being in the middle of the rounded cut; threads_in, threads_down: the same in squares or threads of the
    cloth, the nearest; middle: in stitches from the left and the top: with a half, the middle of a stitch;
    whole, the line between two.
    """

    width: int
    height: int
    finished_width: float
    finished_height: float
    margin: float
    exact_width: float
    exact_height: float
    cut_width: float
    cut_height: float
    first_in: float
    first_down: float
    threads_in: int
    threads_down: int
    middle: tuple[float, float]


@dataclass(frozen=True)
class Fit:
    """How a design lies on a piece, mm.

    turned: the piece, by a quarter; spare: what is over beside design and margins, both sides together,
    below 0 where it is short; margin: what each side would get.
    """

    fits: bool
    turned: bool
    spare_across: float
    spare_down: float
    margin_across: float
    margin_down: float


@dataclass(frozen=True)
class Ground:
    """One count in a row of counts, with what a design comes to on it."""

    count: float
    over: int
    sized: Sized


@dataclass(frozen=True)
class Taken:
    """One count, with how a design fits a piece of it as it lies, and turned; None where it does not."""

    count: float
    over: int
    straight: Fit | None
    turned: Fit | None


def finished(cloth: Cloth, width: int, height: int) -> tuple[float, float]:
    """Give the finished width and height, mm, of so many stitches."""
    bounds.stitched(width, height)
    return width * cloth.over * INCH / cloth.across, height * cloth.over * INCH / cloth.down


def round_up(length: float, step: float) -> float:
    """Give the next whole step, mm, at or above a length."""
    return ceil((length - FORGIVEN) / step) * step


def size(cloth: Cloth, width: int, height: int, margin: float, step: float, least: float = 0.0) -> Sized:
    """Size a design with a margin a side, its cut rounded up to ``step`` (one of ``STEPS``).

    least: what the cut has each way however small the design, as what holds it asks.
    """
    bounds.edged(margin)
    across, down = finished(cloth, width, height)
    exact_width, exact_height = max(across + 2 * margin, least), max(down + 2 * margin, least)
    cut_width, cut_height = round_up(exact_width, step), round_up(exact_height, step)
    first_in, first_down = max(0.0, (cut_width - across) / 2), max(0.0, (cut_height - down) / 2)
    return Sized(
        *(width, height, across, down, margin, exact_width, exact_height, cut_width, cut_height),
        *(first_in, first_down),
        threads_in=floor(first_in * cloth.across / INCH + 0.5),
        threads_down=floor(first_down * cloth.down / INCH + 0.5),
        middle=(width / 2, height / 2),
    )


def largest(cloth: Cloth, piece_width: float, piece_height: float, margin: float) -> tuple[int, int]:
    """Give the most stitches across and down a piece takes inside its margins; 0 where there is no room."""
    bounds.measured(piece_width, piece_height)
    bounds.edged(margin)
    return (
        _room(piece_width - 2 * margin, cloth.across, cloth.over),
        _room(piece_height - 2 * margin, cloth.down, cloth.over),
    )


def _room(length: float, count: float, over: int) -> int:
    return max(0, floor((length + FORGIVEN) * count / (over * INCH)))


def fit(
    cloth: Cloth,
    width: int,
    height: int,
    margin: float,
    piece_width: float,
    piece_height: float,
    turned: bool = False,
) -> Fit:
    """Lay a design on a piece, or on the piece turned by a quarter: then its counts change places too.

    ``cloth`` and the piece are as the piece lies before it is turned.
    """
    bounds.measured(piece_width, piece_height)
    bounds.edged(margin)
    if turned:
        cloth, piece_width, piece_height = cloth.turned, piece_height, piece_width
    across, down = finished(cloth, width, height)
    spare_across, spare_down = piece_width - across - 2 * margin, piece_height - down - 2 * margin
    return Fit(
        fits=spare_across >= -FORGIVEN and spare_down >= -FORGIVEN,
        turned=turned,
        spare_across=spare_across,
        spare_down=spare_down,
        margin_across=(piece_width - across) / 2,
        margin_down=(piece_height - down) / 2,
    )


def which_fit(
    width: int,
    height: int,
    margin: float,
    piece_width: float,
    piece_height: float,
    grounds: Sequence[tuple[float, int]],
) -> list[Taken]:
    """Tell of several even cloths, each (count, over), on which a design fits a piece, and which way."""
    found = []
    for count, over in grounds:
        cloth = Cloth(count, count, over)
        ways = [
            fit(cloth, width, height, margin, piece_width, piece_height, turned) for turned in (False, True)
        ]
        straight, turned = (way if way.fits else None for way in ways)
        found.append(Taken(count, over, straight, turned))
    return found
