"""A legend that was pasted or uploaded, made into lines of fields as they are typed in the line's form.

Commas, semicolons, tabs, or lines as patterns print them; with a row that names the columns or without. What
a line comes to is for ``legend_reads`` to say; here nothing is refused but what is no legend at all. Pure.
"""

import csv
import io
from collections.abc import Iterator
from itertools import islice
from typing import NamedTuple

from webapp.threads.estimate import Counts
from webapp.threads.legend import MOST_LINES
from webapp.threads.legend_csv import unguard
from webapp.threads.legend_lines import Typed, by_words, cells_of
from webapp.threads.legend_separators import said, separator
from webapp.threads.legend_table import Columns, columns_of, spread
from webapp.threads.legend_words import column, is_total

LONGEST = 2_000  # characters of a line
LOOKED_AT = MOST_LINES + 50  # rows, those that are left out among them
NO_TEXT = "That cannot be read as text. In a spreadsheet save it as CSV, then choose that file."
EMPTY = "Paste the legend, or choose a file that has one."


class Unreadable(ValueError):
    """No legend can be made of it; the message is the sentence to show."""


class Row(NamedTuple):
    """One line: where it stood, and what was found in it by field; "rest": nothing could be made of it.

    named: by titles of columns.
    """

    number: int
    typed: Typed
    named: bool = False


class Given(NamedTuple):
    """What was given: its lines, and what of it is no thread (titles of columns, totals, columns unknown)."""

    rows: list[Row]
    left_out: list[str]


def decode(data: bytes) -> str:
    """Make text of a file: UTF-8 or, by its mark, UTF-16; else Latin-1 as Windows has it."""
    marks = ((b"\xef\xbb\xbf", "utf-8-sig"), (b"\xff\xfe", "utf-16"), (b"\xfe\xff", "utf-16"))
    named = next((name for mark, name in marks if data.startswith(mark)), None)
    for name in (named,) if named else ("utf-8", "cp1252", "latin-1"):
        try:
            text = data.decode(name)
        except UnicodeDecodeError:
            continue
        if "\0" not in text:
            return text
    raise Unreadable(NO_TEXT)


def rows(text: str) -> Given:
    """Part a legend into its lines."""
    text = text.removeprefix("\ufeff").replace("\r\n", "\n").replace("\r", "\n")
    _check(text)
    if mark := said(text):
        text = "\n" + text.partition("\n")[2]
    mark = mark or separator(text)
    found = list(islice(_records(text, mark), LOOKED_AT))
    names = columns_of(found[0][1]) if found else None
    left_out = [f"Titles: {_shown(found[0][1])}"] if names else []
    given = _given(found[1:] if names else found, names, mark)
    given.left_out[:0] = [*left_out, *(f"Column: {name}" for name in (names.unknown if names else []))]
    if len(given.rows) > MOST_LINES:
        many = max(len(given.rows), sum(1 for line in text.split("\n") if line.strip()))
        raise Unreadable(f"A legend takes at most {MOST_LINES} lines; this has {many:,}. Send part of it.")
    if not given.rows:
        raise Unreadable("No thread was found in that. Paste one line for each thread.")
    return given


def _check(text: str) -> None:
    if not text.strip():
        raise Unreadable(EMPTY)
    if "\0" in text:
        raise Unreadable(NO_TEXT)
    for n, line in enumerate(text.split("\n"), 1):
        if len(line) > LONGEST:
            raise Unreadable(
                f"Line {n:,} has {len(line):,} characters; one thread needs {LONGEST:,} at most."
            )


def _records(text: str, mark: str) -> Iterator[tuple[int, list[str]]]:
    """Give the cells of each line that has any, with the number of the line."""
    if not mark:
        for n, line in enumerate(io.StringIO(text), 1):
            if line.strip():
                yield n, cells_of(line)
        return
    for n, cells in _quoted(text, mark):
        if any(cell.strip() for cell in cells):
            yield n, [unguard(cell.strip()) for cell in cells]


def _quoted(text: str, mark: str) -> Iterator[tuple[int, list[str]]]:
    """Read CSV; where its quotes do not go together, line by line, so that none swallows the rest."""
    lines = csv.reader(io.StringIO(text, newline=""), delimiter=mark, strict=True, skipinitialspace=True)
    found = []
    try:
        for cells in lines:
            found.append((lines.line_num, cells))
            if len(found) > LOOKED_AT:
                break
        yield from found
    except csv.Error:
        for n, line in enumerate(io.StringIO(text), 1):
            yield n, [cell.strip().strip('"') for cell in line.split(mark)]


def _given(found: list[tuple[int, list[str]]], names: Columns | None, mark: str) -> Given:
    made, left_out, below = [], [], "full"
    for n, cells in found:
        heading = None if mark else _heading(cells)
        if heading and len(found) > 1:
            left_out.append(f"Titles: {_shown(cells)}")
            below = heading if heading in Counts._fields else below
            continue
        typed = names.read(cells, loose=not mark) if names else by_words(cells, loose=not mark)
        if _sums_up(typed):
            left_out.append(f"Total: {_shown(cells)}")
        else:
            made.append(Row(n, typed if names else _moved(typed, "full", below), names is not None))
    alone = all("strands" not in row.typed for row in made) and not names
    if alone and all(_is_few(row.typed.get("full", "")) for row in made):
        made = [row._replace(typed=_moved(row.typed, "full", "strands")) for row in made]
    elif len(made) > 1 and all(row.typed.keys() == {"full"} for row in made):
        made = [row._replace(typed=_moved(row.typed, "full", "thread")) for row in made]
    return Given([row._replace(typed=spread(row.typed)) for row in made], left_out)


def _heading(cells: list[str]) -> str | None:
    """Tell what a line that is a title of columns, or of the lines below it, is called after; else None."""
    words = " ".join(cells).split()
    whole = column(" ".join(words))
    return whole or (column(words[0]) if all(column(word) for word in words) else None)


def _sums_up(typed: Typed) -> bool:
    """Tell whether a line adds the others up; a thread that is called so has a symbol or strands."""
    called = [typed[name] for name in ("symbol", "thread") if name in typed]
    return len(called) == 1 and is_total(called[0]) and not typed.keys() & {"strands", "kind"}


def _is_few(text: str) -> bool:
    """Tell whether a number that stands alone in every line is one of strands."""
    return text in ("", "1", "2", "3", "4", "5", "6")


def _moved(typed: Typed, name: str, to: str) -> Typed:
    return typed if to in typed else {(to if one == name else one): text for one, text in typed.items()}


def _shown(cells: list[str]) -> str:
    return " ".join(" ".join(cells).split())[:80]
