from playwright.sync_api import expect


def test_taps_fill_the_block_in_hand(desk):
    desk.open(working="blocks")
    desk.tap(3)
    assert (desk.slot("block"), desk.slot("block_stitches"), desk.slot("of")) == ("1, 1", "3", "of 100")
    assert desk.snapshot()["blocks"]["1.1"] == {"stitches": 3, "done": False}


def test_one_tap_lays_what_is_left_of_the_block_and_goes_on(desk):
    desk.open(working="blocks")
    desk.tap(3)
    desk.act("done")
    desk.wait_for("block", "2, 1")
    assert (desk.slot("stitches"), desk.slot("blocks_done")) == ("100", "1")
    desk.act("undo")
    desk.wait_for("block", "1, 1")
    assert (desk.slot("block_stitches"), desk.slot("blocks_done")) == ("3", "0")


def test_blocks_at_the_edge_are_smaller(desk):
    desk.open(working="blocks", width=145, height=98, block_from="bottom-right")
    assert (desk.slot("block"), desk.slot("of"), desk.slot("side")) == ("15, 10", "of 40", "5 by 8")
    desk.act("done")
    desk.wait_for("block", "14, 10")
    assert desk.slot("stitches") == "40"


def test_the_order_may_go_down(desk):
    desk.open(working="blocks", block_way="down")
    desk.act("done")
    desk.wait_for("block", "1, 2")


def test_blocks_already_on_the_cloth_are_marked_on_the_map(desk):
    page = desk.open(working="blocks", width=100, height=100)
    desk.act("more")
    desk.answer("Already on the cloth")
    box = page.locator("dialog .ground").bounding_box()
    side = box["width"] / 10
    for across, down in [(0, 0), (1, 0), (0, 1), (5, 5), (5, 5)]:  # the last is taken back
        page.mouse.click(box["x"] + (across + 0.5) * side, box["y"] + (down + 0.5) * side)
    expect(page.locator("dialog")).to_contain_text("3 chosen")
    desk.answer("Mark them done")
    desk.wait_for("blocks_done", 3)
    assert desk.snapshot()["stitches"] == 300
    assert {entry.get("why", "before") for entry in desk.snapshot()["tail"]} == {"before"}


def test_a_block_over_its_cells_is_questioned(desk):
    page = desk.open(working="blocks", width=5, height=1)
    desk.tap(6)
    desk.act("done")
    expect(page.get_by_role("heading", name="Block 1, 1 has 6 of 5")).to_be_visible()
    desk.answer("Go on stitching")
    assert desk.slot("blocks_done") == "0"


def test_the_map_goes_to_a_block(desk):
    page = desk.open(working="blocks")
    desk.act("map")
    page.get_by_label("Block across").fill("4")
    page.get_by_label("and down").fill("7")
    desk.answer("Go there")
    desk.tap()
    assert (desk.slot("block"), desk.slot("block_stitches")) == ("4, 7", "1")
