"""What is typed of a line of a legend, field by field: read, or refused with a sentence to stand beside it.

Pure. The fields are those of the line's form; of a blend's second thread they end in 2, of its third in 3.
"""

import re
from collections.abc import Callable, Mapping
from typing import Any, NamedTuple

from webapp.cloth.reads import span
from webapp.cloth.typed import Mistyped
from webapp.lines import can_be_seen, is_one_line
from webapp.threads import bounds
from webapp.threads.estimate import PATCH, Counts
from webapp.threads.geometry import METHODS
from webapp.threads.legend import MOST_PARTS, Line, Part
from webapp.threads.legend_words import kind_in

Kinds = Mapping[str, Mapping[str, Any]]
Usual = Callable[[str], int]  # strands in the needle, by the kind
OF_PART = ("thread", "kind", "strands", "instead", "lots")
OF_LINE = ("symbol", "colour", *Counts._fields, "method", "scatter", "patches", "working", "note")
ENDS = ("", *(str(n) for n in range(2, MOST_PARTS + 1)))  # of the names of a part's fields
FIELDS = (*(f"{name}{end}" for end in ENDS for name in OF_PART), *OF_LINE)
CALLED = {"three_quarter": "three-quarter", "full": "full", "half": "half", "quarter": "quarter"}

JOINS = re.compile(r"(?<!\S)\+(?!\S)")  # a plus between spaces joins the threads of a blend
SAYS_NONE = {"", "-", "–", "—", "0", "none", "n/a", "."}
PARTED = re.compile(r"[1-9][0-9]{0,2}(?:([,.'’ ])[0-9]{3})(?:\1[0-9]{3})*")
ROUNDS_UP = {"½": "", "¼": "", "¾": ""}
SYMBOL, NAME, LOT, NOTE, MOST_LOTS = 12, 100, 40, 500, 6
JOINED = "A + joins the threads of a blend: give each a place of its own."


class Read(NamedTuple):
    """A line as it is understood, or the sentences by field."""

    line: Line | None
    errors: dict[str, list[str]]


def read(typed: Mapping[str, str], kinds: Kinds, usual: Usual, unit: str = "in") -> Read:
    """Read a line; what is left open follows from the kind. A working length without unit is in ``unit``."""
    errors: dict[str, list[str]] = {}

    def take(name: str, reader: Callable[[str], Any]) -> Any:
        try:
            return reader(typed.get(name, "").strip())
        except Mistyped as error:
            errors[name] = [str(error)]
            return None

    ends = _ends(typed)
    beads = all(not typed.get(name, "").strip() for name in Counts._fields if name != "beads")
    lone = "beads" if beads and typed.get("beads", "").strip() else "cotton"
    parts = [_part(take, end, typed, kinds, usual, (lone, len(ends))) for end in ends]
    values = {name: take(name, whole_of(name)) for name in Counts._fields}
    values["symbol"] = take("symbol", symbol)
    values["colour"] = take("colour", colour)
    values["method"] = take("method", method)
    values["scatter"] = take("scatter", scatter)
    values["patches"] = take("patches", patches)
    values["working"] = take("working", lambda text: working(text, unit))
    values["note"] = take("note", note)
    if not errors and sum(part.strands for part in parts) > bounds.STRANDS[1]:
        errors[f"strands{ends[-1]}"] = [f"The needle holds {bounds.STRANDS[1]} strands at most."]
    return Read(None if errors else Line(tuple(parts), **values), errors)


def _ends(typed: Mapping[str, str]) -> list[str]:
    """Tell which parts are there: the first always, others where anything but a choice is written."""
    told = ("thread", "strands", "instead", "lots")
    return ["", *(end for end in ENDS[1:] if any(typed.get(f"{name}{end}", "").strip() for name in told))]


def _part(
    take: Callable[[str, Callable[[str], Any]], Any],
    end: str,
    typed: Mapping[str, str],
    kinds: Kinds,
    usual: Usual,
    among: tuple[str, int],
) -> Part:
    name = take(f"thread{end}", thread)
    guess = kind_in(name or "") or among[0]
    found = take(f"kind{end}", lambda text: kind(text, kinds) if text else guess) or guess
    default = usual(found) if among[1] == 1 else 1  # of a blend usually one of each
    many = take(f"strands{end}", lambda text: strands(text) if text else default)
    return Part(
        name or "",
        found,
        many or default,
        take(f"instead{end}", lambda text: thread(text) if text else "") or "",
        take(f"lots{end}", lots) or (),
    )


def whole_of(name: str) -> Callable[[str], int]:
    """Give the reader of one count of stitches."""
    return lambda text: whole(text, f"{CALLED[name]} stitches" if name in CALLED else name, up=name == "back")


def whole(text: str, what: str, *, up: bool = False) -> int:
    """Read a whole number, its thousands apart or not; up: a part of one counts as one."""
    plain = " ".join(text.replace("\u202f", " ").replace("\u2009", " ").lower().split())
    plain = re.sub(r" ?(?:x|stitches|stitch|sts|st\.?|crosses)$", "", plain)
    if plain in SAYS_NONE:
        return 0
    more = 0
    if up and plain[-1] in ROUNDS_UP:
        plain, more = plain[:-1].strip() or "0", 1
    if mark := PARTED.fullmatch(plain):
        plain = plain.replace(mark[1], "")
    if not re.fullmatch("[0-9]{1,9}", plain):
        called = "backstitch as lengths of one stitch" if what == "back" else what
        raise Mistyped(f"Write {called} in whole numbers, like 1,240.")
    if int(plain) + more > bounds.MOST:
        raise Mistyped(f"Write {bounds.MOST:,} at most.")
    return int(plain) + more


def patches(text: str) -> int | None:
    """Read in how many patches the stitches lie."""
    return whole(text, "patches") or None


def strands(text: str) -> int:
    """Read the strands of one thread."""
    plain = re.sub(r" ?(?:x|strands?|ply|str\.?)$", "", text.lower()).strip()
    if not re.fullmatch("[0-9]{1,2}", plain) or not 1 <= int(plain) <= bounds.STRANDS[1]:
        raise Mistyped(f"Write how many strands in digits, from 1 to {bounds.STRANDS[1]}.")
    return int(plain)


def symbol(text: str) -> str:
    """Read the symbol on the chart; any sign will do, and none."""
    return _one_line(text, "symbol", SYMBOL)


def thread(text: str) -> str:
    """Read what a thread is called."""
    name = _one_line(text, "name", NAME)
    if not can_be_seen(name):
        raise Mistyped("Write what the thread is called, as on the pattern.")
    if JOINS.search(name):
        raise Mistyped(JOINED)
    return name


def _one_line(text: str, what: str, most: int) -> str:
    found = " ".join(text.split())
    if not is_one_line(found):
        raise Mistyped(f"Write the {what} without control characters.")
    if len(found) > most:
        raise Mistyped(f"Shorten the {what}: it has {len(found):,} characters, and {most} fit.")
    return found


def kind(text: str, kinds: Kinds) -> str:
    """Read a kind of thread by its name or by what we call it."""
    said = " ".join(text.lower().split())
    found = next((key for key, row in kinds.items() if said in (key, row["name"].lower())), None)
    if found is None:
        raise Mistyped("Choose one of the kinds of thread.")
    return found


def lots(text: str) -> tuple[str, ...]:
    """Read the marks of the lots, commas between."""
    found = [_one_line(mark, "lot", LOT) for mark in re.split("[,;]", text)]
    found = list(dict.fromkeys(mark for mark in found if mark))
    if any(JOINS.search(mark) for mark in found):
        raise Mistyped("Put a comma between two lots.")
    if len(found) > MOST_LOTS:
        raise Mistyped(f"Write {MOST_LOTS} lots at most.")
    return tuple(found)


def colour(text: str) -> str | None:
    """Read a colour that was picked."""
    if text and not re.fullmatch("#[0-9a-fA-F]{6}", text):
        raise Mistyped("Pick a colour, or write it like #9b3527.")
    return text.lower() or None


def method(text: str) -> str | None:
    """Read how its crosses are worked; empty: as its kind is."""
    if text and text.lower() not in METHODS:
        raise Mistyped("Choose how it is worked: rows, or each cross at once.")
    return text.lower() or None


def scatter(text: str) -> str:
    """Read how its stitches lie."""
    if text and text.lower() not in PATCH:
        raise Mistyped("Choose how they lie: together, mixed or scattered.")
    return text.lower() or "mixed"


def working(text: str, unit: str) -> float | None:
    """Read the working length, mm, to a thousandth."""
    sentence = "A working length is from 15 cm to 5 m (6 in to 5 yards)."
    return round(span(text, unit, *bounds.WORKING, sentence), 3) if text else None


def note(text: str) -> str:
    """Read what else she writes of it; lines are kept."""
    found = text.replace("\r\n", "\n").replace("\r", "\n")
    if not is_one_line(found.replace("\n", "")):
        raise Mistyped("Write the note without tabs or control characters.")
    if len(found) > NOTE:
        raise Mistyped(f"Shorten the note: it has {len(found):,} characters, and {NOTE} fit.")
    return found
