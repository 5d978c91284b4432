"""The pages of a piece of cloth and of cloth for a class, without a browser."""

import re
from itertools import product

import pytest

from tests.cloth.pieces import VECTORS
from webapp.cloth.reads import READERS

PIECE = {"piece_width": "18", "piece_height": "27", "count": "14"}
CLASS = {"n": "10", "width": "140", "height": "168", "count": "28", "over": "2", "bolt_width": "55"}
OFF_A_PIECE = CLASS | PIECE | {"off": "piece"}


def slot(page, name):
    return re.search(rf'data-slot="{name}">([^<]*)<', page.text).group(1)


@pytest.mark.parametrize("address", ["/cloth/piece", "/cloth/class"])
def test_it_asks_without_an_account_and_says_nothing_yet(client, address):
    page = client.get(address)
    assert page.status_code == 200
    assert slot(page, "headline") == ""
    assert 'class="error"' not in page.text


@pytest.mark.parametrize("case", VECTORS, ids=lambda case: case["description"])
def test_the_page_says_what_the_vectors_say(client, case):
    page = client.get(f"/cloth/{case['ask']}", query_string=case["given"])
    expect = case["expect"]
    assert page.status_code == (422 if "errors" in expect else 200)
    for name, text in expect.get("said", {}).items():
        assert slot(page, name) == text
    for sentence in expect.get("errors", {}).values():
        assert sentence in page.text or len(expect["errors"]) > 1  # two in a row share a line
    for name, text in case["given"].items():
        assert f'value="{text}"' in page.text or name not in READERS


@pytest.mark.parametrize(
    ("width", "height", "count", "over", "margin", "piece"),
    [
        (140, 168, "28", "2", "3", ("16", "18")),  # rosewoodxstitch.com/pages/fabric
        (140, 140, "14", "1", "2.5", ("15", "15")),  # lizzyb.ca
        (98, 140, "14", "1", "2", ("11", "14")),  # onceinabluemoon.ca
    ],
)
def test_a_published_cut_just_takes_its_design(client, width, height, count, over, margin, piece):
    asked = {"width": width, "height": height, "count": count, "over": over, "own": margin, "held": "hand"}
    sized = {"piece_width": piece[0], "piece_height": piece[1]}
    assert slot(client.get("/cloth/piece", query_string=asked | sized), "headline") == "It fits"
    shorter = sized | {"piece_width": f"{int(piece[0]) - 1} 7/8"}
    assert slot(client.get("/cloth/piece", query_string=asked | shorter), "headline") != "It fits"


def test_the_drawing_is_to_scale(client):
    page = client.get("/cloth/piece", query_string=PIECE | {"width": "140", "height": "168"}).text
    drawn = {
        name: [float(number) for number in re.findall(r'"([\d.]+)"', rest)[-4:]]
        for name, rest in re.findall(r'data-shape="(\w+)"([^/]*)/>', page)
    }
    assert drawn["piece"][2:] == pytest.approx([457.2, 685.8])
    assert drawn["design"][2:] == pytest.approx([254, 304.8], rel=0.005)  # 10 × 12 in


WORST = ["", " ", "0", "-1", "1e9", "nan", "inf", "<b>1</b>", "9" * 5000, "\x00", "½½", "1/0", "' or 1=1"]


@pytest.mark.parametrize("name", READERS)
def test_what_cannot_be_meant_is_a_sentence_and_no_figure(client, name):
    for typed, (address, given) in product(WORST, (("piece", PIECE), ("class", OFF_A_PIECE))):
        page = client.get(f"/cloth/{address}", query_string={**given, name: typed})
        assert page.status_code in (200, 422), typed
        assert "<b>1" not in page.text
        if page.status_code == 422:
            assert 'class="error"' in page.text
            assert slot(page, "headline") == ""


@pytest.mark.parametrize("query", ["piece_width=%ff%fe", "n=%ff", "n=1&n=2", "unit=feet", "over=9"])
@pytest.mark.parametrize("address", ["/cloth/piece", "/cloth/class", "/cloth/piece/hers"])
def test_an_address_that_no_form_makes_is_answered_all_the_same(client, address, query):
    assert client.get(f"{address}?{query}").status_code in (200, 422)


def test_the_largest_of_everything_is_answered(client):
    most = dict.fromkeys(("piece_width", "piece_height"), "100000 mm") | {"count": "1", "own": "900 mm"}
    for design in ({}, {"width": "10000", "height": "10000", "over": "3"}):
        assert client.get("/cloth/piece", query_string=most | design | {"frays": "yes"}).status_code == 200
    asked = most | {"n": "200", "by": "cut", "cut_width": "1 cm", "cut_height": "1 cm", "off": "piece"}
    assert client.get("/cloth/class", query_string=asked).status_code == 200


def test_her_projects_that_go_on_the_piece_are_said(alice, charlie, new_project):
    fits = new_project(alice, title="Harbour lanterns", width=140, height=98)
    new_project(alice, title="Winter barn", width=400, height=400)
    page = alice.get("/cloth/piece", query_string=PIECE).text
    assert f'href="/projects/{fits}"' in page
    assert "the size it was planned" in page
    assert "Winter barn" not in page
    assert (
        page.split("<h2>Your projects that go on it</h2>")[1].split("</ul>")[0]
        in alice.get("/cloth/piece/hers", query_string=PIECE).text
    )
    assert "Harbour lanterns" not in charlie.get("/cloth/piece", query_string=PIECE).text


def test_a_turned_cut_of_a_class_holds_its_design_on_cloth_that_is_not_square(client):
    """140 stitches that run at 12 an inch are 11 2/3 in, and 2 1/2 in on both sides make 16 2/3 (by hand)."""
    asked = {"n": "5", "width": "140", "height": "40", "count": "14", "across": "12", "held": "hand"}
    page = client.get("/cloth/class", query_string=asked | {"off": "bolt", "bolt_width": "43"})
    cuts = re.findall(r'class="cut" x="[^"]*" y="[^"]*" width="([^"]*)" height="([^"]*)"', page.text)
    assert len(cuts) == 5
    for wide, high in cuts:
        straight = float(wide) >= (10 + 5) * 25.4 and float(high) >= (40 / 12 + 5) * 25.4
        turned = float(wide) >= (40 / 14 + 5) * 25.4 and float(high) >= (140 / 12 + 5) * 25.4
        assert straight or turned
