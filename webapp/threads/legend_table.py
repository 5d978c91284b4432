"""A legend whose first line names its columns; and cells that hold several threads of a blend. Pure."""

import re
from dataclasses import dataclass, field

from webapp.threads.legend_lines import Typed, by_words
from webapp.threads.legend_reads import ENDS, JOINS, OF_PART
from webapp.threads.legend_words import SWATCH, column

TAIL = (re.compile("[1-9][0-9]{0,2}"), re.compile("[0-9]{3}"))
EACH = re.compile(r"([0-9]{1,2}) (?:of )?each(?: strands?)?")
SUM = re.compile(r"([0-9]{1,2}) ?\+ ?(?=[0-9])")


@dataclass
class Columns:
    """Which field each column is; those that are none of ours are ``unknown``, and left out."""

    fields: list[str | None]
    unknown: list[str] = field(default_factory=list)
    mm: bool = False  # of working lengths

    def read(self, cells: list[str], *, loose: bool) -> Typed:
        """Read one line by its columns; one that spaces part otherwise, by its words."""
        if loose and len(cells) != len(self.fields):
            return by_words(cells, loose=True)
        cells = self._whole(cells)
        typed: Typed = {}
        for name, cell in zip(self.fields, cells, strict=False):
            where = "colour" if name == "thread" and self._is_swatch(cell) else name
            if where == "working" and self.mm and cell:
                cell = f"{cell} mm"
            if where and cell:
                typed[where] = f"{typed[where]} {cell}" if where in typed else cell
        if rest := " ".join(cell for cell in cells[len(self.fields) :] if cell):
            typed["rest"] = rest
        return typed

    def _is_swatch(self, cell: str) -> bool:
        """Tell whether a cell of a column called colour is one, where no other column has them."""
        return "colour" not in self.fields and SWATCH.fullmatch(cell) is not None

    def _whole(self, cells: list[str]) -> list[str]:
        """Put one number together again whose thousands a comma parted, where it is clear which."""
        if len(cells) != len(self.fields) + 1:
            return cells
        begins, ends = TAIL
        pairs = [n for n, cell in enumerate(cells[1:]) if begins.fullmatch(cells[n]) and ends.fullmatch(cell)]
        if len(pairs) != 1:
            return cells
        n = pairs[0]
        return [*cells[:n], cells[n] + cells[n + 1], *cells[n + 2 :]]


def columns_of(cells: list[str]) -> Columns | None:
    """Tell the columns by a first line that names them; None where it is a line like the others."""
    told = [cell for cell in cells if cell]
    fields = [column(cell) for cell in cells]
    known = sum(name is not None for name in fields)
    if not known or any(cell.isdecimal() for cell in told) or known < min(2, len(told)):
        return None
    if len(told) == 1 and "thread" not in fields:
        return None  # a heading
    if "thread" not in fields:  # one that only its maker's name is given to
        n = next((n for n, cell in enumerate(cells) if cell and fields[n] is None), None)
        if n is not None:
            fields[n] = "thread"
    unknown = [cell for cell, name in zip(cells, fields, strict=True) if cell and name is None]
    return Columns(fields, unknown, any(cell.lower().endswith(" mm") for cell in told))


def spread(typed: Typed) -> Typed:
    """Give each thread of a blend fields of its own: "Walnut + Silver filament", "1 + 1"."""
    names = JOINS.split(typed.get("thread", ""))
    if not 1 < len(names) <= len(ENDS) or not all(name.strip() for name in names):
        return typed
    found = {name: text for name, text in typed.items() if name not in OF_PART}
    for name in OF_PART:
        for end, text in zip(ENDS, _shared(name, typed.get(name, ""), len(names)), strict=False):
            found[f"{name}{end}"] = text
    return {name: text for name, text in found.items() if text}


def _shared(name: str, text: str, many: int) -> list[str]:
    """Part what a cell says among the threads; what cannot be parted stays with the first, to be seen."""
    if name == "strands":
        text = SUM.sub(r"\1 + ", text)
        if each := EACH.fullmatch(text):
            return [each[1]] * many
        if text.isdecimal() and int(text) and int(text) % many == 0:
            return [str(int(text) // many)] * many
    parts = [part.strip() for part in JOINS.split(text)]
    if len(parts) == many:
        return parts
    return [text] * many if name == "kind" and len(parts) == 1 else [text, *[""] * (many - 1)]
