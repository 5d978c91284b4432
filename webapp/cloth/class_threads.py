"""Threads and needles for a class, in words: what each learner gets, and what to buy for them all.

Pure, and the same in static/js/cloth/class_threads.js.
"""

from collections.abc import Mapping
from typing import Any

from webapp.cloth.advice import needles
from webapp.cloth.lengths import laid
from webapp.cloth.slip_rows import Row, bought, units
from webapp.cloth.slip_text import DAMAGED
from webapp.cloth.words import length
from webapp.numbers import counted
from webapp.threads.geometry import ground_of
from webapp.threads.legend import Line
from webapp.threads.needed import Need, needs

SPARE = 2  # needles (common practice, no source)
BY_DESIGN = "For the threads ask for a design: they go by its count."


def needed(values: Mapping[str, Any], kinds: Mapping[str, Any]) -> list[Need]:
    """Give what every thread takes for one learner; nothing where a cut is asked for, which has no count."""
    if values["by"] == "cut" or not values["threads"]:
        return []
    on = ground_of(values["count"], int(values["over"]), values["across"])
    return list(needs(values["threads"], on, kinds).values())


def rows(values: Mapping[str, Any], kinds: Mapping[str, Any]) -> list[Row]:
    """Say of every thread what a learner gets of it, and what to buy for all."""
    return [
        {
            "symbol": " ".join(need.symbols),
            "thread": need.name,
            "more": _more(need, values["unit"], kinds),
            "buy": units(need, need.for_class(values["n"]), kinds),
        }
        for need in needed(values, kinds)
    ]


def texts(values: Mapping[str, Any], tables: Mapping[str, Any]) -> dict[str, str]:
    """Say the needles, and what thread there is to buy in all.

    The threads are None where the text that carried them was damaged on the way.
    """
    kinds = tables["threads"]
    to_buy = bought(((need, need.for_class(values["n"])) for need in needed(values, kinds)), kinds)
    if values["threads"] is None:
        to_buy = DAMAGED
    elif values["threads"] and values["by"] == "cut":
        to_buy = BY_DESIGN
    return {"needles": _needles(values, tables["needles"]), "to-buy": to_buy}


def _more(need: Need, unit: str, kinds: Mapping[str, Any]) -> str:
    """Say the kind, if it is not plain cotton, and what a learner gets: "Silk; each 3 × 15 in, 2 strands"."""
    kind = kinds[need.kind]
    if kind["sold"] == "bead":
        return f"each {counted(need.units, 'bead', 'beads')}" if need.counted else ""
    said = [
        f"each {many} × {_long(mm, unit)}, {counted(strands, 'strand', 'strands')}"
        for (strands, mm), many in need.cut.items()
    ]
    return "; ".join([*([] if need.kind == "cotton" else [str(kind["name"])]), *said])


def _long(mm: float, unit: str) -> str:
    """Write a working length as it is cut: whole centimetres, or inches in eighths."""
    return length(mm, unit) if unit == "cm" else laid(mm, unit)


def _needles(values: Mapping[str, Any], table: Mapping[str, Any]) -> str:
    """Say how many needles of which size: one each, and two to spare."""
    many = values["n"] + SPARE
    size = ""
    if values["by"] != "cut":
        found = needles(values["count"] / int(values["over"]), table)
        size = f", size {found.usual}"
    lines: tuple[Line, ...] = values["threads"] or ()
    beads = any(line.beads or any(part.kind == "beads" for part in line.parts) for line in lines)
    beading = f" And {many} for beads." if beads else ""
    return f"{many} needles{size}: one each, two to spare.{beading}"
