"""From the gauge onward: what was measured goes along, and is there again on coming back."""

import re
from urllib.parse import parse_qs, urlsplit

import pytest
from playwright.sync_api import expect

from tests.browser.phones import lose_network
from tests.cloth.counter import first, slot
from tests.cloth.gauged import ask
from webapp.cloth.answer import answer
from webapp.cloth.gauge import INCH, Reading
from webapp.cloth.onward import onward
from webapp.cloth.standards import table

LIVE = '[data-island="gauge"][data-live]'
PAGES = ("Size and cut", "This piece", "Class", "Slip")
UNEVEN = "kind=threads&unit=cm&counted=126&counted=137&length=10&length=10&way=along&way=across"


def handed_on(*readings, kind="squares"):
    return onward(answer([Reading(*reading) for reading in readings], kind, "in", table()))


def value(page, name):
    return page.locator(f'input[name="{name}"]:not([type=radio])')


def test_the_measured_count_goes_along_with_the_longer_side_of_its_error():
    given = handed_on((55, 4 * INCH, INCH / 16))
    found = answer([Reading(55, 4 * INCH, INCH / 16)], "squares", "in", table()).measured
    assert (given["count"], given["over"], given["unit"]) == ("13.75", "1", "in")
    assert found.high - found.count <= float(given["error"]) <= found.high - found.count + 0.01
    assert "across" not in given


# The selvedge upright, a design's width runs across the cloth; there "across" is the count down its height.
def test_cloth_that_is_not_square_goes_along_with_its_ways_in_their_places():
    along, across = (126, 100.0, 1.0), (137, 100.0, 1.0, False, "across")
    given = handed_on(along, across, kind="threads")
    assert (given["count"], given["across"], given["over"]) == ("34.8", "32", "2")


def test_square_cloth_counted_both_ways_goes_along_as_one_count():
    given = handed_on((55, 100.0, 1.0), (56, 100.0, 1.0, False, "across"))
    assert "across" not in given


def test_the_page_leads_on_without_scripts(client):
    page = ask(client, "28", "2").text
    for path in ("size", "piece", "class", "slip"):
        assert f'href="/cloth/{path}?count=14&amp;over=1&amp;unit=in&amp;error=0.62"' in page
    assert "/cloth/size?count" not in ask(client, "500", "2").text


@pytest.mark.parametrize("page_name", PAGES)
def test_one_touch_takes_the_measured_cloth_to_the_page(page, server, said, page_name):
    page.goto(f"{server.url}/cloth/gauge?{UNEVEN}")
    page.wait_for_selector(LIVE)
    link = page.get_by_label("With this count").get_by_role("link", name=page_name)
    query = parse_qs(urlsplit(link.get_attribute("href")).query)
    assert query.keys() == {"count", "across", "over", "unit", "error"}
    link.tap()
    expect(value(page, "count")).to_have_value("34.8")
    expect(value(page, "across")).to_have_value("32")
    expect(page.locator('[name="over"][value="2"]')).to_be_checked()
    expect(page.locator('[name="unit"][value="cm"]')).to_be_checked()
    expect(page.locator(".error")).to_have_count(0)
    if page_name == "Slip":
        expect(value(page, "error")).to_have_value(query["error"][0])


def test_the_links_follow_what_is_typed_and_carry_nothing_of_what_is_not_meant(bench):
    size = bench.get_by_label("More about cloth").get_by_role("link", name="Size and cut")
    expect(size).to_have_attribute("href", re.compile("/cloth/size$"))
    first(bench, "counted").fill("28")
    first(bench, "length").fill("2")
    expect(size).to_have_attribute("href", re.compile(r"/cloth/size\?count=14&over=1&unit=in&error=0\.62$"))
    first(bench, "counted").fill("500")
    expect(size).to_have_attribute("href", re.compile("/cloth/size$"))


def type_in(page):
    page.get_by_label("Threads").tap()
    page.get_by_label("cm", exact=True).tap()
    first(page, "counted").fill("126")
    first(page, "length").fill("10")
    page.get_by_text("Measure with more care").tap()
    page.locator('[name="counted"]').nth(1).fill("137")
    page.locator('[name="length"]').nth(1).fill("10")
    expect(slot(page, "count")).to_have_text("32 and 35")


def shows_again(page):
    page.wait_for_selector(LIVE)
    expect(slot(page, "count")).to_have_text("32 and 35")
    expect(first(page, "counted")).to_have_value("126")
    expect(page.locator('[name="counted"]')).to_have_count(3)
    expect(page.locator('[name="counted"]').nth(1)).to_have_value("137")
    expect(page.get_by_label("cm", exact=True)).to_be_checked()
    expect(page.locator("details").first).to_have_attribute("open", "")


def test_going_back_and_loading_anew_show_the_same_answer(bench):
    type_in(bench)
    bench.reload()
    shows_again(bench)
    bench.get_by_label("With this count").get_by_role("link", name="Size and cut").tap()
    bench.wait_for_url("**/cloth/size?*")
    bench.go_back()
    shows_again(bench)


@pytest.mark.browser_context_args(service_workers="allow")
def test_it_does_so_without_network_too(new_context, server):
    page = lose_network(new_context(), f"{server.url}/cloth")
    page.goto(f"{server.url}/cloth")
    page.wait_for_selector(LIVE)
    type_in(page)
    page.reload()
    shows_again(page)
    page.get_by_label("With this count").get_by_role("link", name="This piece").tap()
    expect(value(page, "count")).to_have_value("34.8")
    page.go_back()
    shows_again(page)


@pytest.mark.browser_context_args(service_workers="allow")
@pytest.mark.parametrize("query", ["counted=28&length=2&unit=in", "squares=28&length=2&unit=in"])
def test_an_address_fills_the_form_without_network(new_context, server, query):
    page = lose_network(new_context(), f"{server.url}/cloth")
    page.goto(f"{server.url}/cloth/gauge?{query}")
    page.wait_for_selector(LIVE)
    expect(first(page, "counted")).to_have_value("28")
    expect(slot(page, "count")).to_have_text("14")


def test_an_empty_form_leaves_the_address_bare(bench, server):
    first(bench, "counted").fill("2")
    expect(bench).to_have_url(f"{server.url}/cloth?kind=squares&unit=in&counted=2&length=")
    first(bench, "counted").fill("")
    expect(bench).to_have_url(f"{server.url}/cloth")


@pytest.mark.parametrize("place", ["/cloth", "/cloth/gauge"])
@pytest.mark.parametrize(
    ("name", "said"), [("squares", "count Aida"), ("threads", "count linen or evenweave")]
)
def test_the_names_a_script_uses_fill_the_form_too(client, place, name, said):
    page = client.get(f"{place}?{name}={28 if name == 'squares' else 56}&length=2&unit=in")
    assert page.status_code == 200
    assert said in page.text
    assert f'value="{name}" checked' in page.text
