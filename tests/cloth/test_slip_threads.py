"""The threads of a slip without a browser: their text, their code, and what is said of them."""

import re
from dataclasses import replace
from html import unescape
from urllib.parse import parse_qs, urlencode, urlsplit

import pytest
import segno
from hypothesis import given
from hypothesis import strategies as st

from tests.cloth.any_legend import legends
from tests.cloth.forty import forty
from tests.cloth.slips import VECTORS, slip_of, tables
from webapp.cloth import slip_rows, slip_text, slip_threads
from webapp.cloth.slip_code import code
from webapp.cloth.slip_text import MOST_CODED, coded, read, weight, write
from webapp.threads.legend import Line, Part

KINDS = tables()["threads"]
QUINCE = slip_of(VECTORS["slips"][0]["slip"])
FORTY = replace(QUINCE, threads=forty())
RED = Line((Part("Red 321"),), "●", full=900)


# Their text


def test_every_kind_of_thread_has_a_letter_of_its_own():
    assert set(slip_threads.KINDS) == set(KINDS)
    assert len(set(slip_threads.KINDS.values())) == len(KINDS)


@given(legends, st.sampled_from(["", "Quince tree", "~1~2~"]))
def test_any_threads_come_back_as_they_went_and_in_their_order(legend, title):
    slip = replace(QUINCE, threads=legend, title=title)
    address = "/cloth/slip?" + urlencode({"s": write(slip)})
    assert read(parse_qs(urlsplit(address).query)["s"][0]) == slip
    assert slip_threads.read(slip_threads.write(legend)) == legend


@given(legends)
def test_where_there_are_no_threads_the_text_is_as_it_ever_was(legend):
    bare = write(slip_text.without_threads(replace(QUINCE, threads=legend)))
    assert bare == VECTORS["slips"][0]["text"]
    assert bare.startswith("1~")


@given(legends.filter(bool), st.data())
def test_threads_changed_in_one_letter_are_refused(legend, data):
    text = write(replace(QUINCE, threads=legend))
    at = data.draw(st.integers(0, len(text) - 1))
    other = data.draw(st.sampled_from("~_0 2cx").filter(lambda sign: sign != text[at]))
    with pytest.raises(slip_text.Unreadable):
        read(text[:at] + other + text[at + 1 :])


# Their code


def test_a_legend_of_forty_threads_goes_into_one_code_that_fits_beside_the_drawing():
    """A code of version 32 with error correction M holds 1,538 bytes (ISO/IEC 18004, as segno has it)."""
    text = write(FORTY)
    assert weight(text) == len(urlencode({"s": text})) - 2
    assert 1_250 < weight(text) <= MOST_CODED  # about 33 bytes a thread
    assert coded(FORTY) == text
    address = "https://stitch.example/cloth/slip?" + urlencode({"s": text})
    made = segno.make(address, micro=False, error="m")
    assert made.version <= 32
    whole = float(re.search(r'width="([\d.]+)mm"', code(address)).group(1))
    assert whole <= 148 - 2 * 8 - 54  # beside the drawing on A5


def test_threads_too_many_for_a_code_are_left_out_of_it_and_the_page_says_so(client):
    cyrillic = tuple(
        Line((Part(f"Полевые цветы {n}"),), one.symbol, full=one.full) for n, one in enumerate(forty())
    )
    slip = replace(QUINCE, threads=cyrillic)
    assert weight(write(slip)) > MOST_CODED
    assert coded(slip) == write(QUINCE)
    page = unescape(client.get("/cloth/slip", query_string={"s": write(slip)}).text)
    assert "40 threads: too many for a code. The link has them." in page
    assert f"slip.svg?{urlencode({'s': write(QUINCE)})}" in page
    assert "Полевые цветы 39" in page
    drawn = [client.get("/cloth/slip.svg", query_string={"s": write(one)}).text for one in (slip, QUINCE)]
    assert drawn[0] == drawn[1]


@given(legends)
def test_the_bytes_of_a_text_are_those_of_its_address(legend):
    text = write(replace(QUINCE, threads=legend))
    assert weight(text) == len(urlencode({"s": text})) - 2


# What is said of them


def rows(*legend, **more):
    return slip_rows.rows(replace(QUINCE, threads=legend, **more), KINDS)


def test_each_line_says_its_thread_strands_and_what_to_buy():
    blend = Line((Part("Blue 7", "cotton", 1), Part("Silver", "filament", 1)), "B", full=40)
    said = rows(RED, blend, Line((Part("Rose 2", "silk", 2, "Rose 7"),), "C", full=10))
    assert said[0] == {
        "symbol": "●", "thread": "Red 321", "more": "", "strands": "2", "buy": "1 skein",
    }  # fmt: skip
    assert (said[1]["thread"], said[1]["strands"]) == ("Blue 7 + Silver", "1 + 1")
    assert (said[1]["more"], said[1]["buy"]) == ("Blending filament", "1 skein + 1 spool")
    assert (said[2]["thread"], said[2]["more"]) == ("Rose 7", "Silk, for Rose 2")


def test_a_thread_on_two_lines_is_bought_once_for_both():
    lines = [Line((Part("Red 321"),), symbol, full=900) for symbol in "AB"]
    said = rows(*lines)
    assert [row["buy"] for row in said] == [
        rows(Line((Part("Red 321"),), "A", full=1800))[0]["buy"],
        "as above",
    ]


def test_beads_are_bought_with_some_to_spare():
    """A spare of 5 %, five at least: common practice, no source (threads/estimate.py)."""
    assert rows(Line((Part("Black", "beads", 1),), beads=60))[0]["buy"] == "65 beads"


def test_a_thread_of_which_no_stitch_is_counted_says_so():
    assert rows(Line((Part("Red 321"),), "A"))[0]["buy"] == "not counted"


@given(legends)
def test_there_is_a_row_for_every_line_and_the_sum_is_of_what_they_say(legend):
    legend = tuple(line for line in legend if sum(part.strands for part in line.parts) <= 24)
    said = slip_rows.rows(replace(QUINCE, threads=legend), KINDS)
    assert [row["symbol"] for row in said] == [line.symbol for line in legend]
    buy = [one for row in said for one in row["buy"].split(" + ")]
    summed = slip_rows.texts(replace(QUINCE, threads=legend), KINDS)["to-buy"]
    for sold in ("skein", "spool", "bead"):
        whole = sum(
            int(one.split(" ")[0].replace(",", "")) for one in buy if one.split(" ")[-1].rstrip("s") == sold
        )
        found = re.search(rf"([\d,]+) {sold}", summed)
        assert (int(found.group(1).replace(",", "")) if found else 0) == whole
