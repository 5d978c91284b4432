"""The screen set by a bank card, on invented phones: once, and again where it must be."""

import json

from playwright.sync_api import expect

from tests.cloth.counter import slot
from tests.cloth.glass import choose, edge, lay_card, move_to, set_already


def test_it_is_set_once_and_again_when_the_zoom_changes(phone):
    page = phone()
    set_already(page, 3)
    kept = page.evaluate("localStorage.getItem('evenrow.screen')")
    assert json.loads(kept)["ratio"] == 3
    page.reload()
    expect(slot(page, "share")).to_be_visible()
    choose(page, "Lines")
    device = page.context.new_cdp_session(page)
    as_it_was = {"width": 390, "height": 844, "deviceScaleFactor": 3, "mobile": True}
    zoomed = {"width": 468, "height": 1012, "deviceScaleFactor": 2.5, "screenWidth": 390, "screenHeight": 844}
    device.send("Emulation.setDeviceMetricsOverride", as_it_was | zoomed)
    expect(page.get_by_text("The zoom has changed since this screen was set. Set it again.")).to_be_visible()
    expect(slot(page, "lines")).to_be_hidden()
    page.reload()
    expect(page.get_by_text("The zoom has changed since this screen was set. Set it again.")).to_be_visible()
    device.send("Emulation.setDeviceMetricsOverride", as_it_was)
    expect(slot(page, "share")).to_be_visible()  # as it was, it is right again
    assert page.evaluate("localStorage.getItem('evenrow.screen')") == kept


def test_pinched_larger_it_shows_no_figure(phone):
    page = phone()
    set_already(page, 3)
    device = page.context.new_cdp_session(page)
    device.send("Emulation.setPageScaleFactor", {"pageScaleFactor": 1.5})
    expect(page.get_by_text("The page is pinched larger.")).to_be_visible()
    expect(slot(page, "share")).to_be_hidden()
    device.send("Emulation.setPageScaleFactor", {"pageScaleFactor": 1})
    expect(slot(page, "share")).to_be_visible()


def test_sides_that_do_not_agree_are_asked_for_again(phone):
    page = phone()
    lay_card(page, 3, off=12)
    expect(page.get_by_role("alert")).to_contain_text("Across and down differ by 1.3\u00a0%")
    expect(slot(page, "step")).to_have_text("1 of 2")
    assert page.evaluate("localStorage.getItem('evenrow.screen')") is None
    set_already(page, 3)


def test_a_size_that_cannot_be_is_refused_where_it_was_set(phone):
    page = phone()
    move_to(page, 121, 3)
    page.get_by_role("button", name="It fits").click()
    expect(page.get_by_role("alert")).to_contain_text("57 pixels an inch: no screen is so coarse")
    expect(slot(page, "step")).to_have_text("1 of 2")
    edge(page).focus()
    page.keyboard.press("PageDown")
    expect(edge(page)).to_have_attribute("aria-valuenow", "131")
    expect(page.get_by_role("alert")).to_be_empty()


def test_set_upright_it_measures_lying_down(phone):
    page = phone()
    set_already(page, 3)
    device = page.context.new_cdp_session(page)
    lying = {"angle": 90, "type": "landscapePrimary"}
    screen = {"width": 844, "height": 390, "deviceScaleFactor": 3, "mobile": True, "screenOrientation": lying}
    device.send("Emulation.setDeviceMetricsOverride", screen)
    expect(page.locator("canvas")).to_have_js_property("clientWidth", 844)
    assert slot(page, "share").is_visible()
    page.get_by_role("button", name="Set the screen again").click()
    expect(page.get_by_text("Hold the phone upright to lay a card on it.")).to_be_visible()


def test_a_wide_screen_takes_the_card_crossways(phone):
    page = phone(1, 1024, 768)
    expect(page.locator(".crossways")).to_be_visible()
    lay_card(page, 1, side="long")
    expect(slot(page, "share")).to_be_visible()
