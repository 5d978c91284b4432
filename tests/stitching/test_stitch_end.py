"""The last row, and the work finished: sitting and frame are thought of, no sheet opens under a thumb."""

import pytest
from playwright.sync_api import expect


def all_done(desk, **fields):
    page = desk.open(height=2, expected=10, step="row", **fields)
    desk.rows(2)
    desk.wait_for("label", "Every row is done")
    return page


def test_a_thumb_that_taps_on_past_the_last_row_opens_no_sheet(desk):
    desk.page.clock.install()
    page = all_done(desk)
    page.clock.pause_at(page.evaluate("Date.now() / 1000 + 0.05"))  # however slow the machine is
    for _ in range(3):
        desk.tap()
        page.clock.run_for(1500)
        expect(page.locator(".say")).to_contain_text("Every row is done.")
        assert page.locator("dialog").count() == 0
    page.clock.run_for(2100)
    desk.tap()
    expect(page.get_by_role("heading", name="Passes")).to_be_visible()


def test_nor_does_row_done_pressed_twice(desk):
    page = desk.open(height=1)
    desk.tap(2)
    page.evaluate("for (const n of [1, 2]) document.querySelector('[data-act=done]').click()")
    desk.wait_for("label", "Every row is done")
    page.wait_for_timeout(300)
    assert page.locator("dialog").count() == 0


def test_the_last_row_done_offers_to_end_the_sitting(desk):
    page = all_done(desk, frame="hoop")
    page.locator(".say").get_by_role("button", name="End sitting").click()
    desk.answer("End, off the frame")
    desk.wait_for("sitting", "Begin")
    found = desk.snapshot()
    assert (found["sitting"], found["frame"]["state"]) == (None, "off")


def test_the_last_row_closed_short_offers_it_too(desk):
    page = desk.open(height=1, expected=10)
    desk.tap(2)
    desk.act("done")
    desk.answer("Close it short")
    expect(page.locator(".say")).to_contain_text("Every row is done.")
    expect(page.locator(".say").get_by_role("button", name="End sitting")).to_be_visible()


def finish(desk, page):
    page.evaluate("document.querySelector('[data-act=more]').click()")
    desk.answer("Passes")
    for name in ("Part stitches", "Backstitch", "Knots and beads"):
        page.get_by_label(name, exact=True).check()
    desk.answer("It is finished")


def test_finishing_asks_about_the_sitting_and_the_frame(desk):
    page = all_done(desk, frame="hoop")
    finish(desk, page)
    expect(page.locator("dialog[open]")).to_contain_text("Take it off the frame.")
    desk.answer("End, off the frame")
    page.wait_for_url(f"**/projects/{desk.id}")
    desk.open()
    found = desk.snapshot()
    assert (found["sitting"], found["frame"]["state"], found["plan"]["state"]) == (None, "off", "finished")


def test_finishing_after_the_sitting_asks_about_the_frame_alone(desk):
    page = all_done(desk, frame="scroll")
    desk.act("sitting")
    desk.answer("End, left tight")
    desk.wait_for("sitting", "Begin")
    finish(desk, page)
    expect(page.locator("dialog[open]")).not_to_contain_text("Pause")
    desk.answer("Off the frame")
    page.wait_for_url(f"**/projects/{desk.id}")
    desk.open()
    assert desk.snapshot()["frame"]["state"] == "off"


@pytest.mark.parametrize(("frame", "line"), [
    ("hoop", "A sitting is still running, and the work is on its frame."),
    ("hand", "A sitting is still running."),
])  # fmt: skip
def test_set_to_finished_on_its_own_page_it_leads_to_the_question(desk, frame, line):
    page = desk.open(frame=frame)
    desk.tap()
    desk.snapshot()
    page.goto(f"{desk.server.url}/projects/{desk.id}")
    expect(page.get_by_text("A sitting is still running")).to_have_count(0)
    page.get_by_role("button", name="Finished").click()
    expect(page.locator("#state")).to_contain_text(line)
    page.get_by_role("link", name="See to it").click()
    sheet = page.locator("dialog")
    expect(sheet).to_contain_text("Where I stopped")
    sheet.locator(".main").click()
    page.wait_for_url(f"**/projects/{desk.id}")
    expect(page.get_by_text("still running")).to_have_count(0)
