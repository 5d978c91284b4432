"""What parts the cells of a legend: tab, semicolon, comma, or nothing but spaces. Pure."""

import csv
import re

from webapp.threads.legend_words import column

MARKS = ("\t", ";", ",")
MOST = 0.6  # of the lines must have it
LOOKED_AT = 60  # lines
APART = re.compile(r"[^\s,;]\s{2,}[^\s,;]")  # columns that spaces part
SIGN = re.compile(r"[^\s,]{1,2} (?:[^,]*[^\W\d_]{2}[^,]*,|[0-9]+, )")  # a symbol and a thread in one cell
THOUSANDS = re.compile(r"(?<![0-9])[0-9]{1,3}(?:,[0-9]{3})+(?![0-9])")


SAID = re.compile(r'"?sep=(.)"?')


def said(text: str) -> str:
    """Give what a first line of its own says the separator is, as spreadsheets write one; else ""."""
    found = SAID.fullmatch(text.split("\n", 1)[0].strip(" "))
    return found[1] if found else ""


def separator(text: str) -> str:
    """Name what parts the cells of a text, or "" where lines are as patterns print them."""
    lines = [line for line in text.splitlines() if line.strip()][:LOOKED_AT]
    if named := _by_titles(lines[0]):
        return named
    return next((mark for mark in MARKS if _parts(lines, mark)), "")


def _by_titles(line: str) -> str:
    """Tell by a first line that names columns of ours."""
    return next((mark for mark in MARKS if sum(bool(column(cell)) for cell in _cells(line, mark)) > 1), "")


def _cells(line: str, mark: str) -> list[str]:
    return next(csv.reader([line], delimiter=mark, skipinitialspace=True), [])


def _parts(lines: list[str], mark: str) -> bool:
    if mark != ",":
        return sum(mark in line for line in lines) >= MOST * len(lines)
    if sum(bool(APART.search(line) or SIGN.match(line)) for line in lines) >= MOST * len(lines):
        return False
    return sum(_has_commas(line) for line in lines) >= MOST * len(lines)


def _has_commas(line: str) -> bool:
    """Tell whether commas part a line: more than one, or one before a number, thousands left aside."""
    many = THOUSANDS.sub("0", line).count(",") or (line.count(",") if line.count(",") > 1 else 0)
    return many > 1 or (many == 1 and line.rsplit(",", 1)[1].strip().isdecimal())
