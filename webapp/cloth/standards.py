"""The table of standard counts, read from the shared file once."""

import json
from dataclasses import asdict
from functools import cache
from typing import Any

from webapp.cloth.answer import Table
from webapp.cloth.gauge import INCH
from webapp.cloth.naming import Standard
from webapp.places import SHARED


@cache
def table() -> Table:
    """Read the table."""
    read = json.loads((SHARED / "tables" / "cloth.json").read_text(encoding="utf-8"))
    standards = [standard(row, read["weights"]) for row in read["counts"]]
    return Table(standards, read["weights"]["none of these"], read["short"]["steps"])


def standard(row: dict[str, Any], weights: dict[str, float]) -> Standard:
    """Give the range, per inch, that one name stands for.

    From its least to its greatest published figure per 10 cm, its exact one among them, and half a unit
    further either way, since such figures are rounded to whole ones.
    """
    figures = [row["count"] * 100 / INCH, *(figure for figure, _source in row["labels"])]
    low, high = (min(figures) - 0.5) * INCH / 100, (max(figures) + 0.5) * INCH / 100
    also = tuple(figure for figure, _source in row.get("also", ()))
    return Standard(row["count"], low, high, weights[row["asked"]], tuple(row["kinds"]), also)


@cache
def embedded() -> dict[str, Any]:
    """Lay the table out for the page, where the answer is worked out without network."""
    return asdict(table())
