"""Size and cut on the page and for scripts: the trade's worked examples, what cannot be meant, to scale."""

import re
from urllib.parse import urlencode

import pytest

from tests.cloth.sized_page import VECTORS, here

FILLED = {"width": "140", "height": "168", "count": "28", "over": "2", "finish": "framed", "held": "hoop"}
IN = {"unit": "in"}


def asked(client, page="/cloth/size", **fields):
    return client.get(f"{page}?{urlencode(fields)}")


def figures(client, **fields):
    answer = asked(client, "/cloth/size.json", **(IN | fields))
    assert answer.status_code == 200, answer.text
    return answer.json


def slots_of(text):
    island = text.partition('data-island="size"')[2]
    return dict(re.findall(r'data-slot="([^"]+)">([^<]*)<', island))


# The trade's worked examples, inches, each with its source; where one is rounded, the exact is checked.
@pytest.mark.parametrize(
    ("design", "cloth", "finished", "margin", "cut"),
    [
        # rosewoodxstitch.com/pages/fabric
        ((140, 168), (28, 2), (10, 12), 3, (16, 18)),
        # lizzyb.ca
        ((140, 140), (14, 1), (10, 10), 2.5, (15, 15)),
        # onceinabluemoon.ca
        ((98, 140), (14, 1), (7, 10), 2, (11, 14)),
        # strawberrysampler.com/faqs.html, without margin
        ((140, 105), (14, 1), (10, 7.5), 0, (10, 7.5)),
        # the same, printed 6.5 for 6.5625; what can be cut is the next quarter inch
        ((140, 105), (32, 2), (8.75, 6.5625), 0, (8.75, 6.75)),
        # anniescatalog.com (getting started): a design of 6 × 8 in on any cloth, here 14
        ((84, 112), (14, 1), (6, 8), 3, (12, 14)),
        # stitchedmodern.com (fabric count), printed 2.63 and 2.33 for 42 / 16 and 42 / 18
        ((42, 42), (14, 1), (3, 3), 0, (3, 3)),
        ((42, 42), (16, 1), (2.625, 2.625), 0, (2.75, 2.75)),
        ((42, 42), (18, 1), (42 / 18, 42 / 18), 0, (2.5, 2.5)),
        # marybeale.com/school/lesson1/how_to_read_a_chart.html, which rounds 17.5 an inch to 17
        ((67, 85), (35, 2), (67 / 17.5, 85 / 17.5), 2, (8, 9)),
    ],
)
def test_a_worked_example_of_the_trade_comes_out(client, design, cloth, finished, margin, cut):
    found = figures(client, width=design[0], height=design[1], count=cloth[0], over=cloth[1], margin=margin)
    assert [found["finished_width_in"], found["finished_height_in"]] == pytest.approx(finished)
    assert [found["cut_width_in"], found["cut_height_in"]] == pytest.approx(cut)
    exact = [side + 2 * margin for side in finished]
    assert [found["exact_width_in"], found["exact_height_in"]] == pytest.approx(exact)
    assert found["margin_in"] == pytest.approx(margin)


def test_scripts_are_answered_unrounded_with_units_in_the_keys(client):
    found = figures(client, width=140, height=168, count=28, over=2, margin=3)
    assert found["cut_width_mm"] == pytest.approx(406.4)
    assert found["cut_width_cm"] == pytest.approx(40.64)
    assert found["first_in_threads"] == 84
    assert found["stitches_per_inch"] == 14
    assert [found["middle_across_stitches"], found["middle_down_stitches"]] == [70, 84]
    assert (found["needle"]["usual"], found["strands"]["usual"]) == (24, 2)
    assert len(found["side_by_side"]) == 6


def test_a_script_s_margin_is_in_its_unit_and_nothing_grips_unless_said(client):
    found = figures(client, width=100, height=100, count=14, margin="2,5", unit="cm")
    assert found["margin_mm"] == 25
    gripped = figures(client, width=100, height=100, count=14, margin=1, held="hoop")
    assert gripped["margin_in"] == pytest.approx(2)


@pytest.mark.parametrize(
    ("fields", "wrong"),
    [
        ({"width": "0"}, "width"),
        ({"width": "-140"}, "width"),
        ({"height": "168,5"}, "height"),
        ({"height": "1e3"}, "height"),
        ({"height": "99999"}, "height"),
        ({"count": "500"}, "count"),
        ({"count": "0"}, "count"),
        ({"count": "<script>alert(1)</script>"}, "count"),
        ({"count": "14 in"}, "count"),
        ({"count": "1"}, "count"),
        ({"own": "-1"}, "own"),
        ({"own": "3 fingers"}, "own"),
        ({"own": "1/0"}, "own"),
        ({"own": "400 in"}, "own"),
        ({"across": "nan"}, "across"),
        ({"over": "5"}, "over"),
        ({"finish": "gilded"}, "finish"),
        ({"width": "1" * 10_000}, "width"),
    ],
)
def test_what_cannot_be_meant_is_said_beside_it_and_shows_no_figure(client, fields, wrong):
    answer = asked(client, **(FILLED | fields))
    assert answer.status_code == 422
    assert 'class="size stack" data-island="size" data-empty' in answer.text
    assert set(slots_of(answer.text).values()) == {""}
    assert answer.text.count('class="error"') == 1
    assert "<script>alert" not in answer.text
    shown = fields[wrong][:40].replace("<", "&lt;").replace(">", "&gt;")
    if wrong not in ("over", "finish"):
        assert f'value="{shown}"' in answer.text
    script = asked(client, "/cloth/size.json", **(FILLED | fields))
    assert script.status_code == 422
    assert list(script.json["errors"]) == [wrong]
    assert script.json["error"].endswith(".")


@pytest.mark.parametrize("query", ["width=%ff%fe", "count=%00", "width=1&width=2", "wide=9", "unit=feet"])
@pytest.mark.parametrize("page", ["/cloth/size", "/cloth/size.json"])
def test_an_address_that_no_form_makes_is_answered_all_the_same(client, page, query):
    assert client.get(f"{page}?{query}").status_code in (200, 422)


def test_the_largest_of_everything_is_answered(client):
    most = {"width": "10000", "height": "10000", "count": "3", "own": "900 mm", "frays": "yes"}
    for held in ("hoop", "stretched"):
        found = figures(client, **(most | {"over": "3", "held": held, "across": "1"}))
        assert found["finished_height_in"] == pytest.approx(30_000)
        assert asked(client, **(most | {"over": "2", "held": held})).status_code == 200


def test_a_script_that_leaves_something_out_is_told_what(client):
    answer = asked(client, "/cloth/size.json", width=140)
    assert answer.status_code == 422
    assert set(answer.json["errors"]) == {"height", "count"}


def test_the_page_asks_first_and_waits_for_what_an_address_leaves_out(client):
    for page in (asked(client), asked(client, count="27.3")):
        assert page.status_code == 200
        assert "data-empty" in page.text
        assert 'class="error"' not in page.text
    assert asked(client, count="27.3", width="", height="").status_code == 422


def test_the_form_is_answered_without_script(client):
    page = asked(client, **FILLED)
    said = slots_of(page.text)
    assert page.status_code == 200
    assert (said["cut"], said["cut-other"]) == ("16 × 18 in", "40.7 × 45.8 cm")
    assert (said["finished"], said["margin"], said["why"]) == (
        "10 × 12 in",
        "3 in a side",
        "framed and laced",
    )
    assert (said["first"], said["middle"]) == ("84 threads in, 84 down", "between 70 and 71 across")
    assert 'href="/cloth/piece?unit=in&amp;width=140&amp;height=168' in page.text


def test_a_stitcher_s_own_unit_is_taken(alice):
    hers = {"hand": "left", "unit": "cm", "bedtime": "22:30", "week_start": "0", "zone": "Europe/London"}
    assert alice.post("/account/settings", data=hers).status_code == 200
    assert slots_of(asked(alice, **FILLED).text)["cut"] == "41 × 46 cm"
    assert slots_of(asked(alice, **(FILLED | IN)).text)["cut"] == "16 × 18 in"


@pytest.mark.parametrize("case", VECTORS, ids=lambda case: case["description"])
def test_the_page_is_as_the_vector_says(client, case):
    assert here(case["given"]) == case["expect"]
    if "slots" in case["expect"]:
        text = asked(client, **case["given"]).text
        assert slots_of(text) == case["expect"]["slots"]


# One question, one answer


@pytest.mark.parametrize(
    "query",
    [
        {"width": 63, "height": 63, "count": 14, "own": 1},
        {"width": 63, "height": 63, "count": 14, "margin": 1},
        {"width": 63, "height": 63, "count": 14, "margin": "4 cm", "held": "hoop"},
        {"width": 140, "height": 168, "count": 28, "over": 2, "margin": 3, "unit": "in"},
        {"width": 140, "height": 168, "count": 28, "over": 2, "unit": "cm", "frays": "yes"},
    ],
)
def test_the_page_and_a_script_answer_one_address_alike(client, alice, query):
    hers = {"hand": "left", "unit": "cm", "bedtime": "22:30", "week_start": "0", "zone": "Europe/London"}
    assert alice.post("/account/settings", data=hers).status_code == 200
    for browser in (client, alice):
        script = asked(browser, "/cloth/size.json", **query).json
        page = slots_of(asked(browser, **query).text)
        assert {name: page[name] for name in script["sentences"]} == script["sentences"]
        sizes = browser.get(
            "/cloth/class", query_string=query | {"n": 1, "bolt_width": "63 in", "turn": "no"}
        )
        assert f"Each cut is {script['sentences']['cut']}." in sizes.text
