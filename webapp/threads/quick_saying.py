"""What quick thread says, slot by slot. Pure, and the same in static/js/threads/quick_saying.js."""

from collections.abc import Mapping
from math import floor
from typing import Any

from webapp.cloth.lengths import laid
from webapp.cloth.reads import Asked
from webapp.threads.in_words import both, figure, ranged, run
from webapp.threads.quick import Found, answer

WAYS = {"rows": "worked out and back", "each": "each finished at once"}


def slots(asked: Asked, tables: Mapping[str, Any]) -> dict[str, str]:
    """Say everything the page says of a question that was read: texts by slot."""
    values = asked.values
    found, kind = answer(values, tables), tables["kinds"][values["kind"]]
    least, most = found.units
    return {
        "headline": ranged(least, most),
        "what": f"{kind['sold']}{'' if most == 1 else 's'}",
        "amount": _beads(found) if kind["sold"] == "bead" else _amount(found, values["unit"]),
        "lengths": _lengths(found, values["unit"], "beads" if kind["sold"] == "bead" else "crosses"),
        "rests": _rests(found, values),
        "also": _also(found, values),
    }


def _amount(found: Found, unit: str) -> str:
    low, usual, high = found.sold
    return f"{both(usual, unit)}, from {figure(low, unit, 'down')} to {run(high, unit, 'up')}"


def _beads(found: Found) -> str:
    return f"{found.units[0]:,}, and {found.units[1] - found.units[0]:,} to spare"


def _lengths(found: Found, unit: str, what: str) -> str:
    strands = f"{found.worked.strands} strand{'' if found.worked.strands == 1 else 's'} in the needle"
    if found.lengths is None:
        return f"{strands}."
    many = ranged(int(found.lengths.low), int(found.lengths.high))
    cut = f"length{'' if found.lengths.high == 1 else 's'} of {laid(found.worked.working, unit)}"
    each = f", about {found.a_length} {what} each" if found.a_length > 1 else ""
    return f"{many} {cut}{each}; {strands}."


def _rests(found: Found, values: Mapping[str, Any]) -> str:
    if found.share is not None:
        share = floor(found.share * 100 + 0.5) / 100
        times = int(share) if share == int(share) else share
        return f"From what is printed: a cross takes {times} times the thread it takes there."
    if values["kind"] == "beads":
        return "Each is sewn on with a half cross."
    if found.hers:
        return f"From the {values['gave']} crosses that one length gave you."
    return f"From the drawing of the cross, {WAYS[found.worked.method]}; surer once you stitch one length."


def _also(found: Found, values: Mapping[str, Any]) -> str:
    if values["by"] != "block" or found.crosses is None:
        return ""
    return f"{values['blocks']:,} × {values['block']:,} = {found.crosses:,} stitches."
