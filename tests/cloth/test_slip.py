"""The slip without a browser: its text, its words, its code, its pages, and how it becomes a project."""

import re
from binascii import crc_hqx
from dataclasses import replace
from urllib.parse import parse_qs, urlencode, urlsplit

import pytest
import segno
from hypothesis import given
from hypothesis import strategies as st

from tests.cloth.slips import VECTORS, named, said_of, slip_of, tables
from webapp.cloth import slip_asking, slip_text
from webapp.cloth.slip_code import code
from webapp.cloth.slip_saying import slots
from webapp.cloth.slip_text import Slip, Unreadable, read, write

QUINCE = slip_of(VECTORS["slips"][0]["slip"])
TEXT = write(QUINCE)
ADDRESS = "/cloth/slip?" + urlencode({"s": TEXT})


# Its text


@pytest.mark.parametrize("case", VECTORS["slips"], ids=named)
def test_a_slip_is_written_read_and_said_as_the_vectors_say(case):
    slip = slip_of(case["slip"])
    assert write(slip) == case["text"]
    assert read(case["text"]) == slip
    assert said_of(slip).items() >= case["said"].items()


@pytest.mark.parametrize("case", VECTORS["refused"], ids=lambda case: repr(case["text"][:40]))
def test_what_is_no_slip_is_refused_with_a_sentence(case):
    with pytest.raises(Unreadable) as refused:
        read(case["text"])
    assert str(refused.value) == case["error"]


def test_the_check_is_the_one_its_description_names():
    """The check value published for CRC-16 with polynomial 0x1021 from 0 is 31c3, of "123456789" (memory)."""
    assert crc_hqx(b"123456789", 0) == 0x31C3
    _version, check, body = TEXT.split("~", 2)
    assert int(check, 16) == crc_hqx(body.encode(), 0)


counts = st.integers(2_000, 100_000).map(lambda thousandths: thousandths / 1000)
slips = st.builds(
    Slip,
    width=st.integers(1, 10_000),
    height=st.integers(1, 10_000),
    count=counts,
    across=st.none() | counts,
    over=st.sampled_from([1, 2]),
    finish=st.sampled_from(list(slip_text.FINISHES)),
    held=st.sampled_from(list(slip_text.HELD)),
    frays=st.booleans(),
    own=st.none() | st.integers(0, 900_000).map(lambda microns: microns / 1000),
    unit=st.sampled_from(["in", "cm"]),
    error=st.none() | st.integers(1, 500).map(lambda thousandths: thousandths / 1000),
    title=st.text(st.characters(exclude_categories=["Cc", "Cs", "Zl", "Zp"]), max_size=20)
    .map(str.strip)
    .filter(lambda title: slip_text.fault(title) is None),
)


@given(slips)
def test_any_slip_comes_back_as_it_went(slip):
    address = "/cloth/slip?" + urlencode({"s": write(slip)})
    assert read(parse_qs(urlsplit(address).query)["s"][0]) == slip


def test_a_slip_cut_short_or_changed_in_one_letter_is_refused():
    damaged = [TEXT[:at] for at in range(len(TEXT))]
    damaged += [
        TEXT[:at] + other + TEXT[at + 1 :]
        for at in range(len(TEXT))
        for other in "~0 7x"
        if other != TEXT[at]
    ]
    for text in damaged:
        with pytest.raises(Unreadable):
            read(text)


# Its words


@pytest.mark.parametrize(
    ("slip", "cut"),
    [
        (QUINCE, "16 × 18 in"),  # rosewoodxstitch.com/pages/fabric
        (slip_of(VECTORS["slips"][1]["slip"]), "11 × 14 in"),  # onceinabluemoon.ca
        (Slip(140, 140, 14, held="hand"), "15 × 15 in"),  # lizzyb.ca
    ],
)
def test_it_gives_the_cut_of_published_examples(slip, cut):
    assert slots(slip, tables())["cut"] == cut


def test_every_way_to_hold_it_says_what_to_do_at_night():
    """Out after each sitting: stitchingthenightaway.com, netstitch.co.uk; slackened: the former."""
    said = {held: slots(replace(QUINCE, held=held), tables())["night"] for held in slip_text.HELD}
    assert "out of hoop" in said["hoop"]
    assert "clamps off" in said["clamps"]
    assert "Slacken" in said["scroll"]
    assert said["stretched"] == said["hand"] == ""


def test_a_measured_count_says_how_far_the_width_may_be_off():
    said = slots(Slip(140, 98, 14, error=0.5), tables())
    assert said["cloth"] == "14 count, give or take 0.5, over one"
    assert said["measured"] == "so 9.66 to 10.37 in wide"  # 140 / 14.5 and 140 / 13.5


@given(slips)
def test_its_form_asks_for_what_it_says(slip):
    asked, again = slip_asking.ask(slip_asking.typed(slip))
    wrong = {
        name for name in asked.errors if name not in ("count", "error")
    }  # an error over a quarter; under one an inch
    assert wrong == set()
    if again:
        assert replace(again, own=slip.own) == slip
        assert (again.own is None) == (slip.own is None)
        assert abs((again.own or 0) - (slip.own or 0)) <= 0.5  # written to a millimetre, as a tape shows it


# Its code


@pytest.mark.parametrize("title", ["", "Quince tree", "x" * 60, "\N{SPOOL OF THREAD}" * 60], ids=len)
def test_its_code_carries_the_address_and_is_large_enough_on_paper(title):
    address = "https://stitch.example/cloth/slip?" + urlencode({"s": write(replace(QUINCE, title=title))})
    svg = code(address)
    made = segno.make(address, micro=False, error="m")
    modules = len(made.matrix)
    assert made.mode == "byte"
    assert made.error in "MQH"
    whole, wide, box = re.search(
        r'width="([\d.]+)mm" height="([\d.]+)mm" viewBox="0 0 (\d+) \d+"', svg
    ).groups()
    assert whole == wide
    assert int(box) == modules + 8  # four modules of quiet on either side: ISO/IEC 18004, from memory
    module = float(whole) / int(box)
    assert module * modules >= 24.99
    assert module >= 0.499
    assert float(whole) <= 148 - 2 * 8 - 54  # beside the drawing on A5
    assert dark(svg, int(box)) == [[0] * 4 + list(row) + [0] * 4 for row in made.matrix]


def dark(svg, box):
    """Read the drawn modules back, without their quiet rows."""
    rows = [[0] * box for _ in range(box)]
    for x, y, run in re.findall(r"M(\d+) (\d+)h(\d+)v1h", svg):
        for at in range(int(x), int(x) + int(run)):
            rows[int(y)][at] = 1
    assert not any(map(any, rows[:4] + rows[-4:]))
    return rows[4:-4]


def test_the_code_of_no_slip_is_refused(client):
    assert client.get("/cloth/slip.svg?s=1~0000~14").status_code == 422
    assert client.get("/cloth/slip.svg").status_code == 422
    answer = client.get("/cloth/slip.svg?" + urlencode({"s": TEXT}))
    assert answer.mimetype == "image/svg+xml"
    assert answer.text == code("http://localhost" + ADDRESS)
