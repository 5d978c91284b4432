def centre(page):
    box = page.locator(".field").bounding_box()
    return box["x"] + box["width"] / 2, box["y"] + box["height"] * 0.8


def test_fingers_tap_as_fast_as_they_like(desk):
    page = desk.open()
    x, y = centre(page)
    for _ in range(30):
        page.touchscreen.tap(x, y)
    desk.wait_for("row_stitches", 30)


def test_two_fingers_are_two_taps(desk):
    page = desk.open()
    x, y = centre(page)
    session = page.context.new_cdp_session(page)
    points = [{"x": x, "y": y, "id": 1}, {"x": x - 80, "y": y, "id": 2}]
    session.send("Input.dispatchTouchEvent", {"type": "touchStart", "touchPoints": points})
    session.send("Input.dispatchTouchEvent", {"type": "touchEnd", "touchPoints": []})
    desk.wait_for("row_stitches", 2)


def test_a_line_over_the_field_swallows_no_tap(desk):
    page = desk.open(frame="hoop")
    desk.tap()
    box = page.locator(".say span").bounding_box()
    for n in range(2, 5):
        page.touchscreen.tap(box["x"] + 20, box["y"] + box["height"] / 2)
        desk.wait_for("row_stitches", n)


def test_a_screen_readers_press_is_a_tap(desk):
    page = desk.open()
    page.evaluate("document.querySelector('.field').click()")
    desk.wait_for("row_stitches", 1)


def test_a_phone_that_cannot_buzz_sounds_instead(desk):
    desk.page.add_init_script("""
      delete Navigator.prototype.vibrate;
      window.sounds = 0;
      const start = OscillatorNode.prototype.start;
      OscillatorNode.prototype.start = function (when) { sounds += 1; return start.call(this, when); };""")
    page = desk.open()
    desk.tap()
    page.wait_for_timeout(500)
    assert page.evaluate("sounds") == 1
    desk.act("more")
    page.get_by_label("A sound with every tap").uncheck()
    page.keyboard.press("Escape")
    desk.tap()
    page.wait_for_timeout(300)
    assert page.evaluate("sounds") == 1


def test_what_each_tap_lays_is_kept_on_this_phone(desk):
    page = desk.open()
    desk.act("step")
    desk.answer("5")
    page.reload()
    page.wait_for_selector("[data-live]")
    desk.wait_for("step", 5)
    desk.tap()
    assert desk.slot("row_stitches") == "5"
