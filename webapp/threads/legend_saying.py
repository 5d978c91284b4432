"""What the pages of a legend say of its lines, in words. Pure."""

import re
from collections.abc import Mapping, Sequence
from typing import Any

from webapp.cloth.lengths import laid
from webapp.hours.words import MONTHS
from webapp.numbers import counted, number
from webapp.threads.estimate import Counts, Own
from webapp.threads.in_words import ranged, run
from webapp.threads.legend import Line, Totals
from webapp.threads.legend_needs import Bought, Need

CALLED = {
    "full": "full",
    "half": "half",
    "quarter": "quarter",
    "three_quarter": "three-quarter",
    "back": "back",
    "knots": ("knot", "knots"),
    "beads": ("bead", "beads"),
}
LABELS = {
    "symbol": "Symbol",
    "thread": "Thread",
    "kind": "Kind",
    "strands": "Strands",
    "instead": "Instead",
    "lots": "Dye lots",
    "colour": "Colour",
    "full": "Full",
    "half": "Half",
    "quarter": "Quarter",
    "three_quarter": "Three-quarter",
    "back": "Backstitch",
    "knots": "Knots",
    "beads": "Beads",
    "method": "Crosses are worked",
    "scatter": "Its stitches lie",
    "patches": "Patches",
    "working": "Working length",
    "note": "Note",
    "rest": "Not understood",
}
METHODS = (("", "As its kind"), ("rows", "Out and back"), ("each", "Cross by cross"))
SCATTERS = (("together", "Together"), ("mixed", "Mixed"), ("scattered", "Scattered"))


def label(field: str) -> str:
    """Name a field beside its control; of a blend's second thread: "Thread 2"."""
    return LABELS[field] if field in LABELS else f"{LABELS[field[:-1]]} {field[-1]}"


def strands(line: Line) -> str:
    """Say what is in the needle: "2 strands", "1 + 1 strands"."""
    if len(line.parts) == 1:
        return counted(line.parts[0].strands, "strand", "strands")
    return f"{' + '.join(str(part.strands) for part in line.parts)} strands"


def stitches(line: Line) -> str:
    """Say how many stitches there are of each kind: "1,240 full, 30 half"."""
    said = []
    for name in Counts._fields:
        if many := getattr(line, name):
            called = CALLED[name]
            said.append(f"{number(many)} {called}" if isinstance(called, str) else counted(many, *called))
    return ", ".join(said)


def kind(line: Line, kinds: Mapping[str, Mapping[str, Any]]) -> str:
    """Say of what kinds it is, once each."""
    return " + ".join(dict.fromkeys(str(kinds[part.kind]["name"]).lower() for part in line.parts))


def lots(line: Line) -> str:
    """Say its dye lots: "lot 12, lot 15"."""
    return ", ".join(f"lot {mark}" for part in line.parts for mark in part.lots)


def units(sold: str, least: int, most: int) -> str:
    """Say what is to be bought: "2 to 3 skeins"."""
    return f"{ranged(least, most)} {sold}{'' if most == 1 else 's'}"


def to_buy(found: Sequence[Bought]) -> list[str]:
    """Say what is to be bought over all the lines, the skeins first."""
    return [units(*one) for one in found]


def need(found: Need, kinds: Mapping[str, Mapping[str, Any]]) -> str:
    """Say what one thread of a line takes."""
    return units(str(kinds[found.part.kind]["sold"]), *found.takes.units)


def length(found: Need, kinds: Mapping[str, Mapping[str, Any]], unit: str) -> str:
    """Say how much that is as it is sold, and in how many lengths: "9.4 yd, from 7.9 to 11.2 yd; …"."""
    if kinds[found.part.kind]["sold"] == "bead":
        return "with some to spare"
    low, usual, high = found.takes.sold
    lengths = ranged(*(int(many) for many in (found.takes.lengths.low, found.takes.lengths.high)))
    return (
        f"{run(usual, unit)}, from {run(low, unit, 'down')} to {run(high, unit, 'up')}; "
        f"{lengths} lengths of {laid(found.worked.working, unit)}"
    )


def sums(found: Totals) -> str:
    """Say whether legend and chart agree; of a chart whose total is not known nothing."""
    if found.chart is None:
        return f"{counted(found.legend, 'full cross', 'full crosses')} in all."
    if found.agree:
        return f"{counted(found.legend, 'full cross', 'full crosses')}, as on the chart."
    off = abs(found.legend - found.chart)
    more = "more" if found.legend > found.chart else "fewer"
    return f"Legend {number(found.legend)}, chart {number(found.chart)}: {number(off)} {more}."


def rests(own: Own | None) -> str:
    """Say what the estimates rest on."""
    if own is None:
        return "Reckoned from the drawing of the stitch; surer once you stitch one length and count."
    share = round(own.factor * 100)
    what = re.sub(r"([0-9]{4})-([0-9]{2})-([0-9]{2})", _day, own.rests_on)
    return f"Reckoned from your own figure: {what}. You take {share}\u00a0% of the drawing's thread."


def _day(found: re.Match[str]) -> str:
    year, month, day = (int(part) for part in found.groups())
    return f"{day} {MONTHS[month - 1]} {year}"
