"""Figures that no cloth can have: the question to ask back, and what may have been meant instead."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from webapp.cloth import typed
from webapp.cloth.answer import KINDS, Table
from webapp.cloth.gauge import INCH, Reading, measure
from webapp.cloth.naming import beyond, judge, likeliest
from webapp.cloth.words import CLOTHS, plain

MILLIMETRE = 1.0  # the smallest division of a tape in centimetres
UNITS = {"in": "inches", "cm": "centimetres"}
SO = {"coarser": "coarse", "finer": "fine"}


@dataclass(frozen=True)
class Offer:
    """What may have been meant: the fields to change, and the standard count it then would be."""

    change: str  # unit, kind, swapped, halved, doubled
    count: float
    sentence: str
    fields: Mapping[str, str]


def as_reading(counted: float, mm: float, unit: str, choices: Mapping[str, str], way: str) -> Reading:
    """Make a reading of a count and a length, read on the tape that was chosen."""
    division = INCH / int(choices["division"]) if unit == "in" else MILLIMETRE
    return Reading(counted, mm, division, choices["ends"] == "pins", way)


def doubt(reading: Reading, kind: str, table: Table) -> str:
    """Ask back where no cloth of that kind can have such a count; "" where one can."""
    than = beyond(measure([reading]), table.of(kind))
    if not than:
        return ""
    return f"No {CLOTHS[kind]} is so {SO[than]}. Check both figures: inches or centimetres?"


def meant(line: Mapping[str, str], choices: Mapping[str, str], table: Table, first: bool) -> list[Offer]:
    """Give what may have been meant by a line as typed that cannot be; by the first, other choices too."""
    found = []
    for change, question, fields in _changes(line, choices, first):
        count = _named({**choices, **line, **fields}, table)
        if count is not None:
            found.append(Offer(change, count, f"{question} It would be {plain(count)}.", fields))
    return found


def _named(given: Mapping[str, str], table: Table) -> float | None:
    """Give the likeliest standard count of a line as typed, or none."""
    try:
        counted = typed.counted(given["counted"], given["kind"])
        mm, unit = typed.length(given["length"], given["part"], given["unit"])
    except typed.Mistyped:
        return None
    measured = measure([as_reading(counted, mm, unit, given, given["way"])])
    return likeliest(judge(measured, table.of(given["kind"]), table.none_weight))


def _changes(
    line: Mapping[str, str], choices: Mapping[str, str], first: bool
) -> Iterator[tuple[str, str, dict[str, str]]]:
    try:
        counted, unwanted, _divided = typed.amount(typed.together(line["counted"]), "")
        _length, named, _divided = typed.amount(line["length"], "")
    except typed.Mistyped:
        return
    if unwanted:
        return
    alone = not named and not line["part"]
    kind, unit = choices["kind"], choices["unit"]
    other = {"kind": KINDS[kind == "squares"], "unit": "cm" if unit == "in" else "in"}
    if first and alone:
        yield "unit", f"Was the tape in {UNITS[other['unit']]}?", {"unit": other["unit"]}
    if first:
        yield "kind", f"Were those {other['kind']}?", {"kind": other["kind"]}
    if alone:
        swapped = {"counted": line["length"], "length": line["counted"]}
        yield "swapped", "Figures the wrong way round?", swapped
    each = "square" if kind == "squares" else "thread"
    yield "halved", f"Two counted for each {each}?", {"counted": plain(counted / 2)}
    if kind == "threads":
        yield "doubled", "Stitches over two counted?", {"counted": plain(counted * 2)}
