"""How often sizing differs between the languages, in any digit, and how good cutting in strips is."""

import tempfile
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from random import Random

from tests.bench.weight import phone
from tests.cloth.languages import folder_of
from tests.cloth.sized import disagreements
from webapp.cloth.packing import class_cuts

CASES = 10_000
PIECES = 1_500


def figures() -> Iterator[str]:
    yield agreed()
    yield packed(PIECES, 3)


def agreed() -> str:
    """Ask at random in both languages, in a real browser."""
    with tempfile.TemporaryDirectory() as folder, phone(Path(folder)) as (context, url):
        page = context.new_page()
        page.goto(f"{url}/health")
        differ = sum(len(disagreements(page, folder_of(url), 1000, seed)) for seed in range(CASES // 1000))
    return f"size: Python and JavaScript differ in {differ} of {CASES:,} random cases"


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
