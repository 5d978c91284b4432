"""The trade's tables of margins, needles, strands, hoops and pieces, each read from its shared file once."""

import json
from functools import cache
from typing import Any

from webapp.places import SHARED

NAMES = ("margins", "needles", "strands", "hoops", "pieces")


@cache
def read(name: str) -> dict[str, Any]:
    """Read one of ``NAMES`` as it stands; it is also what the page embeds for its script."""
    table: dict[str, Any] = json.loads((SHARED / "tables" / f"{name}.json").read_text(encoding="utf-8"))
    return table
