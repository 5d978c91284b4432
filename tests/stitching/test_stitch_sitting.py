import pytest
from playwright.sync_api import expect

from tests.browser.phones import until
from tests.stitching.conftest import Desk, ago

SITTING = "00000000-0000-7000-8000-00000000000a"
LATER = "00000000-0000-7000-8000-00000000000b"


def kinds(desk):
    return [entry["kind"] for entry in desk.snapshot()["tail"]]


def test_a_sitting_begins_with_the_first_tap_and_once(desk):
    desk.open()
    desk.tap(2)
    assert kinds(desk) == ["begin", "stitches", "stitches"]
    assert desk.slot("sitting") == "0 min"


def test_a_sitting_begins_by_hand_too(desk):
    desk.open()
    desk.act("sitting")
    desk.wait_for("sitting", "0 min")
    assert kinds(desk) == ["begin"]


def test_the_first_tap_puts_the_work_on_its_frame_and_says_so(desk):
    page = desk.open(frame="hoop")
    desk.tap()
    expect(page.locator(".say")).to_contain_text("On the frame.")
    assert desk.snapshot()["frame"]["state"] == "on"
    page.get_by_role("button", name="Not on it").click()
    desk.wait_for("frame", "off")
    assert desk.snapshot()["frame"] is None
    assert desk.slot("row_stitches") == "1"


def test_work_that_is_on_no_frame_for_the_night_is_not_asked_about(desk):
    page = desk.open(frame="stretched")
    desk.tap()
    expect(page.locator(".say")).to_be_hidden()
    expect(page.locator(".stitch [data-act=frame]").first).to_be_hidden()
    desk.act("sitting")
    desk.answer("End")
    desk.wait_for("sitting", "Begin")
    assert kinds(desk) == ["begin", "stitches", "end"]


@pytest.mark.parametrize(("frame", "asked", "answer", "state"), [
    ("hoop", "Take it off the frame for the night.", "End, off the frame", "off"),
    ("clamps", "clamps lying on stitches first", "End, off the frame", "off"),
    ("scroll", "Slacken it for the night.", "End, slackened", "slack"),
    ("hoop", "Take it off", "End, left on", "on"),
])  # fmt: skip
def test_ending_asks_about_the_frame_by_its_kind(desk, frame, asked, answer, state):
    page = desk.open(frame=frame)
    desk.tap()
    desk.act("sitting")
    expect(page.locator("dialog")).to_contain_text(asked)
    page.get_by_label("Where I stopped").fill("Under the lamp post")
    desk.answer(answer)
    desk.wait_for("sitting", "Begin")
    found = desk.snapshot()
    assert (found["frame"]["state"], found["note"]["text"]) == (state, "Under the lamp post")
    assert found["sitting"] is None


def test_a_pause_is_joined_when_she_goes_on(desk):
    desk.project()
    desk.journal({"kind": "begin", "id": SITTING, "at": ago(minutes=25)})
    desk.journal({"kind": "stitches", "row": 1, "by": 4, "at": ago(minutes=3)})
    desk.open()
    assert desk.slot("sitting") == "25 min"
    desk.act("sitting")
    desk.answer("Pause")
    desk.wait_for("sitting", "Go on")
    desk.act("sitting")
    desk.wait_for("sitting", "25 min")
    assert kinds(desk) == ["begin", "stitches", "end", "begin"]


def test_the_frame_is_turned_by_one_touch_and_back_by_another(desk):
    page = desk.open(frame="scroll")
    for state in ("on", "slack", "off"):
        desk.page.locator("header [data-act=frame]").click()
        desk.wait_for("frame", state)
    page.locator(".say").get_by_role("button", name="Undo").click()
    desk.wait_for("frame", "slack")


def test_the_screen_stays_on_during_a_sitting_and_no_longer(whole_browser, server, browser_context_args):
    desk = Desk(whole_browser.new_context(**browser_context_args).new_page(), server)
    desk.page.add_init_script("""
      window.awake = 0;
      const ask = WakeLock.prototype.request;
      WakeLock.prototype.request = async function (kind) {
        const lock = await ask.call(this, kind);
        awake += 1;
        lock.addEventListener("release", () => (awake -= 1));
        return lock;
      };""")
    page = desk.open()
    assert page.evaluate("awake") == 0
    desk.tap(3)
    until(page, lambda: page.evaluate("awake") == 1)
    desk.act("sitting")
    desk.answer("End")
    until(page, lambda: page.evaluate("awake") == 0)


def test_before_the_first_sitting_of_a_day_it_asks_for_clean_hands(desk):
    page = desk.open()
    expect(page.locator(".say")).to_contain_text("Clean hands?")
    desk.tap()
    desk.snapshot()
    desk.open()
    expect(page.locator(".say")).to_be_hidden()


@pytest.mark.parametrize(
    ("minutes", "said"), [(20, "Rest your eyes: 20 seconds, 6 m away."), (60, "stretch hands")]
)
def test_eyes_and_hands_are_thought_of(desk, minutes, said):
    # Eyes: every 20 minutes look 20 feet (6 m) away for 20 seconds, prnewswire.com 301244952;
    # hands hourly: common practice, no source.
    desk.project()
    desk.journal({"kind": "begin", "id": SITTING, "at": ago(minutes=minutes)})
    desk.journal({"kind": "stitches", "row": 1, "by": 4, "at": ago(minutes=2)})
    page = desk.open()
    expect(page.locator(".say")).to_contain_text(said)


def test_the_nudge_to_rest_can_be_turned_off_on_this_phone(desk):
    page = desk.open()
    desk.act("more")
    page.get_by_label("Say when to rest eyes and hands").uncheck()
    desk.journal({"kind": "begin", "id": SITTING, "at": ago(minutes=20)})
    desk.journal({"kind": "stitches", "row": 1, "by": 4, "at": ago(minutes=2)})
    desk.open()
    page.wait_for_timeout(500)
    expect(page.locator(".say")).to_be_hidden()


def test_untouched_for_twenty_seconds_all_else_dims_and_a_touch_ends_it(desk):
    desk.page.clock.install()
    page = desk.open()
    desk.tap()
    page.clock.run_for(19_000)
    expect(page.locator(".still")).to_have_count(0)
    page.clock.run_for(2_000)
    expect(page.locator(".still .acts")).to_have_css("opacity", "0.55")
    expect(page.locator(".still .field")).to_have_css("opacity", "1")
    desk.tap()
    expect(page.locator(".still")).to_have_count(0)
    assert desk.slot("row_stitches") == "2"


def test_ending_ends_what_another_phone_began_too(desk):
    desk.project()
    desk.journal({"kind": "begin", "at": ago(minutes=3)}, {"kind": "begin", "at": ago(minutes=2)})
    desk.open()
    desk.act("sitting")
    desk.answer("End")
    desk.wait_for("sitting", "Begin")
    assert desk.snapshot()["sitting"] is None


def test_that_it_is_on_the_frame_is_not_said_longer_than_it_is_so(desk):
    page = desk.open(frame="hoop")
    desk.tap()
    expect(page.locator(".say")).to_contain_text("On the frame.")
    page.evaluate("document.querySelector('header [data-act=frame]').click()")
    expect(page.locator(".say")).to_contain_text("Off the frame.")
    page.locator("header [data-act=frame]").click()
    expect(page.locator(".say")).to_contain_text("On the frame.")
    desk.snapshot()
    desk.journal({"kind": "frame", "state": "off"})
    page.evaluate("dispatchEvent(new Event('online'))")
    desk.wait_for("frame", "off")
    expect(page.locator(".say")).to_be_hidden()


def test_not_on_it_goes_once_the_work_was_taken_off_elsewhere(desk):
    page = desk.open(frame="hoop")
    desk.tap()
    expect(page.locator(".say")).to_contain_text("Not on it")
    desk.snapshot()
    desk.journal({"kind": "frame", "state": "off"})
    page.evaluate("dispatchEvent(new Event('online'))")
    desk.wait_for("frame", "off")
    expect(page.locator(".say")).to_be_hidden()
