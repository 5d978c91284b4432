"""How far a project is, out of the totals of its places."""

from collections.abc import Mapping
from typing import Any, NamedTuple, Protocol

from webapp.numbers import counted, number

BLOCK = 10  # stitches along a block's side

Places = Mapping[str, Mapping[str, Any]]  # "37" or "3.2": stitches, done


class Sized(Protocol):
    """A chart's size and the way it is worked."""

    width: int
    height: int
    working: str


class Progress(NamedTuple):
    """Rows or blocks done, of so many."""

    done: int
    of: int
    what: str

    @property
    def share(self) -> float:
        """Give the part done, from 0 to 1."""
        return self.done / self.of

    def __str__(self) -> str:
        """Say it in words."""
        return f"{number(self.done)} of {number(self.of)} {self.what}"


def blocks_along(stitches: int) -> int:
    """Count the blocks along a side; the last may be smaller."""
    return -(-stitches // BLOCK)


def progress(plan: Sized, rows_done: int, blocks_done: int) -> Progress:
    """Tell how far it is, in the places she works by; all of them at most, were the chart made smaller."""
    if plan.working == "blocks":
        of = blocks_along(plan.width) * blocks_along(plan.height)
        return Progress(min(blocks_done, of), of, "block" if of == 1 else "blocks")
    return Progress(min(rows_done, plan.height), plan.height, "row" if plan.height == 1 else "rows")


def outside(plan: Sized, rows: Places, blocks: Places) -> str | None:
    """Say that places worked lie outside the chart's size, if any do; nothing of them is lost."""
    beyond_rows = sum(_held(place) and int(row) > plan.height for row, place in rows.items())
    wide, high = blocks_along(plan.width), blocks_along(plan.height)
    beyond_blocks = sum(
        _held(place) and (int(key.split(".")[0]) > wide or int(key.split(".")[1]) > high)
        for key, place in blocks.items()
    )
    parts = [counted(beyond_rows, "row", "rows")] if beyond_rows else []
    parts += [counted(beyond_blocks, "block", "blocks")] if beyond_blocks else []
    if not parts:
        return None
    one = beyond_rows + beyond_blocks == 1
    return f"{' and '.join(parts)} you worked {'lies' if one else 'lie'} outside this size. \
{'It is' if one else 'They are'} kept and counted; if the size is wrong, change it back."


def _held(place: Mapping[str, Any]) -> bool:
    return bool(place["done"] or place["stitches"])
