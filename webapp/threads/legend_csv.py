"""A legend as CSV (RFC 4180: commas, CRLF, quotes where needed), written so that no spreadsheet runs a cell.

OWASP's advice on CSV injection (owasp.org/www-community/attacks/CSV_Injection) names the characters that a
cell must not begin with, and the apostrophe to put before them. Symbols like + - = @ are common on charts, so
the apostrophe is taken off again when a legend is read; a cell that begins with one gets another, so that
every cell comes back as it was. Pure.
"""

import csv
import io
from collections.abc import Iterable, Mapping
from typing import Any

from webapp.cloth.words import plain
from webapp.threads.estimate import Counts
from webapp.threads.legend import Line

RISKY = frozenset("=+-@\t\r\n＝＋－＠")
HEADER = {
    "symbol": "symbol",
    "thread": "thread",
    "instead": "instead",
    "colour": "swatch",
    "kind": "kind",
    "strands": "strands",
    "lots": "lots",
    **{name: name.replace("_", "-") for name in Counts._fields},
    "method": "method",
    "scatter": "scatter",
    "patches": "patches",
    "working": "working length mm",
    "note": "note",
}


def guard(cell: str) -> str:
    """Put an apostrophe before what a spreadsheet would run, and before another apostrophe."""
    return f"'{cell}" if cell[:1] == "'" or cell[:1] in RISKY else cell


def unguard(cell: str) -> str:
    """Take off an apostrophe that stands where ``guard`` puts one."""
    return cell[1:] if cell[:1] == "'" and (cell[1:2] == "'" or cell[1:2] in RISKY) else cell


def write(lines: Iterable[Line], kinds: Mapping[str, Mapping[str, Any]]) -> bytes:
    """Write a legend; with the mark of UTF-8 before it, without which spreadsheets mistake its symbols."""
    text = io.StringIO(newline="")
    out = csv.writer(text)
    out.writerow(HEADER.values())
    out.writerows([guard(cell) for cell in _cells(line, kinds)] for line in lines)
    return text.getvalue().encode("utf-8-sig")


def _cells(line: Line, kinds: Mapping[str, Mapping[str, Any]]) -> list[str]:
    cells = {
        "symbol": line.symbol,
        "thread": line.printed,
        "instead": joined([part.instead for part in line.parts]),
        "colour": line.colour or "",
        "kind": joined([str(kinds[part.kind]["name"]) for part in line.parts]),
        "strands": joined([str(part.strands) for part in line.parts]),
        "lots": joined([", ".join(part.lots) for part in line.parts]),
        **{name: str(many or "") for name, many in line.counts._asdict().items()},
        "method": line.method or "",
        "scatter": line.scatter,
        "patches": str(line.patches or ""),
        "working": "" if line.working is None else plain(line.working),
        "note": line.note,
    }
    return [cells[name] for name in HEADER]


def joined(texts: list[str]) -> str:
    """Write what the threads of a blend have each, a plus between them; nothing if none has any."""
    return " + ".join(texts).strip() if any(texts) else ""
