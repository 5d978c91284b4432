"""The screen as an instrument, on invented phones of known density, measured in the pixels they show."""

import time
from itertools import pairwise

import pytest
from playwright.sync_api import expect

from tests.browser.phones import axe_finds_nothing, lose_network
from tests.cloth.counter import slot
from tests.cloth.glass import LIVE, PPI, choose, set_already, shown


@pytest.mark.parametrize("ratio", PPI)
def test_set_by_a_card_an_inch_is_an_inch_to_half_a_per_cent(phone, ratio):
    page = phone(ratio)
    set_already(page, ratio)
    expect(slot(page, "share")).to_contain_text("±")
    expect(slot(page, "over")).to_contain_text("it may be")
    runs = shown(page, 50 / 390, "down")  # only whole inches reach in so far
    ink = runs[1][0]
    marks = [start for colour, start, _ in runs if colour == ink]
    inches = [(after - before) / PPI[ratio] for before, after in pairwise(marks)]
    assert len(inches) >= 3
    assert inches == pytest.approx([1] * len(inches), rel=0.005)
    assert (marks[-1] - marks[0]) / len(inches) / PPI[ratio] == pytest.approx(1, rel=0.002)
    sixteenths = [start for colour, start, _ in shown(page, 8 / 390, "down") if colour == ink]
    assert len([one for one in sixteenths if one < marks[1]]) == 16


@pytest.mark.parametrize("ratio", [1, 2.625])
def test_lines_are_laid_at_the_count_asked_for(phone, ratio):
    page = phone(ratio)
    set_already(page, ratio)
    choose(page, "Lines")
    slider = page.get_by_role("slider", name="Lines an inch")
    for count in ("14", "28.1", "36"):
        slider.fill(count)
        expect(slot(page, "lines")).to_have_text(count)
        black = [start for colour, start, end in shown(page, 0.5, "down") if colour == "0,0,0"]
        laid = black[1:-1]  # away from what is above and below the glass
        assert (len(laid) - 1) / (laid[-1] - laid[0]) * PPI[ratio] == pytest.approx(float(count), rel=0.005)
        assert {colour for colour, start, _ in shown(page, 0.5, "down") if laid[0] <= start < laid[-1]} == {
            "0,0,0",
            "255,255,255",
        }


def test_the_count_is_read_with_its_error_and_can_be_used(phone):
    page = phone()
    set_already(page, 3)
    choose(page, "Lines")
    expect(slot(page, "interval")).to_have_text("12.9 to 15.1")
    expect(slot(page, "metric")).to_have_text("50 to 60")
    page.get_by_role("button", name="A tenth more").click()
    expect(slot(page, "lines")).to_have_text("14.1")
    page.get_by_label("Dark to dark").select_option("2 in")
    expect(slot(page, "interval")).to_have_text("13.5 to 14.7")
    expect(slot(page, "made")).to_contain_text("from the bands")
    use = page.get_by_role("link", name="Use this count").get_attribute("href")
    assert use.endswith("/cloth/size?count=14.1&error=0.57")


def late(route):
    time.sleep(0.5)
    route.continue_()


@pytest.mark.parametrize("size", [(360, 640), (390, 844)])
def test_nothing_moves_and_all_is_within_reach(phone, size):
    page = phone(2, *size)
    set_already(page, 2)
    choose(page, "Centimetres")
    choose(page, "Lines")
    use = page.get_by_role("link", name="Use this count").bounding_box()
    assert use["y"] + use["height"] <= size[1]
    assert page.evaluate("document.documentElement.scrollWidth") <= size[0]
    assert page.evaluate("document.documentElement.scrollHeight") <= size[1]
    page.route("**/js/cloth/ruler.js", late)  # drawn before the script has looked at the screen
    page.reload()
    page.wait_for_selector(LIVE)
    page.wait_for_timeout(300)
    assert page.evaluate("shifted") == 0


def test_axe_finds_nothing(phone):
    page = phone(2)
    axe_finds_nothing(page)
    set_already(page, 2)
    axe_finds_nothing(page)
    choose(page, "Lines")
    axe_finds_nothing(page)


def test_without_scripts_it_says_what_it_needs(new_context, server):
    page = new_context(java_script_enabled=False).new_page()
    page.goto(f"{server.url}/cloth")
    page.get_by_role("link", name="Ruler").click()
    expect(page.locator("noscript p")).to_be_visible()
    expect(page.locator("noscript p")).to_contain_text("switch scripts on for this page, or use a tape")
    expect(page.get_by_role("button")).to_have_count(0)


@pytest.mark.browser_context_args(service_workers="allow")
def test_it_opens_and_measures_without_network(new_context, server):
    page = lose_network(new_context(), f"{server.url}/cloth")
    page.goto(f"{server.url}/cloth/ruler")
    page.wait_for_selector(LIVE)
    set_already(page, 1)
    choose(page, "Lines")
    expect(slot(page, "interval")).to_contain_text(" to ")
