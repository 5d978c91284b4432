"""A week looked at and put right in a real browser, at phone size."""

from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

import pytest
from PIL import Image
from playwright.sync_api import expect

from tests.browser.phones import PHONE, Stitcher, complaints, in_nobodys_way, until

TODAY = datetime.now(ZoneInfo("Europe/London")).date()
MONDAY = TODAY - timedelta(days=TODAY.weekday() + 7)
NAMED = "{:04}-W{:02}".format(*MONDAY.isocalendar()[:2])


BACK = ("/hours/month", f"/hours/month?month={MONDAY:%Y-%m}", "/hours/year", "/hours/year?year=2020")


@pytest.fixture
def alice(context, server):
    return Stitcher.begin(context, server)


@pytest.fixture
def hers(alice, page):
    """Last week's hours, with a sitting of 1 h 10 on its Monday; nothing may complain on the console."""
    said = complaints(page)
    sit(alice, page, alice.project, 20, 70, 84)
    page.goto(f"{alice.url}/hours?week={NAMED}")
    yield page
    refused = "Failed to load resource: the server responded with a status of 422"
    assert [text for text in said if not text.startswith(refused)] == []


def sit(alice, page, project, hour, minutes, stitches):
    """Write a sitting down by the phone, and wait until the house has it."""
    begin = datetime(MONDAY.year, MONDAY.month, MONDAY.day, hour, tzinfo=UTC)
    at, end = (f"{moment:%Y-%m-%dT%H:%M:%S}.000Z" for moment in (begin, begin + timedelta(minutes=minutes)))
    page.goto(f"{alice.url}/projects")
    page.evaluate(PHONE)
    page.evaluate(
        """async ([project, at, end, by]) => {
          const [begun] = await phone.lay(project, [{ kind: "begin", at }]);
          const stitches = { kind: "stitches", row: 1, by, at: end };
          await phone.lay(project, [stitches, { kind: "end", sitting: begun.id, at: end }]);
        }""",
        [project, at, end, stitches],
    )
    until(page, lambda: page.evaluate("phone.waiting()") == 0)


def leave_on_the_frame(alice, page):
    """Write down that the work was on its frame from that Monday to Wednesday."""
    at = [f"{MONDAY + timedelta(days=n)}T20:00:00.000Z" for n in (0, 2)]
    page.evaluate(
        """([project, on, off]) => phone.lay(project,
          [{ kind: "frame", state: "on", at: on }, { kind: "frame", state: "off", at: off }])""",
        [alice.project, *at],
    )
    until(page, lambda: page.evaluate("phone.waiting()") == 0)


def shown(page):
    """Give the Monday of the week that stands on the page."""
    return datetime.strptime(page.locator("#week").get_attribute("data-week") + "-1", "%G-W%V-%u").date()


def test_from_week_to_week_and_back_without_leaving_the_page(alice, hers):
    expect(hers.get_by_text("1:10").first).to_be_visible()
    expect(hers.get_by_text("84 stitches")).to_be_visible()
    hers.evaluate("window.stayed = true")
    hers.get_by_role("link", name="Earlier week").click()
    expect(hers.get_by_text("No stitching in this week")).to_be_visible()
    assert NAMED not in hers.url
    hers.get_by_role("link", name="Later week").click()
    expect(hers.get_by_text("84 stitches")).to_be_visible()
    assert hers.url.endswith(NAMED)
    assert hers.evaluate("window.stayed")
    hers.go_back()
    expect(hers.get_by_text("No stitching in this week")).to_be_visible()


def test_an_arrow_and_a_swipe_turn_the_page_as_the_links_do(alice, hers):
    hers.evaluate("window.stayed = true")
    hers.keyboard.press("ArrowLeft")
    expect(hers.get_by_text("No stitching in this week")).to_be_visible()
    hers.keyboard.press("ArrowRight")
    expect(hers.get_by_text("84 stitches")).to_be_visible()
    finger = hers.context.new_cdp_session(hers)

    def swipe(begin, end):
        for what, points in (("touchStart", [begin]), ("touchMove", [end]), ("touchEnd", [])):
            at = [{"x": x, "y": y} for x, y in points]
            finger.send("Input.dispatchTouchEvent", {"type": what, "touchPoints": at})

    swipe((60, 300), (80, 420))  # down the page: nothing turns
    expect(hers.get_by_text("84 stitches")).to_be_visible()
    swipe((60, 300), (260, 310))
    expect(hers.get_by_text("No stitching in this week")).to_be_visible()
    swipe((260, 300), (60, 310))
    expect(hers.get_by_text("84 stitches")).to_be_visible()
    assert hers.evaluate("window.stayed")


def test_what_is_asked_for_while_a_page_turns_is_not_lost(alice, hers):
    def weeks_on(press):
        """Ask for pages while the first is on its way; gives how many weeks it then went on."""
        held, before = [], shown(hers)
        hers.route("**/hours/week?*", lambda route: held.append(route), times=1)
        press()
        until(hers, lambda: held)
        held[0].continue_()
        return lambda: (shown(hers) - before).days // 7

    def keys(*names):
        return lambda: [hers.keyboard.press(name) for name in names]

    hers.evaluate("window.stayed = true")
    back = weeks_on(keys("ArrowLeft", "ArrowLeft", "ArrowLeft"))
    until(hers, lambda: back() == -3)
    on = weeks_on(keys("ArrowRight", "ArrowRight", "ArrowRight"))
    until(hers, lambda: on() == 3)
    expect(hers.get_by_text("84 stitches")).to_be_visible()
    there_and_back = weeks_on(keys("ArrowLeft", "ArrowLeft", "ArrowRight"))
    until(hers, lambda: there_and_back() == -1)
    link = hers.get_by_role("link", name="Earlier week")
    touched = weeks_on(lambda: [link.click(), link.click(), link.click()])
    until(hers, lambda: touched() == -3)
    assert hers.evaluate("window.stayed")


def test_past_the_last_page_nothing_is_owed(alice, hers):
    hers.goto(f"{alice.url}/hours")
    hers.keyboard.press("ArrowRight")
    hers.keyboard.press("ArrowLeft")
    until(hers, lambda: shown(hers) == MONDAY)


def test_from_the_week_to_its_month_and_year_and_into_another_month(alice, hers):
    hers.get_by_role("link", name="Month").click()
    expect(hers.get_by_role("heading", name=f"{MONDAY + timedelta(days=3):%B}")).to_be_visible()
    hers.get_by_role("link", name="Earlier month").click()
    hers.get_by_role("link", name="Later month").click()
    hers.get_by_role("link", name="Year").click()
    expect(hers.get_by_text("84 stitches")).to_be_visible()
    hers.get_by_role("link", name=f"{MONDAY:%B}").click()
    expect(hers.get_by_text("84 stitches")).to_be_visible()


def test_the_week_is_handed_on_as_a_picture(alice, hers):
    with hers.expect_download() as kept:
        hers.get_by_role("button", name="Picture").click()
    assert kept.value.suggested_filename == f"{NAMED}.png"
    head = kept.value.path().read_bytes()[:24]
    assert head[:8] == b"\x89PNG\r\n\x1a\n"
    wide, high = int.from_bytes(head[16:20]), int.from_bytes(head[20:24])
    assert wide == 1280
    assert 1000 < high < 2400
    expect(hers.get_by_text("The picture is among this phone's downloads.")).to_be_visible()


def test_printed_it_is_black_on_white_without_what_can_be_touched(alice, hers):
    hers.emulate_media(media="print", color_scheme="dark")
    expect(hers.get_by_role("link", name="Fix times")).to_be_hidden()
    expect(hers.locator("svg.bands")).to_be_visible()
    colours = hers.evaluate(
        "[getComputedStyle(document.body).color, getComputedStyle(document.body).backgroundColor]"
    )
    assert colours == ["rgb(0, 0, 0)", "rgb(255, 255, 255)"]


def test_a_photograph_is_made_small_on_the_phone_and_stands_in_the_story(alice, hers, tmp_path):
    Image.effect_noise((2600, 1300), 40).save(tmp_path / "work.jpg")
    hers.goto(f"{alice.url}/projects/{alice.project}/story")
    hers.get_by_text("Add a photograph").click()
    field = hers.get_by_label("Picture")
    field.set_input_files(tmp_path / "work.jpg")
    until(hers, lambda: field.evaluate("(field) => field.files[0].name") == "photograph.jpg")
    hers.get_by_label("Where you stopped").fill("at the lamp")
    hers.get_by_role("button", name="Keep it").click()
    kept = hers.get_by_alt_text("at the lamp")
    expect(kept).to_be_visible()
    size = "(image) => [image.naturalWidth, image.naturalHeight]"
    until(hers, lambda: kept.evaluate(size) == [1600, 800])
    hers.set_viewport_size({"width": 360, "height": 640})
    hers.evaluate("document.querySelectorAll('details').forEach((one) => (one.open = true))")
    in_nobodys_way(hers)
    hers.get_by_role("button", name="Delete this photograph for good").click()
    expect(kept).to_have_count(0)


def test_times_are_put_right_without_leaving_the_page(alice, hers):
    hers.get_by_role("link", name="Fix times").click()
    hers.evaluate("window.stayed = true")
    hers.get_by_text("Change").click()
    hers.get_by_label("Ended").last.fill(f"{MONDAY}T19:00")
    hers.get_by_role("button", name="Keep these times").click()
    expect(hers.get_by_text("The end must come after the beginning. Give a later time.")).to_be_visible()
    hers.get_by_label("Ended").last.fill(f"{MONDAY}T20:45")
    hers.get_by_role("button", name="Keep these times").click()
    expect(hers.get_by_role("status")).to_have_text("Kept.")
    expect(hers.get_by_text("0:45", exact=True)).to_be_visible()

    hers.get_by_text("Change").click()
    hers.get_by_role("button", name="Strike it out").click()
    expect(hers.get_by_role("status")).to_have_text("Struck out.")
    hers.get_by_role("button", name="Put back").click()
    expect(hers.get_by_role("status")).to_have_text("Put back.")

    hers.get_by_text("Add a forgotten one").click()
    hers.get_by_label("Began").first.fill(f"{MONDAY}T15:00")
    hers.get_by_label("Ended").first.fill(f"{MONDAY}T15:30")
    hers.get_by_role("button", name="Add it").click()
    expect(hers.get_by_text("15:00 to 15:30")).to_be_visible()
    assert hers.evaluate("window.stayed")
    hers.get_by_role("link", name="Back to the week").click()
    expect(hers.get_by_text("1:15").first).to_be_visible()


def test_nothing_stands_in_anyones_way(alice, hers):
    sit(alice, hers, alice.new_project("A" * 120), 10, 95, 60)
    leave_on_the_frame(alice, hers)
    for address in (
        f"/hours?week={NAMED}",
        "/hours",
        f"/hours/sittings?week={NAMED}",
        "/hours/sittings",
        *BACK,
    ):
        hers.goto(alice.url + address)
        hers.evaluate("document.querySelectorAll('details').forEach((one) => (one.open = true))")
        in_nobodys_way(hers)
