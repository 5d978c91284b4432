"""A project drawn as a cloth that grows: bands of weft laid on a warp, where rows or blocks are done.

Pure: a plan and the totals of its places in, SVG path data out, never more than some forty bands however
large the chart is.
"""

from collections.abc import Mapping
from math import ceil
from typing import Any, NamedTuple, Protocol

from webapp.projects.progress import BLOCK, Places, blocks_along

PITCH = 4.0  # px from one band to the next
WARP = 6.0  # px from one warp thread to the next
SELVEDGE = 1.5  # px by which every other band is set off
MOST_ACROSS = 46  # columns of cells, for blocks

Bands = list[list[tuple[float, float]]]  # of each band from the top, the stretches woven, 0 to 1


class Charted(Protocol):
    """What of a plan decides where a place lies on the chart."""

    width: int
    height: int
    direction: str
    start_way: str
    expected: int | None


class Cloth(NamedTuple):
    """What to draw: the size, the weft of every other band, the warp of every other thread, the pitch."""

    width: int
    height: int
    weft: tuple[str, str]
    warp: tuple[str, str]
    pitch: float


def woven(plan: Charted, rows: Places, blocks: Places, box: tuple[int, int] = (160, 144)) -> Cloth:
    """Draw the cloth in true proportion, fitted into ``box`` px, with what is done woven."""
    width, height = fit(plan.width, plan.height, box)
    number = max(1, min(plan.height, round(height / PITCH)))
    bands = bands_of_rows(plan, rows, number)
    for band, more in zip(bands, bands_of_blocks(plan, blocks, number), strict=True):
        band += more
    return _drawn(width, height, bands)


def swatch(plan: Charted, share: float, box: tuple[int, int] = (56, 44)) -> Cloth:
    """Draw the cloth small, with the first ``share`` of it woven."""
    width, height = fit(plan.width, plan.height, box)
    number = max(1, round(height / PITCH))
    full = ceil(share * number)
    bands: Bands = [[(0.0, 1.0)] if i < full else [] for i in range(number)]
    if plan.direction == "bottom":
        bands.reverse()
    if plan.direction == "middle":
        start = (number - full) // 2
        bands = bands[full:][:start] + bands[:full] + bands[full:][start:]
    return _drawn(width, height, bands)


def fit(width: int, height: int, box: tuple[int, int]) -> tuple[int, int]:
    """Fit a chart's proportion into ``box`` px; a very long one is shown shorter than it is."""
    ratio = max(0.3, min(3.0, width / height))
    scale = min(box[0] / ratio, float(box[1]))
    return round(ratio * scale), round(scale)


def bands_of_rows(plan: Charted, rows: Places, number: int) -> Bands:
    """Give what is woven of each of ``number`` bands by the rows that fall into it."""
    sums = [0.0] * number
    for key, place in rows.items():
        row = int(key)
        if row <= plan.height:
            line = plan.height - row if plan.direction == "bottom" else row - 1
            sums[line * number // plan.height] += _share(place, plan.expected or plan.width)
    bands: Bands = []
    for i, done in enumerate(sums):
        lines = ceil((i + 1) * plan.height / number) - ceil(i * plan.height / number)
        part = done / lines
        bands.append([] if not part else [(1 - part, 1.0) if plan.start_way == "left" else (0.0, part)])
    return bands


def bands_of_blocks(plan: Charted, blocks: Places, number: int) -> Bands:
    """Give what is woven of each of ``number`` bands by blocks, gathered into cells where there are many."""
    across = min(blocks_along(plan.width), MOST_ACROSS)
    per_cell = ceil(blocks_along(plan.width) / across)
    cells: dict[tuple[int, int], float] = {}
    for key, place in blocks.items():
        a, d = (int(part) for part in key.split("."))
        if a <= blocks_along(plan.width) and d <= blocks_along(plan.height):
            for band, lines in _lines_in_bands(plan, a, d, place, number).items():
                cell = (band, (a - 1) // per_cell)
                cells[cell] = cells.get(cell, 0) + lines * min(BLOCK, plan.width - (a - 1) * BLOCK)
    bands: Bands = [[] for _ in range(number)]
    for (band, column), stitches in sorted(cells.items()):
        left = column * per_cell * BLOCK
        right = min(left + per_cell * BLOCK, plan.width)
        part = min(1.0, stitches / ((right - left) * plan.height / number))
        _append(bands[band], left / plan.width, (left + part * (right - left)) / plan.width)
    return bands


def _lines_in_bands(plan: Charted, a: int, d: int, place: Mapping[str, Any], number: int) -> dict[int, float]:
    """Share the lines woven of one block, from its top, among the bands they fall into."""
    top, high = (d - 1) * BLOCK, min(BLOCK, plan.height - (d - 1) * BLOCK)
    wide = min(BLOCK, plan.width - (a - 1) * BLOCK)
    end = top + high * _share(place, high * wide)
    per_band = plan.height / number
    first, last = int(top / per_band), min(number - 1, int(end / per_band))
    return {
        band: lines
        for band in range(first, last + 1)
        if (lines := min(end, (band + 1) * per_band) - max(top, band * per_band)) > 1e-9
    }


def _share(place: Mapping[str, Any], full: int) -> float:
    return 1.0 if place["done"] else max(0.0, min(1.0, place["stitches"] / full))


def _append(band: list[tuple[float, float]], start: float, end: float) -> None:
    if band and abs(band[-1][1] - start) < 1e-6:
        band[-1] = (band[-1][0], end)
    else:
        band.append((start, end))


def _drawn(width: int, height: int, bands: Bands) -> Cloth:
    pitch = height / len(bands)
    weft = ["", ""]
    for i, band in enumerate(bands):
        for start, end in band:
            left, right = (i % 2 * SELVEDGE + part * (width - SELVEDGE) for part in (start, end))
            weft[i % 2] += f"M{left:.4g} {(i + 0.5) * pitch:.4g}H{right:.4g}"
    threads = [f"M{(i + 0.5) * width / _threads(width):.4g} 0V{height}" for i in range(_threads(width))]
    return Cloth(width, height, (weft[0], weft[1]), ("".join(threads[::2]), "".join(threads[1::2])), pitch)


def _threads(width: int) -> int:
    return max(1, round(width / WARP))
