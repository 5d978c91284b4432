"""The trade's table of thread, read from its shared file once."""

import json
from functools import cache
from typing import Any

from webapp.places import SHARED


@cache
def kinds() -> dict[str, dict[str, Any]]:
    """Read the kinds of thread and their habits, as shared/tables/threads.json has them."""
    table: dict[str, Any] = json.loads((SHARED / "tables" / "threads.json").read_text(encoding="utf-8"))
    found: dict[str, dict[str, Any]] = table["kinds"]
    return found
