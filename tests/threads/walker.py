"""A needle that goes hole by hole, so that thread can be summed stretch by stretch along a drawn path.

Holes are (column, row) on the ground, a half being the middle of a stitch. The thread lies in the middle of
the cloth at each hole, and over a crest half way to the next, on the face or behind.
"""

from collections.abc import Iterable
from itertools import pairwise
from math import dist, isclose

from webapp.threads.geometry import Ground

Hole = tuple[float, float]


def walk(path: Iterable[Hole], ground: Ground, thread: float = 0.0) -> float:
    """Sum the thread along a path of holes, face and behind by turns, mm."""
    holes = [(x * ground.across, y * ground.down) for x, y in path]
    crest = (ground.thick + thread) / 2
    total = 0.0
    for turn, ((x, y), (to_x, to_y)) in enumerate(pairwise(holes)):
        top = ((x + to_x) / 2, (y + to_y) / 2, crest if turn % 2 == 0 else -crest)
        total += dist((x, y, 0), top) + dist(top, (to_x, to_y, 0))
    return total


def row(length: int, at: Hole = (0, 0)) -> list[Hole]:
    """Go along a row of crosses out and back: first legs to the right, second legs home."""
    x, y = at
    out = [hole for n in range(length) for hole in ((x + n, y), (x + n + 1, y + 1))]
    home = [hole for n in reversed(range(length)) for hole in ((x + n + 1, y), (x + n, y + 1))]
    return out + home


def finished_at_once(length: int, at: Hole = (0, 0)) -> list[Hole]:
    """Go along a row of crosses, each finished before the next."""
    x, y = at
    return [
        hole
        for n in range(length)
        for hole in ((x + n, y), (x + n + 1, y + 1), (x + n + 1, y), (x + n, y + 1))
    ]


def halves(length: int) -> list[Hole]:
    return [hole for n in range(length) for hole in ((n, 0), (n + 1, 1))]


def quarters(length: int) -> list[Hole]:
    return [hole for n in range(length) for hole in ((n, 0), (n + 0.5, 0.5))]


def three_quarters(length: int) -> list[Hole]:
    return [hole for n in range(length) for hole in ((n, 0), (n + 1, 1), (n + 1, 0), (n + 0.5, 0.5))]


def backstitches(length: int) -> list[Hole]:
    """Go along a line of backstitches: up one ahead, back on the face, two on behind."""
    return [hole for n in range(length) for hole in ((n + 1, 0), (n, 0))]


def laid_crosses(path: list[Hole]) -> int:
    """Count the crosses a path lays: two legs on the face that share their middle and cross each other."""
    legs: dict[Hole, set[bool]] = {}
    for (x, y), (to_x, to_y) in zip(path[::2], path[1::2], strict=True):
        assert abs(x - to_x) == abs(y - to_y) == 1, "a leg goes from corner to corner"
        legs.setdefault(((x + to_x) / 2, (y + to_y) / 2), set()).add((x - to_x) * (y - to_y) > 0)
    return sum(len(ways) == 2 for ways in legs.values())


def near(one: float, other: float) -> bool:
    return isclose(one, other, rel_tol=1e-9, abs_tol=1e-9)
