"""Size and cut at the shop counter in a real browser: both languages alike, to scale, without network."""

import pytest
from playwright.sync_api import expect

from tests.browser.phones import axe_finds_nothing, lose_network
from tests.cloth.counter import SHIFTS
from tests.cloth.languages import folder_of
from tests.cloth.sized_page import VECTORS, disagreements, there

LIVE = '[data-island="size"][data-live]'
FULL = "?width=140&height=168&count=28&over=2&finish=framed&held=hoop&unit=in"
BOX = """(name) => {
  const { width, height } = document.querySelector(`[data-shape="${name}"]`).getBoundingClientRect();
  return [width, height];
}"""


def slot(page, name):
    return page.locator(f'[data-slot="{name}"]').first


def test_the_page_says_and_draws_alike_in_both_languages(page, server):
    page.goto(f"{server.url}/health")
    folder = folder_of(server.url)
    found = there(page, folder, [case["given"] for case in VECTORS])
    for case, answer in zip(VECTORS, found, strict=True):
        assert answer == case["expect"], case["description"]
    assert disagreements(page, folder, cases=200, seed=5) == []


def test_the_cut_is_answered_cold_without_network_or_account_and_to_scale(
    browser, browser_context_args, server
):
    context = browser.new_context(**{**browser_context_args, "service_workers": "allow"})
    page = lose_network(context, f"{server.url}/cloth")
    said = []
    page.on("pageerror", lambda error: said.append(str(error)))
    page.add_init_script(SHIFTS)
    page.goto(f"{server.url}/cloth")
    page.get_by_role("link", name="Size and cut").tap()
    page.wait_for_selector(LIVE)
    for name, typed in (("Stitches wide", "140"), ("Stitches high", "168"), ("Count", "28")):
        page.get_by_label(name, exact=True).press_sequentially(typed)
        page.keyboard.press("Enter")
    page.get_by_label("Two").tap()
    expect(slot(page, "cut")).to_have_text("15 × 17 in")
    page.get_by_text("Margin, frame and unit").tap()
    page.get_by_label("Framed").tap()
    expect(slot(page, "cut")).to_have_text("16 × 18 in")
    expect(slot(page, "why")).to_have_text("framed and laced")
    assert page.evaluate("shifted") == 0
    check_scale(page)
    check_bad_input(page)
    page.goto(
        f"{server.url}/cloth/size{FULL.replace('140', '98')}"
    )  # an address that the worker has no page of
    expect(slot(page, "cut")).to_have_text("13 × 18 in")
    context.close()
    assert said == []


def check_scale(page):
    """Against a bank card (ISO/IEC 7810 ID-1) on the screen itself, to 0.5 %."""
    card = page.evaluate(BOX, "card")
    assert card[0] / card[1] == pytest.approx(85.60 / 53.98, rel=0.005)
    for name, inches in (("design", (10, 12)), ("cut", (16, 18))):
        shown = page.evaluate(BOX, name)
        for pixels, side in zip(shown, inches, strict=True):
            assert pixels / card[0] == pytest.approx(side * 25.4 / 85.60, rel=0.005)


def check_bad_input(page):
    count = page.get_by_label("Count", exact=True)
    for typed in ("500", "0", "-28", "28 <b>"):
        count.fill(typed)
        expect(slot(page, "cut")).to_be_hidden()
        expect(page.get_by_text("Write a count from 1 to 100")).to_be_visible()
        expect(count).to_have_value(typed)
    count.fill("28,0")
    expect(slot(page, "cut")).to_have_text("16 × 18 in")
    expect(page.locator("[aria-invalid]")).to_have_count(0)


@pytest.mark.parametrize(("width", "height"), [(360, 640), (390, 844)])
def test_the_page_can_be_used_by_everyone_and_nothing_moves(page, server, width, height):
    page.set_viewport_size({"width": width, "height": height})
    page.add_init_script(SHIFTS)
    page.goto(f"{server.url}/cloth/size{FULL}")
    page.wait_for_selector(LIVE)
    page.get_by_text("Where this comes from").tap()
    page.get_by_text("Margin, frame and unit").tap()
    axe_finds_nothing(page)
    assert page.evaluate("shifted") == 0
    assert page.evaluate("document.documentElement.scrollWidth") <= width
    touched = "main :is(a, button, select, summary, label.tick, .choice label, input.n)"
    heights = page.locator(touched).evaluate_all("(all) => all.map((e) => e.getBoundingClientRect().height)")
    assert min(heights) >= 48


LINES = """(name) => [...document.querySelectorAll(name)].map((element) => {
  const range = document.createRange();
  range.selectNodeContents(element);
  return [new Set([...range.getClientRects()].map(({ top }) => Math.round(top))).size,
    range.getBoundingClientRect().right - element.parentElement.getBoundingClientRect().right];
})"""


@pytest.mark.parametrize("width", [360, 390])
@pytest.mark.parametrize("path", ["/cloth/size", "/cloth/slip"])
@pytest.mark.parametrize(
    "query",
    [
        "width=143&height=171&count=14&held=hand",
        "width=1410&height=1690&count=14&held=scroll",
        "width=597&height=843&count=14&unit=cm&held=hoop",
        "width=10000&height=9999&count=3.3&over=2&unit=cm&held=hand",
    ],
)
def test_the_cut_stands_on_one_line_and_nothing_is_wider_than_the_phone(page, server, width, path, query):
    page.set_viewport_size({"width": width, "height": 640})
    page.goto(f"{server.url}{path}?{query}")
    page.wait_for_selector("main [data-island][data-live]")
    ((lines, over),) = page.evaluate(LINES, "strong.cut")
    assert lines == 1
    assert over <= 0
    assert page.evaluate("document.documentElement.scrollWidth") <= width
    for _lines, over in page.evaluate(LINES, ".sides td"):
        assert over <= 0.5
