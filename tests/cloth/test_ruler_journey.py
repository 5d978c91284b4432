"""The screen as an instrument, on invented phones of known density, measured in the pixels they show."""

import json
import time
from itertools import pairwise

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import expect

from tests.browser.phones import complaints, lose_network
from tests.cloth.glass import CARD, PPI, shown

LIVE = '[data-island="ruler"][data-live]'
SHIFTS = """
  window.shifted = 0;
  new PerformanceObserver((list) => {
    for (const entry of list.getEntries()) window.shifted += entry.value;
  }).observe({ type: "layout-shift", buffered: true });
"""


@pytest.fixture
def phone(browser, browser_context_args, server):
    """Open the ruler on a phone of some pixel ratio; what the browser complains of must stay empty."""
    said, opened = [], []

    def take(ratio=3, width=390, height=844, **more):
        screen = {"device_scale_factor": ratio, "viewport": {"width": width, "height": height}}
        context = browser.new_context(**{**browser_context_args, **screen, **more})
        opened.append(context)
        page = context.new_page()
        page.add_init_script(SHIFTS)
        said.append(complaints(page))
        page.goto(f"{server.url}/cloth/ruler")
        page.wait_for_selector(LIVE)
        return page

    yield take
    for context in opened:
        context.close()
    assert [text for one in said for text in one] == []


def slot(page, name):
    return page.locator(f'[data-slot="{name}"]')


def edge(page):
    return page.get_by_role("slider", name="Edge of the card")


def move_to(page, pixels, ratio):
    """Drag the edge near, then step it a pixel at a time."""
    box = edge(page).bounding_box()
    x, y = box["x"] + box["width"] / 2, box["y"] + box["height"] / 2
    by = (pixels - int(edge(page).get_attribute("aria-valuenow"))) / ratio
    down = edge(page).get_attribute("aria-orientation") == "vertical"
    page.mouse.move(x, y)
    page.mouse.down()
    page.mouse.move(x + (0 if down else by), y + (by if down else 0), steps=4)
    page.mouse.up()
    left = pixels - int(edge(page).get_attribute("aria-valuenow"))
    assert abs(left) <= 4
    for _ in range(abs(left)):
        page.get_by_role("button", name="A pixel larger" if left > 0 else "A pixel smaller").click()
    expect(edge(page)).to_have_attribute("aria-valuenow", str(pixels))


def drawn(page):
    """Measure the drawn card on the glass, beside what is written on it."""
    if edge(page).get_attribute("aria-orientation") == "horizontal":
        return [end - start for _, start, end in shown(page, 0.5, "across")]
    return [
        end - start
        for _, start, end in shown(page, 0.45 if page.viewport_size["width"] > 600 else 0.9, "down")
    ]


def lay_card(page, ratio, off=0, side="short"):
    for step, pixels in (("1 of 2", CARD[side]), ("2 of 2", CARD["short"])):
        expect(slot(page, "step")).to_have_text(step)
        pixels = round(pixels * PPI[ratio] / 25.4) + (off if step == "2 of 2" else 0)
        move_to(page, pixels, ratio)
        assert pixels in drawn(page)
        page.get_by_role("button", name="It fits").click()


def set_already(page, ratio):
    lay_card(page, ratio)
    expect(slot(page, "share")).to_be_visible()


def choose(page, name):
    page.locator("label", has_text=name).click()


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
    assert (
        page.get_by_role("link", name="Use this count")
        .get_attribute("href")
        .endswith("/cloth/size?count=14.1")
    )


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


@pytest.mark.parametrize("scheme", ["dark", "light"])
def test_axe_finds_nothing(phone, scheme):
    page = phone(2, color_scheme=scheme)
    seen = [Axe().run(page).response["violations"]]
    set_already(page, 2)
    seen.append(Axe().run(page).response["violations"])
    choose(page, "Lines")
    seen.append(Axe().run(page).response["violations"])
    assert seen == [[], [], []]


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
