"""Tables as CSV (RFC 4180), safe to open in a spreadsheet. Pure."""

import csv
import io
from collections.abc import Iterable, Sequence

# What a spreadsheet would take for the beginning of a formula; wide forms are narrowed by some (from memory).
ACTS = ("=", "+", "-", "@", "\t", "\r", "\n", "＝", "＋", "－", "＠")


def as_csv(header: Sequence[str], rows: Iterable[Sequence[object]]) -> str:
    """Write a header and rows, each ended by CRLF; a text that a spreadsheet would work out stays a text."""
    written = io.StringIO()
    writer = csv.writer(written, lineterminator="\r\n")
    writer.writerow(header)
    writer.writerows([_cell(value) for value in row] for row in rows)
    return written.getvalue()


def _cell(value: object) -> object:
    if isinstance(value, str) and value.startswith(ACTS):
        return f"'{value}"
    return "" if value is None else value
