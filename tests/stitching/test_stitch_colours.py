"""Passes counted by colour: part stitches, backstitch, knots and beads, as the legend asks for them."""

from playwright.sync_api import expect

from tests.stitching.needles import legend, threads


def passes(desk):
    desk.act("more")
    desk.answer("Passes")


def test_a_legend_asks_for_the_passes_it_has_and_counts_them_by_colour(desk):
    page = legend(desk, height=1, expected=10, step="row")
    desk.tap()
    desk.wait_for("label", "Every row is done")
    passes(desk)
    expect(page.get_by_label("Knots and beads", exact=True)).to_have_count(0)
    for name, colour in (("Part stitches", "Sea green"), ("Backstitch", "Charcoal")):
        section = page.locator("dialog section", has_text=name)
        section.get_by_text("0 laid; count more").click()
        section.locator("summary", has_text=colour).click()
        section.get_by_role("button", name="Lay them").click()
        expect(page.get_by_label(name, exact=True)).to_be_checked()
    expect(page.get_by_role("button", name="It is finished")).to_be_visible()
    assert threads(desk) == {"Sea green": {"part": [10, 10]}, "Charcoal": {"back": [30, 30]}}


def test_backstitch_is_measured_along_its_line(desk):
    page = legend(desk, count=14, over=1)
    passes(desk)
    section = page.locator("dialog section", has_text="Backstitch")
    section.get_by_text("0 laid; count more").click()
    section.locator("summary", has_text="Charcoal").click()
    page.get_by_label("Charcoal: laid now").fill("2")
    page.get_by_label("Counted in").select_option("in")
    section.get_by_role("button", name="Lay them").click()
    expect(section).to_contain_text("28 of 30")  # two inches of 14 count


def test_more_backstitch_than_one_entry_can_say_is_laid_by_several_and_taken_back_by_one_undo(desk):
    page = legend(desk, [{"symbol": "/", "thread": "Charcoal", "full": "20", "back": "25000"}])
    passes(desk)
    page.get_by_text("0 laid; count more").click()
    page.locator("dialog summary", has_text="Charcoal").click()
    page.get_by_role("button", name="Lay them").click()
    expect(page.get_by_label("Backstitch", exact=True)).to_be_checked()
    assert threads(desk) == {"Charcoal": {"back": [25_000, 25_000]}}
    assert page.evaluate("phone.refused()") == []
    page.get_by_role("button", name="Close").click()
    desk.act("undo")
    assert threads(desk) == {}
