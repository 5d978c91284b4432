"""What is not a cross, and the last pass of all."""

from playwright.sync_api import expect


def test_finished_is_offered_after_the_last_pass_and_not_before(desk):
    page = desk.open(height=2, expected=10, step="row")
    desk.rows(2)
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
