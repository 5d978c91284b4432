"""A heavy or hasty hand: what comes down twice, too early, or on a page that was left behind."""

from playwright.sync_api import expect


def test_all_of_it_touched_twice_at_once_lays_one_block(desk):
    page = desk.open(working="blocks")
    page.dblclick(".stitch [data-act=done]")
    desk.wait_for("block", "2, 1")
    assert desk.snapshot()["blocks"] == {"1.1": {"stitches": 100, "done": True}}


def test_row_done_touched_twice_at_once_closes_one_row(desk):
    page = desk.open()
    desk.tap(2)
    page.dblclick(".stitch [data-act=done]")
    desk.wait_for("row", 2)
    assert desk.snapshot()["rows_done"] == 1


def test_a_whole_row_tapped_twice_at_once_lays_one_row(desk):
    page = desk.open(expected=140, step="row")
    page.dblclick(".field")
    desk.wait_for("row", 2)
    assert desk.snapshot()["rows"] == {"1": {"stitches": 140, "done": True}}


def test_two_rows_closed_one_after_the_other_are_both_closed(desk):
    page = desk.open()
    desk.act("done")
    desk.wait_for("row", 2)
    page.wait_for_timeout(350)
    desk.act("done")
    desk.wait_for("row", 3)
    assert desk.snapshot()["rows_done"] == 2


def test_what_her_first_touch_may_lead_to_can_be_had_when_the_network_is_gone_after_it(desk):
    page = desk.open(frame="hoop")
    with page.expect_response("**/js/stitching/sitting.js"):
        desk.tap()
    page.wait_for_load_state("networkidle")
    page.context.set_offline(True)
    desk.act("done")
    desk.wait_for("row", 2)
    desk.act("undo")
    desk.wait_for("row", 1)
    for act, heading in [("says", "the cloth says"), ("sitting", "Sitting"), ("map", "The map")]:
        desk.act(act)
        expect(page.get_by_role("heading", name=heading)).to_be_visible()
        page.keyboard.press("Escape")
    desk.act("frame")
    desk.wait_for("frame", "off")
    page.context.set_offline(False)
    desk.errors[:] = [said for said in desk.errors if "ERR_INTERNET_DISCONNECTED" not in said]


def test_a_tap_that_opens_a_closed_row_again_says_so(desk):
    page = desk.open()
    desk.tap(3)
    desk.journal({"kind": "stitches", "row": 1, "by": 1}, {"kind": "done", "row": 1, "done": True})
    page.reload()
    page.wait_for_selector("[data-live]")
    desk.act("map")
    page.get_by_label("Row").fill("1")
    desk.answer("Go there")
    desk.tap()
    expect(page.locator(".say")).to_contain_text("Row 1 was done. It is open again.")


def test_one_row_done_reads_as_one_on_the_map(desk):
    page = desk.open()
    desk.tap(3)
    desk.act("done")
    desk.wait_for("row", 2)
    desk.act("map")
    expect(page.locator("dialog")).to_contain_text("1 row done, 3 stitches")
