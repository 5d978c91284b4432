"""Amounts of thread: as she types them, and in words. Pure.

Skeins (spools, beads) are whole and part, "1 1/2"; lengths are in mm inside, metres or yards at the edge.
"""

import re
from collections.abc import Mapping
from math import floor
from typing import Any

from webapp.cloth.typed import MM, Mistyped, amount
from webapp.threads.in_words import NAMES, PER, figure, run

MOST_SKEINS, MOST_BEADS, LONGEST = 999, 100_000, 10_000_000  # mm: ten kilometres
_LONG = re.compile(r"(.*?)\s*\b(m|metres?|meters?|yds?|yards?)\.?")
_TIMES = re.compile(r"\s*([0-9]{1,3})\s*[x×*]\s*(.+)")
_LENGTH = "Write a length, like 2.5 m, 3 yards or 4 x 45 cm."
_PARTS = {0.25: "¼", 0.5: "½", 0.75: "¾"}


def skeins(text: str, kind: Mapping[str, Any]) -> float:
    """Read how many of what it is sold in: whole and part, of beads whole."""
    beads = kind["sold"] == "bead"
    sentence = "Write how many beads in digits." if beads else "Write how many, like 2, 1/2 or 1 1/2."
    try:
        number, unit, _divided = amount(text, "2")
    except Mistyped:
        raise Mistyped(sentence) from None
    if unit or number < 0 or (beads and number % 1):
        raise Mistyped(sentence)
    most = MOST_BEADS if beads else MOST_SKEINS
    if number > most:
        raise Mistyped(f"Write {most:,} at most.")
    return number


def lengths(text: str, unit: str) -> float:
    """Read lengths that are left, mm: "2.5 m", "4 x 45 cm", "1 yd + 3 x 18 in"; without unit: m, or yards."""
    found = sum(_one(part, unit) for part in text.split("+"))
    if not 0 <= found <= LONGEST:
        raise Mistyped("Lengths are from nothing to 10 km.")
    return found


def _one(text: str, unit: str) -> float:
    times, rest = 1, text.strip()
    if several := _TIMES.fullmatch(rest):
        times, rest = int(several[1]), several[2]
    long = _LONG.fullmatch(rest.lower())
    try:
        number, named, _divided = amount(long[1] if long else rest, "2")
    except Mistyped:
        raise Mistyped(_LENGTH) from None
    if number < 0 or (long and named):
        raise Mistyped(_LENGTH)
    if long:
        return times * number * PER["cm" if long[2].startswith("m") else "in"]
    return times * number * (MM[named] if named else PER[unit])


def many(number: float) -> str:
    """Write a number of skeins: "2", "1½", "0.3"."""
    whole, part = floor(number), round(number % 1, 4)
    if part in _PARTS:
        return f"{whole or ''}{_PARTS[part]}"
    return f"{int(number):,}" if not part else f"{round(number, 2):g}"


def sold(number: float, kind: Mapping[str, Any]) -> str:
    """Write a number of what a kind is sold in: "2 skeins", "½ skein", "1 spool"."""
    return f"{many(number)} {kind['sold']}{'' if 0 < number <= 1 else 's'}"


def between(mm: tuple[float, float], unit: str) -> str:
    """Write a range of lengths: "6.1 to 9 m"."""
    least, most = figure(mm[0], unit, "down"), figure(mm[1], unit, "up")
    return f"{'' if least == most else f'{least} to '}{run(mm[1], unit, 'up')}"


def typed_skeins(number: float) -> str:
    """Write a number of skeins as its field has it, so that it is read back as it was."""
    return f"{number:.4f}".rstrip("0").rstrip(".")


def typed_length(mm: float, unit: str) -> str:
    """Write a length as its field has it, with its unit."""
    return f"{mm / PER[unit]:.3f}".rstrip("0").rstrip(".") + f" {NAMES[unit]}" if mm else ""


def of_kept(skeins: float, lengths: float, kind: Mapping[str, Any], unit: str) -> str:
    """Write what there is of a thread: "1½ skeins and 2 m", "nothing"."""
    parts = [sold(skeins, kind)] if skeins else []
    parts += [run(lengths, unit)] if lengths else []
    return " and ".join(parts) or "nothing left"


def as_sold(skeins: float, lengths: float, kind: Mapping[str, Any]) -> float:
    """Give all there is of a thread in mm as it is sold; of beads their number."""
    return skeins if kind["sold"] == "bead" else skeins * float(kind["length_mm"]) + lengths
