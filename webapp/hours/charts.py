"""Months and years as cloth, and week beside week as single threads: geometry for an SVG. Pure.

A day is a warp thread, and what was stitched on it is woven on, as in the week's bands; a day with nothing
stays bare warp. Threads of one weave and tone are gathered into one path, so that a year is ten.
"""

from collections.abc import Collection, Iterable, Sequence
from dataclasses import dataclass
from datetime import timedelta

from webapp.hours.bars import WIDTH, Float, Loom, stacked, thread_minutes

Woven = Sequence[tuple[int, timedelta]]  # (weave, time), of each project that a day or week has
Row = Sequence[Woven | None]  # the days of a week or month; none: no day of it, or one still to come


@dataclass(frozen=True)
class Grid:
    """How a calendar is laid out: rows of days from ``left``, each ``deep``, its band ``under`` its top.

    A mark lies ``beam`` beneath its lowest thread.
    """

    left: float
    across: int
    deep: float
    under: float
    beam: float
    loom: Loom

    @property
    def column(self) -> float:
        """Tell how wide a day is."""
        return (WIDTH - self.left) / self.across

    def middle(self, column: int) -> float:
        """Tell where the middle of a day lies."""
        return self.left + (column + 0.5) * self.column

    def foot(self, row: int) -> float:
        """Tell where the lowest thread of a row lies."""
        return (row + 1) * self.deep - self.loom.pitch


MONTH = Grid(0, 7, 58, 18, 4, Loom(29.0, 4.4, 1.4, 8))
YEAR = Grid(28, 31, 27, 4, 3.8, Loom(6.2, 4.0, 0.8, 5))


@dataclass(frozen=True)
class Cloth:
    """A calendar drawn: its size, what one thread stands for, the bare warp, the threads on it, its marks."""

    grid: Grid
    rows: int
    minutes: int
    warp: str
    floats: list[Float]
    beneath: str  # a line under each day that is marked

    @property
    def height(self) -> float:
        """Tell how high it is."""
        return self.rows * self.grid.deep


def calendar(rows: Sequence[Row], grid: Grid, marked: Collection[tuple[int, int]] = ()) -> Cloth:
    """Weave rows of days; those ``marked``, by row and column, have a line beneath, as a frame's bar."""
    longest = max((sum((t for _, t in day), timedelta()) for row in rows for day in row if day), default=None)
    minutes = thread_minutes(longest or timedelta(), grid.loom)
    floats: list[Float] = []
    warp = []
    for r, row in enumerate(rows):
        foot, top = grid.foot(r), r * grid.deep + grid.under
        for c, day in enumerate(row):
            if day is None:
                continue
            warp.append(f"M{grid.middle(c):.1f} {top:g}V{foot + 1.5:g}")
            left = grid.middle(c) - (grid.loom.wide + grid.loom.slip) / 2
            floats += stacked(day, timedelta(minutes=minutes), left, foot, grid.loom)[0]
    beneath = "".join(
        f"M{grid.middle(c) - grid.loom.wide / 2:.1f} {grid.foot(r) + grid.beam:g}h{grid.loom.wide:g}"
        for r, c in sorted(marked)
    )
    return Cloth(grid, len(rows), minutes, "".join(warp), gathered(floats), beneath)


def gathered(floats: Iterable[Float]) -> list[Float]:
    """Join the paths of each weave and tone."""
    paths: dict[tuple[int, bool], list[str]] = {}
    for one in floats:
        paths.setdefault((one.weave, one.back), []).append(one.path)
    return [Float(weave, back, "".join(path)) for (weave, back), path in sorted(paths.items())]


LINE, PLY = 120.0, 5.0  # the longest week's thread; how far its two plies lie apart


def plied(weeks: Sequence[Woven]) -> list[list[Float]]:
    """Lay each week as a thread of two plies, as long as its time against the longest of them."""
    longest = max((sum((time for _, time in week), timedelta()) for week in weeks), default=timedelta())
    drawn: list[list[Float]] = []
    for week in weeks:
        floats, at = [], 0.0
        for weave, time in week:
            long = LINE * (time / longest) if longest else 0.0
            for back in (False, True):
                floats.append(Float(weave, back, f"M{at + back * 1.5:.1f} {3 + back * PLY:g}h{long:.1f}"))
            at += long
        drawn.append(floats)
    return drawn
