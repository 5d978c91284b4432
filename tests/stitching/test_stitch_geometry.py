import pytest

from tests.browser.phones import axe_finds_nothing
from tests.stitching.conftest import ago

SIZES = [(360, 640), (390, 844), (320, 568)]
BOXES = """() => [...document.querySelectorAll(".stitch button, nav a")]
  .filter((node) => node.checkVisibility())
  .map((node) => [node.dataset.act || node.textContent.trim(), node.getBoundingClientRect().toJSON()])"""
FONTS = "(selector) => parseFloat(getComputedStyle(document.querySelector(selector)).fontSize)"
SHEETS = ["map", "says", "step", "bare", "more", "sitting", "done"]


@pytest.fixture
def at(desk):
    desk.open(expected=140, frame="hoop")

    def resize(width, height):
        desk.page.set_viewport_size({"width": width, "height": height})
        return desk.page

    return resize


def test_the_field_takes_two_fifths_of_the_screen_where_the_thumb_is(at):
    for width, height in SIZES:
        page = at(width, height)
        box = page.locator(".field").bounding_box()
        places = page.locator(".places").bounding_box()
        assert box["width"] * box["height"] >= 0.4 * width * height
        assert box["y"] + box["height"] == pytest.approx(places["y"], abs=12)
        assert page.evaluate("document.documentElement.scrollHeight") == height


def test_whatever_is_touched_is_at_least_48_px_and_on_the_screen(at):
    for width, height in SIZES:
        for act, box in at(width, height).evaluate(BOXES):
            assert min(box["width"], box["height"]) >= 48, (width, act)
            assert box["left"] >= 0, (width, act)
            assert box["right"] <= width, (width, act)


def test_row_and_count_are_read_at_arms_length(at):
    # 65 cm and 40 px: the product's own measure; common practice, no source.
    for width, height in SIZES:
        page = at(width, height)
        assert page.evaluate(FONTS, ".name") >= 40
        assert page.evaluate(FONTS, ".big") >= 40
    assert at(390, 844).evaluate(FONTS, ".big") == pytest.approx(112, abs=1)


def test_the_left_hand_has_it_mirrored(desk, at):
    page = at(360, 640)
    right = dict(page.evaluate(BOXES))
    hers = {"unit": "in", "bedtime": "22:30", "week_start": "0", "zone": "Europe/London"}
    desk.post("/account", hand="left", **hers)
    page = desk.open()
    left = dict(page.evaluate(BOXES))
    for act in ("undo", "done", "sitting", "back"):
        assert left[act]["left"] == pytest.approx(360 - right[act]["right"], abs=1.5), act


def test_nothing_moves_while_the_page_loads_or_is_tapped(desk):
    desk.page.add_init_script("""
      window.shifts = [];
      new PerformanceObserver((list) => shifts.push(...list.getEntries().map((entry) => entry.value)))
        .observe({ type: "layout-shift", buffered: true });""")
    page = desk.open(expected=140, frame="hoop")
    page.wait_for_timeout(500)
    assert page.evaluate("shifts") == []
    desk.tap(12)
    page.wait_for_timeout(500)
    assert sum(page.evaluate("shifts")) < 0.0002  # "9 in all" makes room for "10 in all"


def test_axe_finds_nothing_on_the_page_or_in_its_sheets(desk, at):
    page = at(360, 640)
    desk.tap(10)
    axe_finds_nothing(page)
    for act in SHEETS:
        desk.act(act)
        page.locator("dialog").wait_for()
        axe_finds_nothing(page)
        page.keyboard.press("Escape")
        page.locator("dialog").wait_for(state="detached")


def test_the_settings_hand_reaches_the_page(desk):
    desk.project()
    html = desk.page.request.get(f"{desk.server.url}/projects/{desk.id}/stitch").text()
    assert 'data-hand="right"' in html


def test_figures_of_five_digits_stay_on_the_screen(desk):
    desk.project(width=10_000, height=10_000, expected=250)
    many = [
        {"kind": "stitches", "row": row, "by": 10_000, "at": ago(hours=1)} for row in range(9_940, 10_000)
    ]
    desk.journal(*many, *[{"kind": "stitches", "row": 10_000, "by": 10_000} for _ in range(2)])
    desk.open()
    for width, height in SIZES:
        desk.page.set_viewport_size({"width": width, "height": height})
        assert (desk.slot("row"), desk.slot("row_stitches")) == ("10000", "20000")
        assert desk.page.evaluate("document.documentElement.scrollWidth") == width
        for act, box in desk.page.evaluate(BOXES):
            assert box["right"] <= width, (width, act)


def test_a_notice_of_the_phone_lies_over_neither_row_nor_count(desk):
    page = desk.open()
    page.context.clear_cookies()
    desk.tap()
    notice = page.locator(".notice", has_text="Sign in to send")
    notice.wait_for()
    assert notice.bounding_box()["y"] >= page.locator(".field").bounding_box()["y"]
    desk.errors.clear()  # that the house answered 401
