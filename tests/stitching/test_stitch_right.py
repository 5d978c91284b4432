"""A row put right: what the cloth says, a stitch unpicked, a row that was closed."""

import pytest
from playwright.sync_api import expect

from tests.stitching.conftest import ago


@pytest.mark.parametrize(
    ("button", "why"), [("It was miscounted", "corrected"), ("I unpicked back to there", "unpicked")]
)
def test_the_cloth_says_what_is_really_there(desk, button, why):
    page = desk.open()
    desk.tap(7)
    desk.act("says")
    page.get_by_label("Stitches really there").fill("5")
    desk.answer(button)
    desk.wait_for("row_stitches", 5)
    last = desk.snapshot()["tail"][-1]
    assert (last["by"], last["why"]) == (-2, why)


def test_what_is_no_number_is_answered_with_a_sentence(desk):
    page = desk.open()
    desk.act("says")
    for typed in ("", "many", "-1", "1.5", "10001", "<b>7</b>", "９"):
        page.get_by_label("Stitches really there").fill(typed)
        desk.answer("It was miscounted")
        expect(page.locator("dialog .error")).to_contain_text("ype a")
    assert desk.slot("row_stitches") == "0"


def test_one_back_is_an_unpicked_stitch(desk):
    desk.open()
    desk.tap(3)
    desk.act("back")
    desk.wait_for("row_stitches", 2)
    assert desk.snapshot()["tail"][-1]["why"] == "unpicked"


def closed_row(desk, **plan):
    """A row of 30 that is closed, gone back to."""
    desk.project(**plan)
    desk.journal(
        {"kind": "stitches", "row": 1, "by": 30}, {"kind": "done", "row": 1, "done": True, "at": ago()}
    )
    page = desk.open()
    desk.act("map")
    page.locator("dialog input").first.fill("1")
    desk.answer("Go there")
    return page


def really_there(desk):
    """What the cloth says of such a row, where 30 were expected."""
    page = closed_row(desk, expected=30)
    desk.act("says")
    return page.get_by_label("Stitches really there")


def test_a_closed_row_that_loses_a_stitch_is_open_again(desk):
    closed_row(desk, expected=30)
    desk.act("back")
    desk.wait_for("row_stitches", 29)
    assert desk.snapshot()["rows"]["1"] == {"stitches": 29, "done": False}
    desk.act("undo")
    assert desk.snapshot()["rows"]["1"] == {"stitches": 30, "done": True}


def test_a_tap_on_a_closed_row_is_taken_back_whole(desk):
    closed_row(desk)
    desk.tap()
    desk.wait_for("row_stitches", 31)
    desk.act("undo")
    assert desk.snapshot()["rows"]["1"] == {"stitches": 30, "done": True}


@pytest.mark.parametrize("button", ["It was miscounted", "I unpicked back to there"])
def test_a_closed_row_that_the_cloth_says_is_short_is_open_again(desk, button):
    really_there(desk).fill("28")
    desk.answer(button)
    desk.wait_for("row_stitches", 28)
    assert desk.snapshot()["rows"]["1"] == {"stitches": 28, "done": False}
    desk.act("undo")
    assert desk.snapshot()["rows"]["1"] == {"stitches": 30, "done": True}


def test_a_closed_row_that_the_cloth_says_is_over_stays_closed(desk):
    really_there(desk).fill("31")
    desk.answer("It was miscounted")
    desk.wait_for("row_stitches", 31)
    assert desk.snapshot()["rows"]["1"] == {"stitches": 31, "done": True}
