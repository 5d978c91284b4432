"""A legend as it arrives: the encoding of a file, and what is no legend or too much of one."""

import pytest

from tests.threads.understood import understood
from webapp.threads.legend_reads import read
from webapp.threads.legend_text import Unreadable, decode, rows
from webapp.threads.tables import kinds

WRITTEN = "symbol;thread;full\n♥;Garance fumée;120"


@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "utf-16", "utf-16-le", "utf-16-be"])
def test_a_file_is_read_by_its_mark_or_as_utf_8(encoding):
    mark = {"utf-16-le": b"\xff\xfe", "utf-16-be": b"\xfe\xff"}.get(encoding, b"")
    assert understood(decode(mark + WRITTEN.encode(encoding)))[0][:2] == ("♥", "Garance fumée")


def test_a_file_that_is_no_utf_8_is_latin_1():
    text = WRITTEN.replace("♥", "×")
    assert understood(decode(text.encode("latin-1")))[0][:2] == ("×", "Garance fumée")


@pytest.mark.parametrize(
    "data", [b"PK\x03\x04\x00\x00", b"\xff\xfeX", b"\x00\x01", "X;Madder".encode("utf-16-le")]
)
def test_what_is_no_text_is_said_to_be_none(data):
    with pytest.raises(Unreadable, match="cannot be read as text"):
        decode(data)


@pytest.mark.parametrize("text", ["", " \n\t\n", "\ufeff"])
def test_nothing_is_asked_for_again(text):
    with pytest.raises(Unreadable, match="Paste the legend"):
        rows(text)


@pytest.mark.parametrize("line", ["X  Madder  2 strands  {}", "X;Madder;2;{}", "Madder {}"])
def test_a_hundred_thousand_lines_are_too_many_in_a_sentence(line):
    with pytest.raises(Unreadable, match="at most 500 lines; this has 100,000"):
        rows("\n".join(line.format(n + 10) for n in range(100_000)))


def test_five_hundred_lines_are_a_legend():
    assert len(rows("symbol;thread;full\n" + "\n".join(f"X;Shade {n};{n}" for n in range(500))).rows) == 500


def test_a_line_as_long_as_a_book_is_refused_in_a_sentence():
    with pytest.raises(Unreadable, match="Line 2 has 1,000,000 characters"):
        rows("X Madder 2 120\n" + "1,240 " * 166_666 + "1,24")


@pytest.mark.parametrize(
    "text", ["\0", ",,,,", ";;;\n;;", '"', '"\n"\n"', "+\n+\n+", "\t\t\t\n1", "1,1,1,1", "=\n=", "½"]
)
def test_nonsense_is_a_sentence_or_asked_about_but_no_fault(text):
    try:
        found = rows(text)
    except Unreadable as error:
        assert str(error).endswith(".")  # noqa: PT017
        return
    for row in found.rows:
        read(row.typed, kinds(), lambda _kind: 2)
