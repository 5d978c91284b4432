"""The order in which she goes through rows and blocks: pure, and the same in ``static/js/journal/order.js``.

A *side* is one run of places: across so many columns and down so many lines of a grid, taken across first or
down first. Rows are a grid one column wide. Working from one end has one side (and what lies before the first
row a second); both ways from the middle has two, blocks from the middle lines have four.
"""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

HIGHEST_ROW = 10_000
HIGHEST_BLOCK = 1_000
BLOCK = 10  # stitches along a block's side

Place = tuple[int, int]  # across, down; a row is (1, row)


@dataclass(frozen=True)
class Side:
    """One run of places, in order."""

    across: Sequence[int]
    down: Sequence[int]
    down_first: bool = False

    def __len__(self) -> int:
        return len(self.across) * len(self.down)

    def at(self, index: int) -> Place:
        """Give the place at ``index``, from 0."""
        if self.down_first:
            return self.across[index // len(self.down)], self.down[index % len(self.down)]
        return self.across[index % len(self.across)], self.down[index // len(self.across)]

    def index(self, place: Place) -> int | None:
        """Tell where ``place`` stands on this side, or none."""
        across, down = place
        if across not in self.across or down not in self.down:
            return None
        a, d = self.across.index(across), self.down.index(down)
        return a * len(self.down) + d if self.down_first else d * len(self.across) + a


def row_sides(plan: Mapping[str, Any]) -> list[Side]:
    """List the sides of a project worked by rows, from its ``height``, ``direction`` and ``first_row``."""
    height = plan.get("height") or HIGHEST_ROW
    middle = plan.get("direction") == "middle"
    first = min(plan.get("first_row") or ((height + 1) // 2 if middle else 1), height)
    before = range(first - 1, 0, -1) if middle else range(1, first)
    return [Side(range(1, 2), range(first, height + 1)), Side(range(1, 2), before)]


def block_sides(plan: Mapping[str, Any]) -> list[Side]:
    """List the sides of a project worked by blocks, from its size, ``block_from`` and ``block_way``."""
    wide, high = _blocks(plan.get("width")), _blocks(plan.get("height"))
    start, down_first = plan.get("block_from") or "top-left", plan.get("block_way") == "down"
    if start == "middle":
        across, down = _middle(plan.get("width"), wide), _middle(plan.get("height"), high)
        right, left = range(across, wide + 1), range(across - 1, 0, -1)
        below, above = range(down, high + 1), range(down - 1, 0, -1)
        quarters = ((right, below), (left, below), (left, above), (right, above))
        return [Side(a, d, down_first) for a, d in quarters]
    a = range(wide, 0, -1) if start.endswith("right") else range(1, wide + 1)
    d = range(high, 0, -1) if start.startswith("bottom") else range(1, high + 1)
    return [Side(a, d, down_first)]


def next_open(sides: Sequence[Side], is_done: Callable[[Place], bool], after: Place | None) -> Place | None:
    """Find the next open place: further along the same side, else the first of all; none if all are done.

    ``after`` is the place in hand; none gives the first open place.
    """
    for side in sides:
        index = side.index(after) if after is not None else None
        if index is not None:
            found = _first(side, index + 1, is_done)
            if found is not None:
                return found
            break
    return next((found for side in sides if (found := _first(side, 0, is_done)) is not None), None)


def _first(side: Side, start: int, is_done: Callable[[Place], bool]) -> Place | None:
    return next((place for i in range(start, len(side)) if not is_done(place := side.at(i))), None)


def _blocks(stitches: int | None) -> int:
    return -(-stitches // BLOCK) if stitches else HIGHEST_BLOCK


def _middle(stitches: int | None, blocks: int) -> int:
    """Give the first block past the middle line: an even chart's line lies between two stitches."""
    return (stitches // 2) // BLOCK + 1 if stitches else blocks // 2 + 1
