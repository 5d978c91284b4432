"""What she measured, as it is typed: crosses, and how much thread, as it is sold or as a length. Pure."""

import re
from collections.abc import Mapping
from typing import Any

from webapp.cloth.reads import span
from webapp.cloth.typed import MM, Mistyped, amount
from webapp.threads import bounds
from webapp.threads.in_words import PER
from webapp.threads.legend_reads import whole

WHATS = ("length", "skein", "left")
UNITS = re.compile(r"(.*?) ?(skeins?|spools?|beads?|packs?)")
RUNS = re.compile(r"(.*?) ?(m|metres?|meters?|yds?|yards?)")
MUCH = "Write how much, like 1/2 skein, 3.5 m or 4 yd."
MOST = 10_000_000.0  # mm: ten kilometres


def crosses(text: str) -> int:
    """Read how many crosses it gave."""
    found = whole(text, "crosses")
    if not 1 <= found <= 1_000_000:
        raise Mistyped("Write how many crosses it gave.")
    return found


def working(text: str, unit: str, usual: float) -> float:
    """Read the length that was cut, mm; empty: as her line is cut."""
    if not text:
        return usual
    return span(text, unit, *bounds.WORKING, "A working length is from 15 cm to 5 m (6 in to 5 yards).")


def used(text: str, kind: Mapping[str, Any]) -> float:
    """Read how many of what it is sold in were finished, mm as it is sold; empty: one."""
    number, named = _number(text.lower().strip() or "1")
    if named or number <= 0:
        raise Mistyped("Write how many were finished, like 1 or 1 1/2.")
    return _much(number * float(kind["length_mm"] or 1))


def left(text: str, kind: Mapping[str, Any], unit: str) -> float:
    """Read what is left, mm as it is sold, or beads: as it is sold, or a length, in m or yards if bare."""
    plain = " ".join(text.lower().split())
    if found := UNITS.fullmatch(plain):
        number, named = _number(found[1])
        mm = number * float(kind["length_mm"] or 1)
    elif run := RUNS.fullmatch(plain):
        number, named = _number(run[1])
        mm = number * PER["cm" if run[2].startswith("m") else "in"]
    else:
        number, cut = _number(plain)
        mm, named = number * (MM[cut] if cut else PER[unit] if kind["sold"] != "bead" else 1), None
    if named or mm < 0:
        raise Mistyped(MUCH)
    return _much(mm)


def _much(mm: float) -> float:
    if mm > MOST:
        raise Mistyped("That is more than ten kilometres of thread.")
    return mm


def _number(text: str) -> tuple[float, str | None]:
    try:
        number, named, _divided = amount(text, "2")
    except Mistyped:
        raise Mistyped(MUCH) from None
    return number, named
