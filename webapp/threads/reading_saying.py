"""What she measured, in words."""

from collections.abc import Mapping
from datetime import datetime
from typing import Any, Protocol
from uuid import UUID
from zoneinfo import ZoneInfo

from webapp.cloth.lengths import laid
from webapp.hours.words import short_date
from webapp.numbers import counted
from webapp.threads.in_words import run


class Measured(Protocol):
    """What is asked of a reading."""

    line: UUID | None
    what: str
    stitches: int | None
    length: float
    made: datetime


class Of(Protocol):
    """What is asked of its line."""

    symbol: str
    parts: list[dict[str, Any]]


def said(
    one: Measured, lines: Mapping[UUID, Of], kinds: Mapping[str, Any], unit: str, zone: str
) -> tuple[str, str]:
    """Say of which thread a reading is, and what it says: "96 crosses from 18 in, Tue 3 February"."""
    line = lines.get(one.line) if one.line else None
    day = short_date(one.made.astimezone(ZoneInfo(zone)).date())
    beads = line is not None and kinds[line.parts[0]["kind"]]["sold"] == "bead"
    much = f"{one.length:,.0f} beads" if beads else run(one.length, unit)
    crosses = counted(one.stitches or 0, "cross", "crosses")
    what = {
        "length": f"{crosses} from one length of {laid(one.length, unit)}",
        "skein": f"{crosses} from {much}, finished",
        "left": f"{much} left",
    }[one.what]
    if line is None:
        return "A line that was removed", f"{what}, {day}"
    return str(line.parts[0]["instead"] or line.parts[0]["thread"]), f"{what}, {day}"
