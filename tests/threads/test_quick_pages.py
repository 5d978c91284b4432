"""The page of quick thread, without a browser: a form that the server answers."""

import re
from html import unescape

import pytest

from tests.threads.asked import VECTORS, here
from webapp.threads.quick import KINDS
from webapp.threads.tables import kinds

ASKED = {"stitches": "2400", "count": "14", "unit": "in"}
TYPED = [case for case in VECTORS if case["ask"] == "quick"]


def slots_of(page):
    return {name: unescape(text) for name, text in re.findall(r'data-slot="(\w+)">([^<]*)<', page.text)}


def test_it_works(client):
    page = client.get("/thread", query_string=ASKED)
    assert page.status_code == 200
    assert slots_of(page)["headline"] == "1 to 2"


@pytest.mark.parametrize("case", TYPED, ids=lambda case: case["description"])
def test_the_page_is_as_the_vector_says(client, case):
    [typed] = case["given"]
    page = client.get("/thread", query_string={"count": "", **typed})
    if "errors" in case["expect"]:
        assert page.status_code == 422
        assert "data-empty" in page.text
        assert any(sentence in unescape(page.text) for sentence in case["expect"]["errors"].values())
    else:
        assert page.status_code == 200
        assert {name: slots_of(page)[name] for name in case["expect"]} == case["expect"]


def test_before_anything_is_asked_nothing_is_wrong(client):
    page = client.get("/thread")
    assert page.status_code == 200
    assert "data-empty" in page.text
    assert 'class="error"' not in page.text
    assert 'name="count" inputmode="decimal" maxlength="40" value="14"' in page.text


@pytest.mark.parametrize(
    ("fields", "sentence"),
    [
        ({"stitches": "-1"}, "Write stitches in digits"),
        ({"stitches": "<script>alert(1)</script>"}, "Write stitches in digits"),
        ({"stitches": "9" * 10_000}, "Write stitches in digits"),
        ({"count": "nan"}, "Write a count"),
        ({"strands": "two"}, "Write strands"),
        ({"working": "3 fingers"}, "Write a length"),
        ({"skein": "1/0"}, "Write how long it is"),
        ({"gave": "0"}, "Write the crosses"),
    ],
)
def test_what_cannot_be_meant_is_said_beside_it_with_what_was_typed_still_there(client, fields, sentence):
    page = client.get("/thread", query_string=ASKED | fields)
    assert page.status_code == 422
    assert page.text.count('class="error"') == 1
    assert sentence in page.text
    assert "<script>alert" not in page.text
    assert (
        unescape(re.search(rf'name="{next(iter(fields))}"[^>]*value="([^"]*)"', page.text).group(1))
        == (next(iter(fields.values()))[:40])
    )
    assert "headline" not in slots_of(page) or slots_of(page)["headline"] == ""


def test_what_is_wrong_with_how_it_is_worked_is_not_folded_away(client):
    assert "<details open>" in client.get("/thread", query_string=ASKED | {"gave": "x"}).text
    assert "<details>" in client.get("/thread", query_string=ASKED).text


@pytest.mark.parametrize(
    "query", ["stitches=%ff%fe", "stitches=%00", "stitches=1&stitches=2", "unit=feet", "by=x"]
)
def test_an_address_that_no_form_makes_is_answered_all_the_same(client, query):
    assert client.get(f"/thread?{query}").status_code in (200, 422)


def test_every_kind_of_the_table_is_offered_and_no_other(client):
    assert tuple(kinds()) == KINDS
    offered = re.findall(r'<option value="([^"]*)"', client.get("/thread").text)
    assert tuple(offered) == KINDS


def test_she_is_answered_in_her_own_unit(alice):
    hers = {"hand": "left", "unit": "cm", "bedtime": "22:30", "week_start": "0", "zone": "Europe/London"}
    assert alice.post("/account/settings", data=hers).status_code == 200
    asked = {"stitches": "2400", "count": "14"}
    assert (
        slots_of(alice.get("/thread", query_string=asked))["amount"]
        == here("quick", [asked | {"unit": "cm"}])["amount"]
    )


def test_who_is_signed_in_is_led_to_her_own_thread_and_nobody_else(client, alice, charlie, new_project):
    project = new_project(alice, title="Quince tree")
    page = alice.get("/thread").text
    for address in (f"/projects/{project}/thread", "/thread/shopping", "/thread/stash"):
        assert f'href="{address}"' in page
    assert "Quince tree" not in charlie.get("/thread").text
    assert 'href="/thread/shopping"' not in client.get("/thread").text


def test_thread_is_one_of_the_places(client):
    assert '<a href="/thread" aria-current="page">' in client.get("/thread").text
    assert '<a href="/thread">' in client.get("/cloth").text
