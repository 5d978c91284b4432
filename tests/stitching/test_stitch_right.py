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


def half_done(desk):
    desk.project(expected=140)
    for row in range(1, 5):
        desk.journal({"kind": "stitches", "row": row, "by": 140}, {"kind": "done", "row": row, "done": True})
    desk.journal({"kind": "stitches", "row": 5, "by": 30})
    return desk.open()


def test_unpicking_back_to_a_row_is_one_act_and_one_undo(desk):
    page = half_done(desk)
    desk.act("map")
    page.get_by_label("Row").fill("2")
    desk.answer("Unpick back to here…")
    expect(page.locator("dialog")).to_contain_text("310 stitches in 3 rows after row 2 come out.")
    desk.answer("Unpick")
    desk.wait_for("row", 3)
    assert (desk.slot("stitches"), desk.slot("rows_done")) == ("280", "2")
    assert {e["why"] for e in desk.snapshot()["tail"] if e["kind"] == "stitches" and e["by"] < 0} == {
        "unpicked"
    }
    desk.act("undo")
    desk.wait_for("stitches", 590)
    assert (desk.slot("row"), desk.slot("row_stitches"), desk.slot("rows_done")) == ("5", "30", "4")


def test_the_map_is_touched_to_go_there(desk):
    page = half_done(desk)
    desk.act("map")
    box = page.locator("dialog .ground").bounding_box()
    page.mouse.click(box["x"] + 50, box["y"] + box["height"] * 49.5 / 98)
    expect(page.get_by_label("Row")).to_have_value("50")
    desk.answer("Go there")
    assert desk.slot("row") == "50"
    assert desk.snapshot()["row"] == 5  # going there lays nothing
    desk.tap(2)
    assert desk.snapshot()["row"] == 50


def test_a_tap_in_a_row_that_was_done_opens_it_again(desk):
    page = half_done(desk)
    desk.act("map")
    page.get_by_label("Row").fill("2")
    desk.answer("Go there")
    desk.wait_for("done", "Open again")
    desk.tap()
    assert (desk.slot("row"), desk.slot("row_stitches")) == ("2", "141")
    assert desk.snapshot()["rows"]["2"] == {"stitches": 141, "done": False}


def test_another_phones_taps_change_the_numbers_but_never_the_row_under_her_thumb(desk):
    page = half_done(desk)
    desk.tap()
    desk.snapshot()
    desk.journal({"kind": "stitches", "row": 70, "by": 9}, {"kind": "stitches", "row": 5, "by": 2})
    desk.journal({"kind": "stitches", "row": 70, "by": 1})
    page.evaluate("dispatchEvent(new Event('online'))")
    desk.wait_for("stitches", 603)
    assert (desk.slot("row"), desk.slot("row_stitches")) == ("5", "33")
    page.get_by_role("button", name="Go there").click()
    assert (desk.slot("row"), desk.slot("row_stitches")) == ("70", "10")


def test_rows_already_on_the_cloth_count_for_the_map_alone(desk):
    page = desk.open(expected=100)
    page.goto(page.url + "#already")
    page.reload()
    page.get_by_label("To", exact=True).fill("36")
    desk.answer("These rows are done")
    desk.wait_for("row", 37)
    assert (desk.slot("stitches"), desk.slot("rows_done")) == ("3600", "36")
    tail = desk.snapshot()["tail"]
    assert {entry.get("why", "done") for entry in tail} == {"before", "done"}
    assert len({entry["act"] for entry in tail}) == 1
    assert desk.snapshot()["sitting"] is None


def test_a_number_already_in_this_row(desk):
    page = desk.open()
    desk.act("more")
    desk.answer("Already on the cloth")
    page.get_by_label("Stitches in row 1").fill("30")
    desk.answer("That many in this row")
    desk.wait_for("row_stitches", 30)


def test_rows_the_wrong_way_round_are_turned_down_with_a_sentence(desk):
    page = desk.open()
    desk.act("more")
    desk.answer("Already on the cloth")
    page.get_by_label("Rows done, from").fill("9")
    page.get_by_label("To", exact=True).fill("3")
    desk.answer("These rows are done")
    expect(page.locator("dialog .error")).to_contain_text("Row 3 comes before row 9.")
    assert desk.slot("rows_done") == "0"


def test_finished_is_offered_after_the_last_pass_and_not_before(desk):
    page = desk.open(height=2, expected=10, step="row")
    desk.tap(2)
    desk.wait_for("label", "Every row is done")
    desk.act("more")
    desk.answer("Passes")
    finished = page.get_by_role("button", name="It is finished")
    for name in ("Part stitches", "Backstitch", "Knots and beads"):
        expect(finished).to_have_count(0)
        page.get_by_label(name, exact=True).check()
    finished.click()
    desk.answer("End")
    page.wait_for_url(f"**/projects/{desk.id}")
    desk.open()
    assert desk.snapshot()["plan"]["state"] == "finished"


def test_backstitch_is_counted_by_number(desk):
    page = desk.open()
    desk.act("more")
    desk.answer("Passes")
    page.get_by_text("0 laid; count more").nth(1).click()
    page.get_by_label("Backstitch laid now").fill("40")
    page.locator("dialog details[open]").get_by_role("button", name="Lay them").click()
    expect(page.get_by_text("40 laid; count more")).to_be_visible()
    assert desk.snapshot()["passes"]["back"]["stitches"] == 40
    assert desk.slot("stitches") == "0"


def test_after_a_fortnight_away_it_opens_on_where_she_stopped(desk):
    desk.project(expected=140, over=2, count=28)
    sitting = "00000000-0000-7000-8000-00000000000a"
    desk.journal(
        {"kind": "begin", "id": sitting, "at": ago(days=20, minutes=9)},
        {"kind": "stitches", "row": 37, "by": 52, "at": ago(days=20, minutes=5)},
        {"kind": "end", "sitting": sitting, "note": "The lamp post, second thread", "at": ago(days=20)},
    )
    page = desk.open()
    sheet = page.locator("dialog")
    for said in (
        "The lamp post, second thread",
        "rows from the top, to the right, over two threads",
        "Row 37: is it 52?",
    ):
        expect(sheet).to_contain_text(said)
    desk.answer("Yes, it is")
    desk.tap()
    assert desk.slot("row_stitches") == "53"


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


def test_a_closed_row_that_loses_a_stitch_is_open_again(desk):
    desk.project(expected=30)
    desk.journal(
        {"kind": "stitches", "row": 1, "by": 30}, {"kind": "done", "row": 1, "done": True, "at": ago()}
    )
    page = desk.open()
    desk.act("map")
    page.locator("dialog input").first.fill("1")
    desk.answer("Go there")
    desk.act("back")
    desk.wait_for("row_stitches", 29)
    assert desk.snapshot()["rows"]["1"] == {"stitches": 29, "done": False}
    desk.act("undo")
    assert desk.snapshot()["rows"]["1"] == {"stitches": 30, "done": True}


def test_a_tap_on_a_closed_row_is_taken_back_whole(desk):
    desk.project()
    desk.journal(
        {"kind": "stitches", "row": 1, "by": 30}, {"kind": "done", "row": 1, "done": True, "at": ago()}
    )
    page = desk.open()
    desk.act("map")
    page.locator("dialog input").first.fill("1")
    desk.answer("Go there")
    desk.tap()
    desk.wait_for("row_stitches", 31)
    desk.act("undo")
    assert desk.snapshot()["rows"]["1"] == {"stitches": 30, "done": True}


def closed_row(desk):
    """A row of 30 that is closed, gone back to."""
    desk.project(expected=30)
    desk.journal(
        {"kind": "stitches", "row": 1, "by": 30}, {"kind": "done", "row": 1, "done": True, "at": ago()}
    )
    page = desk.open()
    desk.act("map")
    page.locator("dialog input").first.fill("1")
    desk.answer("Go there")
    desk.act("says")
    return page.get_by_label("Stitches really there")


@pytest.mark.parametrize("button", ["It was miscounted", "I unpicked back to there"])
def test_a_closed_row_that_the_cloth_says_is_short_is_open_again(desk, button):
    closed_row(desk).fill("28")
    desk.answer(button)
    desk.wait_for("row_stitches", 28)
    assert desk.snapshot()["rows"]["1"] == {"stitches": 28, "done": False}
    desk.act("undo")
    assert desk.snapshot()["rows"]["1"] == {"stitches": 30, "done": True}


def test_a_closed_row_that_the_cloth_says_is_over_stays_closed(desk):
    closed_row(desk).fill("31")
    desk.answer("It was miscounted")
    desk.wait_for("row_stitches", 31)
    assert desk.snapshot()["rows"]["1"] == {"stitches": 31, "done": True}
