"""A legend in a real browser at phone size: forty threads pasted, put right, estimated; axe on its pages."""

import pytest
from playwright.sync_api import expect

from tests.browser.phones import Stitcher, complaints, in_nobodys_way
from tests.threads.forty import FULL, NAMES, TEXT

MOST = 60  # touches beyond the paste
# Counts what a finger does: what it presses, and every key; kept from page to page.
COUNTER = """() => {
  const count = () => sessionStorage.setItem('touches', Number(sessionStorage.getItem('touches') ?? 0) + 1);
  addEventListener('pointerdown', count, true);
  addEventListener('keydown', count, true);
}"""


@pytest.fixture
def her(page, server):
    """A stitcher with a project, whose pages must not complain on their console."""
    said = complaints(page)
    stitcher = Stitcher.begin(page.context, server)
    yield stitcher
    refused = "Failed to load resource: the server responded with a status of 422"
    assert [text for text in said if not text.startswith(refused)] == []


def retype(page, field, wrong, right):
    """Tap at the end of a field, take out what is wrong, key by key, and type what is right."""
    field.tap()
    page.keyboard.press("End")
    for _ in wrong:
        page.keyboard.press("Backspace")
    page.keyboard.type(right)


def look_over(page, text):
    page.get_by_label("A line for each thread").fill(text)
    page.get_by_role("button", name="Look it over").tap()
    expect(page.get_by_role("heading", name="What was understood")).to_be_visible()


def touches(page):
    return int(page.evaluate("Number(sessionStorage.getItem('touches') ?? 0)"))


def test_forty_threads_are_pasted_put_right_and_estimated_with_few_touches(page, server, her, capsys):
    page.add_init_script(f"({COUNTER})()")
    page.goto(f"{server.url}/projects/{her.project}/thread")
    page.get_by_role("link", name="Paste it").tap()
    expect(page.get_by_label("A line for each thread")).to_be_focused()
    page.keyboard.insert_text(TEXT)  # the paste
    page.get_by_role("button", name="Look it over").tap()
    expect(page.get_by_role("status")).to_have_text("34 lines are understood. 6 lines want a look:")
    retype(page, page.locator("#f-full-3"), "O3", "23")
    page.locator("#f-full-9").tap()
    page.keyboard.type(str(FULL[9]))
    retype(page, page.locator("#f-strands-14"), "30", "3")
    page.locator("#f-thread-20").tap()
    page.keyboard.type("Reed")
    retype(page, page.locator("#f-full-27"), "l", "")
    page.locator("#f-full-33").tap()
    page.keyboard.type(str(FULL[33]))
    page.get_by_role("button", name="Keep 40 lines").tap()
    lines = page.locator("ol.legend li")
    expect(lines).to_have_count(40)
    for line in lines.all():
        expect(line.locator(".units")).to_contain_text("skein")
    expect(page.get_by_text(f"{sum(FULL):,} full crosses in all")).to_be_visible()
    expect(lines.nth(3)).to_contain_text(f"{FULL[3]} full")
    assert lines.locator(".name").all_inner_texts() == [*NAMES]
    with capsys.disabled():
        print(f"\nforty threads, six put right: {touches(page)} touches beyond the paste")
    assert 10 < touches(page) <= MOST


def test_what_is_wrong_stays_as_typed_until_it_is_right_or_left_out(page, server, her):
    page.goto(f"{server.url}/projects/{her.project}/thread/paste")
    look_over(page, "X  Madder  2 strands  1,24O\no  Weld  2 strands  ?\n/  Woad  2  7")
    field = page.locator("#f-full-0")
    field.fill("1,24o")
    page.get_by_role("button", name="Keep 3 lines").tap()
    expect(field).to_have_value("1,24o")
    field.fill("1,240")
    page.get_by_role("listitem").filter(has_text="Weld").get_by_label("Leave it out").check()
    page.get_by_role("button", name="Keep 3 lines").tap()
    expect(page.locator("ol.legend .name")).to_have_text(["Madder", "Woad"])


def test_enter_keeps_what_was_typed_and_opens_nothing(page, server, her):
    page.goto(f"{server.url}/projects/{her.project}/thread/paste")
    look_over(page, "X  Madder  2 strands  1,24O\no  Weld  2 strands  30\n/  Woad  2 strands  7")
    page.locator("#f-full-0").fill("1,240")
    page.keyboard.press("Enter")
    expect(page.locator("ol.legend .name")).to_have_text(["Madder", "Weld", "Woad"])
    page.get_by_role("link", name="Write a line").tap()
    page.get_by_label("Thread, as printed").fill("Indigo")
    page.keyboard.press("Enter")
    expect(page.locator("ol.legend .name")).to_have_count(4)


def test_a_line_that_was_understood_can_be_opened_and_put_right(page, server, her):
    page.goto(f"{server.url}/projects/{her.project}/thread/paste")
    look_over(page, "X  Madder  2 strands  1,240\no  Weld  2 strands  30")
    page.get_by_role("button", name="Weld").tap()
    page.get_by_label("Backstitch").fill("12")
    page.get_by_label("Kind").select_option("Silk")
    page.get_by_role("button", name="Keep 2 lines").tap()
    expect(page.locator("ol.legend li").nth(1)).to_contain_text("2 strands · 30 full, 12 back")


def test_a_line_is_written_with_three_fields_and_her_own_figure_follows(page, server, her):
    page.goto(f"{server.url}/projects/{her.project}/thread/lines/new")
    page.get_by_label("Symbol").fill("X")
    page.get_by_label("Thread, as printed").fill("Madder")
    page.get_by_label("Full", exact=True).fill("12,000")
    page.get_by_role("button", name="Keep", exact=True).tap()
    before = page.locator(".units").inner_text()
    page.get_by_role("link", name="Your own figure").tap()
    page.get_by_label("Crosses it gave").first.fill("30")
    page.get_by_role("button", name="Keep").first.tap()
    expect(page.get_by_text("30 crosses from one length of 18 in")).to_be_visible()
    page.get_by_role("link", name="Legend").tap()
    expect(page.get_by_text("Reckoned from your own figure: one length on")).to_be_visible()
    assert page.locator(".units").inner_text() != before


def test_nothing_stands_in_anyones_way(page, server, her):
    address = f"{server.url}/projects/{her.project}/thread"
    page.goto(address)
    in_nobodys_way(page)
    page.goto(f"{address}/paste")
    in_nobodys_way(page)
    look_over(page, f"{TEXT}\n;  Walnut + Silver filament  1+1  90\n:  {'Long' * 25}  2  9")
    in_nobodys_way(page)
    page.get_by_role("button", name="All of it").first.tap()
    expect(page.get_by_label("Knots")).to_be_visible()
    in_nobodys_way(page)
    for box in page.get_by_label("Leave it out").all():
        box.check()
    page.get_by_role("button", name="Keep 42 lines").tap()
    expect(page.locator("ol.legend li")).to_have_count(36)
    in_nobodys_way(page)
    for path in ("/readings", "/lines/new"):
        page.goto(address + path)
        in_nobodys_way(page)
    page.goto(address)
    page.locator("ol.legend a").nth(-2).tap()
    expect(page.get_by_label("Thread 2")).to_be_visible()
    for more in page.locator("summary").all():
        more.tap()
    in_nobodys_way(page)
