"""Quick thread: what is typed of stitches, cloth and thread, and what it comes to.

Pure, and the same in static/js/threads/quick.js. The stitches are written, or are those of one block times
so many blocks; or the pattern prints skeins for other cloth, which are brought to this one. What a pattern
prints is taken to be enough, and rounded up by less than a skein. Lengths in mm.
"""

import re
from collections.abc import Mapping
from datetime import date
from math import floor
from typing import Any, NamedTuple

from webapp.cloth import advice, reads
from webapp.cloth.reads import Asked
from webapp.cloth.typed import Mistyped, amount
from webapp.threads.estimate import FORGIVEN, Counts, Estimate, Own, Range, Worked, estimate, whole
from webapp.threads.geometry import Ground, ground_of
from webapp.threads.in_words import PER
from webapp.threads.kinds import worked
from webapp.threads.own import Reading, own

KINDS = ("cotton", "hand-dyed", "silk", "wool", "satin", "metallic", "filament", "beads")
BYS = (("stitches", "Stitches"), ("block", "A block"), ("printed", "Printed"))
METHODS = (("", "Usual"), ("rows", "Out and back"), ("each", "One by one"))
SCATTERS = (("together", "Together"), ("mixed", "Mixed"), ("scattered", "Scattered"))
CHOICES: reads.Offered = {
    "unit": reads.CHOICES["unit"],
    "over": reads.CHOICES["over"],
    "by": (tuple(name for name, _ in BYS), "stitches"),
    "kind": (KINDS, "cotton"),
    "method": (tuple(name for name, _ in METHODS), ""),
    "scatter": (tuple(name for name, _ in SCATTERS), "mixed"),
}
NEEDED = {
    "stitches": ("stitches",),
    "block": ("block", "blocks"),
    "printed": ("printed", "printed_count", "printed_strands"),
}
OTHER = ("strands", "working", "gave", "skein")
MOST = 999_999  # stitches
PRINTED = 10_000.0  # crosses over which cloths are compared, so that single ends do not tell
PARTED = re.compile(r"[0-9]{1,3}([,. '’][0-9]{3})+")  # thousands
APART = re.compile(r"[,. '’]")
RUN = re.compile(r"(.*?) ?(m|metres?|meters?|yd|yds|yards?)")


class Found(NamedTuple):
    """What it comes to, see ``Estimate``.

    a_length: crosses that one working length gives, 0 where skeins are printed; crosses: how many in all,
    None there; share: of the thread that a cross takes there, None elsewhere; hers: whether her own length
    told.
    """

    units: tuple[int, int]
    sold: Range
    lengths: Range | None
    a_length: int
    worked: Worked
    crosses: int | None
    share: float | None
    hers: bool


def _stitches(text: str, _unit: str) -> int:
    plain = APART.sub("", text) if PARTED.fullmatch(text) else text
    return reads.whole(plain, MOST, "Write stitches in digits, from 1 to 999,999.")


def _strands(text: str, _unit: str) -> int:
    return reads.whole(text, 12, "Write strands in digits, from 1 to 12.")


def _working(text: str, unit: str) -> float:
    return reads.span(text, unit, 150, 2000, "A working length is from 6 to 78 in (15 cm to 2 m).")


def _skein(text: str, unit: str) -> float:
    wrong = Mistyped("Write how long it is, like 8 m or 8.7 yd.")
    named = RUN.fullmatch(text.lower())
    try:
        number, other, _divided = amount(named.group(1) if named else text, "8")
    except Mistyped:
        raise wrong from None
    mm = number * PER[unit if named is None else "cm" if named.group(2).startswith("m") else "in"]
    if other or not 500 <= mm <= 2_000_000:
        raise wrong
    return mm


READERS: reads.Readers = {
    **dict.fromkeys(("stitches", "block"), _stitches),
    "blocks": lambda text, _unit: reads.whole(text, 9999, "Write how many blocks, from 1 to 9,999."),
    "printed": lambda text, _unit: reads.whole(text, 999, "Write whole skeins, from 1 to 999."),
    **dict.fromkeys(("count", "printed_count"), lambda text, _unit: reads.count(text)),
    **dict.fromkeys(("strands", "printed_strands"), _strands),
    "gave": lambda text, _unit: reads.whole(text, 500, "Write the crosses it gave, from 1 to 500."),
    "working": _working,
    "skein": _skein,
}


def ask(typed: Mapping[str, str], tables: Mapping[str, Any]) -> Asked:
    """Read what was typed; a sentence stands beside each field that cannot be meant."""
    by = reads.choices(typed, CHOICES)["by"]
    asked = reads.read(typed, (*NEEDED[by], "count"), OTHER, READERS, CHOICES)
    values, errors = asked.values, asked.errors
    if not errors and values["count"] < int(values["over"]):
        errors["count"] = "Fewer than one stitch an inch: check the count, and over one or two."
    if not errors and by == "block" and values["block"] * values["blocks"] > MOST:
        errors["blocks"] = "That is more than 999,999 stitches."
    if not errors:
        try:
            hers(values, *laid(values, tables))
        except ValueError as error:
            errors["gave"] = str(error)
    return asked


def laid(values: Mapping[str, Any], tables: Mapping[str, Any]) -> tuple[Ground, Worked]:
    """Give the ground, and how the thread is worked: strands as usual for it where she wrote none."""
    ground = ground_of(values["count"], int(values["over"]))
    return ground, _worked(values, values["strands"] or usual(values, tables), tables)


def usual(values: Mapping[str, Any], tables: Mapping[str, Any]) -> int:
    """Give the strands that are usual: of a thread of six strands by the stitches an inch."""
    kind = tables["kinds"][values["kind"]]
    if kind["strands"] != 6:
        return int(kind["used"])
    return advice.strands(values["count"] / int(values["over"]), tables["strands"]).usual


def _worked(values: Mapping[str, Any], strands: int, tables: Mapping[str, Any]) -> Worked:
    how = values["method"] or None, values["working"]
    return worked(tables["kinds"], [(values["kind"], strands)], *how)[0]


def hers(values: Mapping[str, Any], ground: Ground, how: Worked) -> Own | None:
    """Give her own figure, if she wrote what one length gave; ValueError with a sentence if it cannot be."""
    if values["gave"] is None:
        return None
    one = Reading("length", values["gave"], how.working, how.strands, how.method, date.min, loop=how.loop)
    return own([one], ground)


def answer(values: Mapping[str, Any], tables: Mapping[str, Any]) -> Found:
    """Answer a question that was read without error."""
    ground, how = laid(values, tables)
    kind = tables["kinds"][values["kind"]]
    if kind["length_mm"] and values["skein"]:
        kind = {**kind, "length_mm": values["skein"]}
    mine = hers(values, ground, how)

    def takes(on: Ground, by: Worked, crosses: int) -> Estimate:
        what = Counts(beads=crosses) if kind["sold"] == "bead" else Counts(full=crosses)
        return estimate(on, what, by, kind, None, values["scatter"], mine)

    if values["by"] == "printed" and kind["sold"] != "bead":
        there = ground_of(values["printed_count"]), _worked(values, values["printed_strands"], tables)
        many = int(PRINTED)
        share = takes(ground, how, many).sold.usual / takes(*there, many).sold.usual
        return _printed(values["printed"], share, kind["length_mm"], how, mine is not None)
    crosses = {"stitches": values.get("stitches"), "printed": values.get("printed")}.get(values["by"])
    crosses = crosses or values["block"] * values["blocks"]
    found = takes(ground, how, crosses)
    a_length = int(how.working / found.each.usual)
    return Found(found.units, found.sold, found.lengths, a_length, how, crosses, None, mine is not None)


def _printed(skeins: int, share: float, length: float, how: Worked, is_hers: bool) -> Found:
    sold = Range((skeins - 1) * share * length, (skeins - 0.5) * share * length, skeins * share * length)
    units = floor(sold.low / length + FORGIVEN) + 1, whole(sold.high / length)  # more than the least
    return Found(units, sold, None, 0, how, None, share, is_hers)
