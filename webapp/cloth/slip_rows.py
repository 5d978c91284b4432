"""The threads of a slip in words: a row a line of its legend, and what to buy. Pure; see slip_rows.js."""

from collections.abc import Iterable, Mapping
from typing import Any

from webapp.cloth import slip_text
from webapp.cloth.slip_text import Slip
from webapp.cloth.words import join
from webapp.numbers import counted
from webapp.threads.geometry import ground_of
from webapp.threads.legend import Line, Part
from webapp.threads.needed import Need, needs

UNITS = {"skein": ("skein", "skeins"), "spool": ("spool", "spools"), "bead": ("bead", "beads")}
ABOVE = "as above"
UNCOUNTED = "not counted"
Row = dict[str, str]


def rows(slip: Slip, kinds: Mapping[str, Any]) -> list[Row]:
    """Say every line: its symbol, thread, strands, and what to buy; a thread met before is bought already."""
    found = needs(slip.threads, ground_of(slip.count, slip.over, slip.across), kinds)
    met: set[tuple[str, str]] = set()
    said = []
    for line in slip.threads:
        said.append(
            {
                "symbol": line.symbol,
                "thread": line.used,
                "more": ", ".join(_more(line, kinds)),
                "strands": " + ".join(str(part.strands) for part in line.parts if part.kind != "beads"),
                "buy": " + ".join(_buy(part, found, kinds, met) for part in line.parts),
            }
        )
    return said


def texts(slip: Slip, kinds: Mapping[str, Any]) -> dict[str, str]:
    """Say what there is to buy in all, and whether the code had to leave the threads out."""
    if not slip.threads:
        return {"to-buy": "", "uncoded": ""}
    found = needs(slip.threads, ground_of(slip.count, slip.over, slip.across), kinds)
    is_coded = slip_text.coded(slip) == slip_text.write(slip)
    many = counted(len(slip.threads), "thread", "threads")
    return {
        "to-buy": bought(((need, need.units) for need in found.values()), kinds),
        "uncoded": "" if is_coded else f"{many}: too many for a code. The link has them.",
    }


def bought(of: Iterable[tuple[Need, int]], kinds: Mapping[str, Any]) -> str:
    """Add up what is to be bought: "12 skeins, 1 spool and 60 beads"."""
    sums: dict[str, int] = {}
    for need, units in of:
        sold = kinds[need.kind]["sold"]
        sums[sold] = sums.get(sold, 0) + units
    said = [counted(sums[sold], *UNITS[sold]) for sold in UNITS if sums.get(sold)]
    return f"To buy: {join(said)}, each colour of one dye lot." if said else ""


def units(need: Need, many: int, kinds: Mapping[str, Any]) -> str:
    """Write how many of what a thread is sold in."""
    return counted(many, *UNITS[kinds[need.kind]["sold"]]) if need.counted else UNCOUNTED


def _more(line: Line, kinds: Mapping[str, Any]) -> list[str]:
    """Say the kinds that are not plain cotton, and what stands in for what is printed."""
    names = dict.fromkeys(part.kind for part in line.parts if part.kind != "cotton")
    instead = [f"for {part.thread}" for part in line.parts if part.instead]
    return [*(kinds[kind]["name"] for kind in names), *instead]


def _buy(
    part: Part,
    found: Mapping[tuple[str, str], Need],
    kinds: Mapping[str, Any],
    met: set[tuple[str, str]],
) -> str:
    key = (part.kind, part.used)
    if key in met:
        return ABOVE
    met.add(key)
    return units(found[key], found[key].units, kinds)
