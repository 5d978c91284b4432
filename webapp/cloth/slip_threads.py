"""The threads of a slip as text: how many lines, then three fields of each, all parted by "~".

    2~●~2cRed 321_n1fGold 4~1234h12b40~○~2sRose 2_iRose 7~86
    | | |                   |
    | | |                   full crosses, then of the rest what there is: h half, q quarter, t three-quarter,
    | | |                   b backstitch in lengths of one stitch, k knots, d beads
    | | the parts of what is in the needle, parted by "_n": strands, a letter for the kind, the name as it
    | | is printed, and after "_i" what is used in its place
    | symbol, which may be empty
    lines

In symbols and names "_" is written "_u" and "~" is written "_t". Pure, and the same in
static/js/cloth/slip_threads.js.
"""

import re
from typing import Any

from webapp.lines import can_be_seen, is_one_line
from webapp.threads.legend import Line, Part

KINDS = {
    "cotton": "c",
    "hand-dyed": "h",
    "silk": "s",
    "wool": "w",
    "satin": "r",
    "metallic": "m",
    "filament": "f",
    "beads": "b",
}
REST = {"half": "h", "quarter": "q", "three_quarter": "t", "back": "b", "knots": "k", "beads": "d"}
COUNTS = ("full", *REST)
LINES = 500  # at most
PARTS = 6  # of a blend
STRANDS = 24  # in the needle
SYMBOL, NAME = 12, 100  # characters
STITCHES = 10_000_000
PART = re.compile(r"([1-9][0-9]?)([chswrmfb])(.*)")
MANY = re.compile("([0-9]{1,8})" + "".join(f"(?:{letter}([0-9]{{1,8}}))?" for letter in REST.values()))


class Unsound(ValueError):
    """The text of no threads."""


def write(lines: tuple[Line, ...]) -> str:
    """Write lines in their order; nothing where there are none."""
    fields = [field for line in lines for field in _fields(line)]
    return "~".join([str(len(lines)), *fields]) if lines else ""


def read(text: str) -> tuple[Line, ...]:
    """Read threads, or raise Unsound; nothing where there is nothing."""
    if not text:
        return ()
    threads, rest = begin(text + "~")
    if rest:
        raise Unsound
    return threads


def brought(text: str) -> tuple[Line, ...] | None:
    """Read threads that came along from a slip; None where they cannot be read."""
    try:
        return read(text)
    except Unsound:
        return None


def begin(text: str) -> tuple[tuple[Line, ...], str]:
    """Read threads off the beginning of a text; gives them, and what comes after the "~" behind them."""
    number, _mark, rest = text.partition("~")
    if not re.fullmatch("[1-9][0-9]{0,2}", number) or int(number) > LINES:
        raise Unsound
    fields = rest.split("~", 3 * int(number))
    if len(fields) != 3 * int(number) + 1:
        raise Unsound
    lines = [fields[at : at + 3] for at in range(0, 3 * int(number), 3)]
    return tuple(_line(*its) for its in lines), fields[-1]


def _fields(line: Line) -> tuple[str, str, str]:
    parts = "_n".join(
        f"{part.strands}{KINDS[part.kind]}{_shut(part.thread)}"
        + (f"_i{_shut(part.instead)}" if part.instead else "")
        for part in line.parts
    )
    rest = ((letter, getattr(line, name)) for name, letter in REST.items())
    return (
        _shut(line.symbol),
        parts,
        f"{line.full}{''.join(f'{letter}{many}' for letter, many in rest if many)}",
    )


def _line(symbol: str, parts: str, counts: str) -> Line:
    found = MANY.fullmatch(counts)
    made = tuple(_part(part) for part in parts.split("_n"))
    if found is None or len(made) > PARTS or sum(part.strands for part in made) > STRANDS:
        raise Unsound
    many: dict[str, Any] = {name: int(n or 0) for name, n in zip(COUNTS, found.groups(), strict=True)}
    if max(many.values()) > STITCHES:
        raise Unsound
    return Line(made, _named(symbol, SYMBOL) if symbol else "", **many)


def _part(text: str) -> Part:
    found = PART.fullmatch(text)
    if found is None:
        raise Unsound
    strands, letter, names = found.groups()
    name, *instead = names.split("_i")
    if len(instead) > 1:
        raise Unsound
    kind = next(kind for kind, its in KINDS.items() if its == letter)
    return Part(_named(name, NAME), kind, int(strands), _named(instead[0], NAME) if instead else "")


def _shut(text: str) -> str:
    return text.replace("_", "_u").replace("~", "_t")


def _named(text: str, longest: int) -> str:
    """Read a name or symbol back; it can be seen, stays on one line, and is not too long."""
    if re.search("_(?![ut])", text):
        raise Unsound
    name = text.replace("_t", "~").replace("_u", "_")
    if not is_one_line(name) or not can_be_seen(name) or len(name) > longest:
        raise Unsound
    return name
