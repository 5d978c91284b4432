"""A piece of cloth, a class, and the stash: a real browser at phone size."""

import pytest
from playwright.sync_api import expect

from tests.browser.phones import Stitcher, axe_finds_nothing, complaints, lose_network
from tests.cloth.counter import SHIFTS, slot

REFUSED = "the server responded with a status of 422"


def alive(page, address):
    page.goto(address)
    page.wait_for_selector("[data-bench][data-live]")


def looked_at(page):
    """Nothing moved by itself, nothing is wider than the phone, and axe finds nothing, dark and light."""
    assert page.evaluate("shifted") == 0
    assert page.evaluate("document.documentElement.scrollWidth") <= page.viewport_size["width"]
    axe_finds_nothing(page)


@pytest.mark.browser_context_args(service_workers="allow")
def test_without_network_a_piece_and_a_class_are_answered_from_a_cold_start(new_context, server):
    page = lose_network(new_context(), f"{server.url}/cloth")
    page.set_viewport_size({"width": 360, "height": 640})
    page.add_init_script(SHIFTS)
    alive(page, f"{server.url}/cloth/piece")
    page.get_by_label("Wide", exact=True).press_sequentially("18")
    page.get_by_label("High", exact=True).press_sequentially("27")
    expect(slot(page, "headline")).to_have_text("182 × 308")
    page.get_by_label("Stitches wide").press_sequentially("140")
    page.get_by_label("Stitches high").press_sequentially("168")
    expect(slot(page, "headline")).to_have_text("It fits")
    page.get_by_label("Wide", exact=True).fill("12")  # no keyboard of figures has a space or a slash
    page.get_by_label("Part of an inch, wide").select_option("1/2")
    expect(slot(page, "spare")).to_contain_text("Short by 2½ in across")
    page.get_by_text("Pieces as they are sold").tap()
    page.get_by_role("link", name="Half a yard").tap()
    expect(slot(page, "headline")).to_have_text("It fits")
    page.get_by_text("Margin, and cloth that is not square").tap()
    page.get_by_label("High", exact=True).fill("x")
    expect(slot(page, "headline")).to_be_hidden()
    expect(page.get_by_text("Write a length, like 18, 17 1/2 or 45 cm.")).to_be_visible()
    looked_at(page)
    page.get_by_label("High", exact=True).fill("27")
    page.get_by_role("link", name="Cloth for a class").tap()  # the design comes along
    page.wait_for_selector('[data-bench="class"][data-live]')
    page.get_by_label("How many").press_sequentially("10")
    page.get_by_role("link", name="55 in").tap()
    expect(slot(page, "headline")).to_have_text("60 in")
    expect(page.locator("svg .cut")).to_have_count(10)
    page.get_by_label("A cut").tap()
    page.get_by_label("Cut wide", exact=True).fill("8")
    page.get_by_label("Cut high", exact=True).fill("10")
    page.get_by_label("Out of a piece").tap()
    page.get_by_label("Piece wide", exact=True).fill("36")
    page.get_by_label("Piece high", exact=True).fill("27")
    expect(slot(page, "headline")).to_have_text("Enough")
    looked_at(page)


def test_what_the_gauge_measured_is_kept_and_a_project_finds_it(page, server):
    said = complaints(page)
    project = Stitcher.arrive(page.context, server).new_project("Quince tree", width="140")
    page.add_init_script(SHIFTS)
    page.goto(f"{server.url}/cloth")
    page.wait_for_selector('[data-island="gauge"][data-live]')
    page.get_by_label("Threads").tap()
    page.locator('[name="counted"]').first.fill("112")
    page.locator('[name="length"]').first.fill("4")
    page.get_by_role("button", name="Keep this cloth").tap()
    expect(page.get_by_label("Count along")).to_have_value("28")
    page.get_by_label("Name").fill("Undyed linen")
    page.get_by_label("Width, in").fill("17 1/2")
    page.get_by_label("Length, in").fill("26")
    looked_at(page)
    page.get_by_role("button", name="Keep", exact=True).tap()
    expect(page.get_by_text("threads an inch")).to_be_visible()
    looked_at(page)
    page.get_by_role("link", name="What goes on it").tap()
    page.wait_for_selector("[data-bench][data-live]")
    expect(page.get_by_role("link", name="Quince tree")).to_be_visible()
    page.get_by_label("Stitches wide").fill("140")
    page.get_by_label("Stitches high").fill("98")
    expect(page.locator("#hers")).to_contain_text("Undyed linen")
    page.goto(f"{server.url}/projects/{project}")
    page.get_by_role("link", name="1 piece in your stash takes it").tap()
    expect(page.get_by_role("link", name="Undyed linen")).to_be_visible()
    looked_at(page)
    assert said == []
