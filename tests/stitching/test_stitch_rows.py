import pytest


def test_each_tap_lays_one_stitch(desk):
    desk.open(expected=140)
    desk.tap(8)
    assert (desk.slot("row"), desk.slot("row_stitches"), desk.slot("of")) == ("1", "8", "of 140")
    assert desk.slot("label") == "2 to the ten-line"
    assert desk.snapshot()["row_stitches"] == 8


def test_the_page_comes_with_its_numbers_before_any_script(desk):
    desk.project(expected=140)
    desk.journal({"kind": "stitches", "row": 37, "by": 52}, {"kind": "done", "row": 36, "done": True})
    desk.journal({"kind": "stitches", "row": 37, "by": 1})
    text = desk.page.request.get(f"{desk.server.url}/projects/{desk.id}/stitch").text()
    assert '<span data-slot="row">37</span>' in text
    assert 'data-slot="row_stitches">53<' in text
    assert ">7 to the ten-line<" in text


def test_two_hundred_taps_as_fast_as_can_be_clicked_are_two_hundred(desk):
    page = desk.open(expected=300, width=300)
    page.locator(".field").click(click_count=200, delay=0)
    desk.wait_for("row_stitches", 200)
    assert desk.snapshot()["stitches"] == 200


def test_the_ten_is_seen_by_the_corner_of_an_eye(desk):
    page = desk.open()
    desk.tap(9)
    assert page.get_attribute(".field", "data-whole") is None
    desk.tap()
    assert page.get_attribute(".field", "data-whole") == ""
    desk.tap()
    assert page.get_attribute(".field", "data-whole") is None


def test_the_ten_is_felt_longer_than_a_tap_and_the_rows_end_by_itself(desk):
    desk.page.add_init_script("window.felt = []; Navigator.prototype.vibrate = (buzz) => felt.push(buzz) > 0")
    desk.open(expected=12)
    desk.tap(12)
    desk.page.wait_for_timeout(300)
    felt = desk.page.evaluate("felt")
    assert felt[9] > felt[0] == felt[10]
    assert isinstance(felt[11], list)


def test_a_full_row_is_closed_without_a_question(desk):
    page = desk.open(expected=3)
    desk.tap(3)
    desk.act("done")
    desk.wait_for("row", 2)
    assert page.locator("dialog").count() == 0
    assert desk.snapshot()["rows"]["1"] == {"stitches": 3, "done": True}


@pytest.mark.parametrize(("taps", "question", "answer"), [
    (136, "Row 1 has 136 of 140", "Close it short"),
    (141, "Row 1 has 141 of 140", "Close it over"),
])  # fmt: skip
def test_a_row_closed_short_or_over_is_questioned(desk, taps, question, answer):
    desk.open(expected=140)
    desk.journal({"kind": "stitches", "row": 1, "by": taps})
    desk.open()
    desk.act("done")
    desk.page.get_by_role("heading", name=question).wait_for()
    assert desk.slot("row") == "1"
    desk.answer(answer)
    desk.wait_for("row", 2)
    assert desk.snapshot()["rows"]["1"] == {"stitches": taps, "done": True}


def test_a_row_without_an_expected_count_is_simply_closed(desk):
    desk.open()
    desk.tap(5)
    desk.act("done")
    desk.wait_for("row", 2)


def test_a_tap_lays_the_step_she_set(desk):
    desk.open(expected=140)
    for step, laid in [("5", 5), ("10", 15), ("To the ten-line", 20), ("2", 22)]:
        desk.act("step")
        desk.answer(step)
        desk.tap()
        assert desk.slot("row_stitches") == str(laid)


def test_a_tap_that_lays_the_row_closes_it_too(desk):
    desk.open(expected=140, step="row")
    desk.tap()
    desk.wait_for("row", 2)
    desk.act("undo")
    desk.wait_for("row", 1)
    assert desk.slot("stitches") == "0"


def test_touch_and_slide_lays_a_run_on_letting_go(desk):
    page = desk.open()
    box = page.locator(".field").bounding_box()
    x, y = box["x"] + box["width"] - 40, box["y"] + box["height"] - 60
    page.mouse.move(x, y)
    page.mouse.down()
    page.mouse.move(x - 89, y, steps=4)
    assert page.inner_text(".run") == "7"
    assert desk.slot("row_stitches") == "0"
    page.mouse.up()
    assert desk.slot("row_stitches") == "7"
    assert page.locator(".run").is_hidden()


def test_a_run_never_lays_more_than_twenty_and_sliding_back_lays_none(desk):
    page = desk.open()
    for x, laid in [(5, "20"), (300, "20")]:
        page.mouse.move(300, 700)
        page.mouse.down()
        page.mouse.move(10, 300, steps=3)
        page.mouse.move(x, 700 if x == 300 else 200, steps=3)
        page.mouse.up()
        assert desk.slot("row_stitches") == laid


def touch(page, radius, hold=0.0):
    """Lay a finger, a knuckle or a palm on the field."""
    session = page.context.new_cdp_session(page)
    point = {"x": 200, "y": 650, "radiusX": radius, "radiusY": radius}
    session.send("Input.dispatchTouchEvent", {"type": "touchStart", "touchPoints": [point]})
    page.wait_for_timeout(hold)
    session.send("Input.dispatchTouchEvent", {"type": "touchEnd", "touchPoints": []})


def test_a_knuckle_counts_and_a_resting_palm_does_not(desk):
    page = desk.open()
    touch(page, 22)
    assert desk.slot("row_stitches") == "1"
    touch(page, 60)
    touch(page, 12, hold=1100)
    assert desk.slot("row_stitches") == "1"


def test_keys_tap_and_take_back_for_a_pedal_or_a_page_turner(desk):
    page = desk.open()
    for n, key in enumerate(["Space", "Enter", "ArrowRight", "ArrowDown", "PageDown"], 1):
        page.keyboard.press(key)
        desk.wait_for("row_stitches", n)
    for n, key in enumerate(["ArrowLeft", "ArrowUp", "PageUp", "Backspace"], 1):
        page.keyboard.press(key)
        desk.wait_for("row_stitches", 5 - n)


def test_a_key_held_down_counts_once(desk):
    page = desk.open()
    for _ in range(5):
        page.keyboard.down("ArrowRight")  # the second and later come as repeats
    page.keyboard.up("ArrowRight")
    assert desk.slot("row_stitches") == "1"


def test_after_a_button_was_touched_the_pedal_taps_again(desk):
    desk.open()
    desk.tap(2)
    desk.act("undo")
    desk.wait_for("row_stitches", 1)
    desk.page.keyboard.press("Space")
    assert desk.slot("row_stitches") == "2"


def test_bare_cloth_moves_the_place_and_says_the_threads(desk):
    page = desk.open(expected=96, count=28, over=2)
    desk.act("bare")
    page.get_by_label("Cells without a stitch").fill("12")
    assert page.get_by_text("12 bare is 24 threads.").is_visible()
    desk.answer("Move over")
    desk.wait_for("label", "8 to the ten-line")
    assert desk.slot("row_stitches") == "0"
    assert desk.snapshot()["sums"]["cross 1"][1] == 12


def test_a_row_may_begin_elsewhere_on_the_chart(desk):
    page = desk.open()
    desk.act("more")
    desk.answer("Where this row begins")
    page.get_by_label("Begun at the chart's column").fill("134")
    page.get_by_label("To the left").check()
    desk.answer("Set")
    desk.wait_for("label", "4 to the ten-line")
    desk.tap(4)
    assert desk.slot("label") == "At the ten-line"


def test_rows_are_said_as_on_her_side(desk):
    desk.open(direction="bottom")
    assert desk.slot("side") == "from the bottom"


def test_both_ways_from_the_middle_goes_on_from_where_it_began(desk):
    desk.open(direction="middle", height=98)
    assert desk.slot("row") == "49"
    desk.act("done")
    desk.wait_for("row", 50)
    assert desk.slot("side") == "1 below"


def test_where_each_tap_lays_the_row_the_field_says_how_many_that_is(desk):
    desk.open(expected=140, step="row")
    assert desk.slot("label") == "Each tap lays 140"
    desk.journal({"kind": "stitches", "row": 1, "by": 20})
    html = desk.page.request.get(desk.page.url).text()
    assert "Each tap lays 120" in html
