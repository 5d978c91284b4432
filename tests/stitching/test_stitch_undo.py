"""Undo: of the last act and those before, further than this phone knows, and of what another phone laid."""

import pytest
from playwright.sync_api import expect

from tests.stitching.conftest import ago


def test_undo_takes_back_the_last_act_and_then_the_one_before(desk):
    desk.open()
    desk.act("step")
    desk.answer("5")
    desk.tap(2)
    desk.act("undo")
    desk.wait_for("row_stitches", 5)
    desk.act("undo")
    desk.wait_for("row_stitches", 0)
    assert desk.snapshot()["stitches"] == 0


def test_undo_opens_a_row_that_was_just_closed(desk):
    desk.open()
    desk.tap(2)
    desk.act("done")
    desk.wait_for("row", 2)
    desk.act("undo")
    desk.wait_for("row", 1)
    assert desk.slot("row_stitches") == "2"


def test_with_nothing_to_take_back_it_says_so(desk):
    page = desk.open()
    desk.act("undo")
    expect(page.locator(".say")).to_contain_text("Nothing is left here to take back.")


def test_undo_goes_back_further_than_what_was_laid_on_this_page(desk):
    desk.open(expected=3)
    desk.tap(3)
    desk.act("done")
    desk.wait_for("row", 2)
    desk.snapshot()
    desk.open()
    desk.act("undo")
    desk.wait_for("row", 1)
    desk.act("undo")
    desk.wait_for("row_stitches", 2)


def laid_before(desk, count):
    """Lay stitches one by one on another phone of hers."""
    desk.project()
    entries = [{"kind": "stitches", "row": 1, "by": 1, "at": ago(seconds=900 - n)} for n in range(count)]
    desk.journal(*entries)
    return desk.open()


def press(page, times):
    page.evaluate("(n) => { while (n--) document.querySelector('[data-act=undo]').click() }", times)


def test_every_press_of_undo_is_seen_to_once_the_house_shows_what_lies_further_back(desk):
    page = laid_before(desk, 80)  # a snapshot shows the last fifty
    page.route("**/journal", lambda route: route.abort())
    press(page, 70)
    desk.wait_for("row_stitches", 30)
    expect(page.locator(".say")).to_contain_text("20 more are taken back once this is sent.")
    page.unroute("**/journal")
    page.evaluate("dispatchEvent(new Event('online'))")
    shown = page.locator("[data-slot=row_stitches]")
    expect(shown).to_have_text("10", timeout=30_000)  # the sender pauses after a failure
    assert desk.snapshot()["stitches"] == 10
    desk.errors.clear()  # the browser's own, of the requests that were stopped


def test_a_tap_made_before_the_house_has_answered_ends_the_taking_back(desk):
    page = laid_before(desk, 80)
    page.route("**/journal", lambda route: route.abort())
    press(page, 60)
    desk.wait_for("row_stitches", 30)
    expect(page.locator(".say")).to_contain_text("10 more")
    desk.tap()
    page.unroute("**/journal")
    assert desk.snapshot()["stitches"] == 31
    desk.wait_for("row_stitches", 31)
    desk.errors.clear()


def test_more_presses_than_there_is_to_take_back_say_so(desk):
    page = laid_before(desk, 55)
    press(page, 60)
    desk.wait_for("row_stitches", 0)
    expect(page.locator(".say")).to_contain_text("Nothing is left here to take back.")
    assert desk.snapshot()["stitches"] == 0


@pytest.mark.parametrize(("fields", "said"), [
    ([{"kind": "stitches", "row": 12, "by": 10}], "10 in row 12"),
    ([{"kind": "stitches", "row": 12, "by": 4}, {"kind": "done", "row": 12, "done": True}], "4 in row 12"),
    ([{"kind": "done", "row": 12, "done": True}], "row 12 done"),
    ([{"kind": "bare", "row": 12, "by": 3}], "3 bare in row 12"),
    ([{"kind": "start", "row": 12, "column": 5, "way": "left"}], "where row 12 begins"),
    ([{"kind": "stitches", "pass": "back", "by": 40}], "40 in backstitch"),
    ([{"kind": "stitches", "row": r, "by": 5} for r in (3, 4)], "10 in 2 places"),
])  # fmt: skip
def test_what_another_phone_laid_is_not_taken_back_unsaid(desk, fields, said):
    desk.project()
    act = {"act": "00000000-0000-7000-8000-00000000000b"} if len(fields) > 1 else {}
    desk.journal(*({**one, **act} for one in fields))
    page = desk.open()
    desk.act("undo")
    expect(page.locator(".say")).to_contain_text(f"Taken back: {said}, laid elsewhere.")


def test_what_this_phone_laid_is_taken_back_without_a_word(desk):
    page = desk.open()
    desk.tap(3)
    desk.act("undo")
    desk.wait_for("row_stitches", 2)
    desk.snapshot()
    page.wait_for_timeout(200)
    page.reload()
    page.wait_for_selector("[data-live]")
    desk.act("undo")
    desk.wait_for("row_stitches", 1)
    page.wait_for_timeout(300)
    expect(page.locator(".say")).to_be_hidden()


def test_what_was_laid_longer_ago_than_this_phone_remembers_is_said_so(desk):
    desk.project()
    desk.journal({"kind": "stitches", "row": 12, "by": 10, "at": ago(days=15)})
    page = desk.open()
    page.locator("dialog").get_by_role("button", name="Yes, it is").click()
    desk.act("undo")
    expect(page.locator(".say")).to_contain_text("Taken back: 10 in row 12, laid earlier or elsewhere.")
