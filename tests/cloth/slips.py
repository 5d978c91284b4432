"""The vectors of the slip, and what it says of one."""

import json
from typing import Any

from webapp.cloth.slip_saying import slots
from webapp.cloth.slip_text import Slip
from webapp.cloth.tables import NAMES, read
from webapp.places import SHARED
from webapp.threads.legend import Line, Part
from webapp.threads.tables import kinds

VECTORS = json.loads((SHARED / "vectors" / "slip.json").read_text(encoding="utf-8"))


def tables() -> dict[str, Any]:
    return {**{name: read(name) for name in NAMES}, "threads": kinds()}


def named(case: dict[str, Any]) -> str:
    return case["description"]


def slip_of(given: dict[str, Any]) -> Slip:
    return Slip(**{**given, "threads": threads_of(given.get("threads", []))})


def threads_of(given: list[dict[str, Any]]) -> tuple[Line, ...]:
    return tuple(Line(**{**one, "parts": tuple(Part(**part) for part in one["parts"])}) for one in given)


def said_of(slip: Slip) -> dict[str, str]:
    return slots(slip, tables())
