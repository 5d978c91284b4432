"""Figures that no cloth has, or that fit another unit: asked back by the page."""

import re
from html import unescape

from tests.cloth.gauged import ask


def test_a_figure_no_cloth_can_have_is_asked_back_with_one_touch_to_change_it(client):
    page = ask(client, "28", "2", unit="cm")
    assert page.status_code == 422
    assert 'data-slot="count"></strong>' in page.text  # no figure that is not meant
    link = re.search(r'href="([^"]+)">Was the tape in inches\? It would be 14\.</a>', page.text)
    changed = client.get(unescape(link.group(1)))
    assert changed.status_code == 200
    assert "count Aida" in changed.text
    assert 'name="unit" value="in" checked' in changed.text
    assert 'name="counted" inputmode="decimal" enterkeyhint="next" maxlength="16" value="28"' in changed.text


def test_figures_the_wrong_way_round_are_asked_back_and_changed(client):
    page = ask(client, "2", "28")
    link = re.search(r'href="([^"]+)">Figures the wrong way round\? It would be 14\.</a>', page.text)
    assert "count Aida" in client.get(unescape(link.group(1))).text


def test_a_script_is_told_what_may_have_been_meant(client):
    answer = client.get("/cloth/gauge.json?squares=28&length=2&unit=cm")
    assert answer.status_code == 422
    assert answer.json["errors"] == {"squares": [answer.json["error"]], "length": [answer.json["error"]]}
    assert answer.json["perhaps"][0] == {
        "change": "unit",
        "count_per_inch": 14,
        "sentence": "Was the tape in inches? It would be 14.",
    }


def test_a_figure_that_fits_the_other_unit_is_answered_and_asked_back(client):
    page = ask(client, "55", "10")
    assert page.status_code == 200
    assert "Coarser than 6." in page.text
    assert "Was the tape in centimetres? It would be 14.</a>" in page.text
