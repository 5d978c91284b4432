"""Elsewhere on the chart: the map, rows gone back to or done before, and another phone's row."""

from playwright.sync_api import expect

from tests.stitching.conftest import ago


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
