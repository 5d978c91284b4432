"""How often sizing differs between the languages, in any digit, and how good cutting in strips is."""

from collections.abc import Iterator
from functools import cache
from random import Random

from tests.bench.agreed import agreed
from tests.cloth.sized import disagreements
from webapp.cloth.packing import class_cuts

PIECES = 1_500


def figures() -> Iterator[str]:
    yield agreed("size", disagreements)
    yield packed(PIECES, 3)


def packed(pieces: int, seed: int) -> str:
    """Set strips against the best of all cuttings from edge to edge, on small pieces in whole centimetres."""
    rng = Random(seed)
    fewer = []
    for _ in range(pieces):
        width, height = rng.randint(2, 7), rng.randint(2, 7)
        across, down = rng.randint(7, 20), rng.randint(7, 20)
        found = class_cuts(1, width * 10, height * 10, across * 10, down * 10)
        fewer.append(edge_to_edge(width, height, across, down) - (found.most if found else 0))
    same = fewer.count(0) / pieces
    most = f"on {same:.1%} of {pieces:,} pieces, else up to {max(fewer)} fewer"
    return f"size: strips hold the most there can be {most}"


def edge_to_edge(width: int, height: int, across: int, down: int) -> int:
    """Give the most cuts that any cutting from edge to edge, over and over, can give."""

    @cache
    def best(wide: int, high: int) -> int:
        if not ((width <= wide and height <= high) or (height <= wide and width <= high)):
            return 0
        beside = (best(x, high) + best(wide - x, high) for x in range(1, wide // 2 + 1))
        below = (best(wide, y) + best(wide, high - y) for y in range(1, high // 2 + 1))
        return max(1, *beside, *below)

    return best(across, down)
