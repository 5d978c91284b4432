"""What she answers for the night on the sheet of a notification, with and without network."""

from datetime import UTC, datetime, timedelta

import pytest
from playwright.sync_api import expect

from tests.browser.phones import PHONE, Stitcher, go, is_kept, until
from tests.reminders.pushed import Sync
from tests.reminders.test_night_journey import zone_where_it_is

pytestmark = pytest.mark.browser_context_args(service_workers="allow")
OFF = "Take it off for the night."


@pytest.fixture
def alice(context, server):
    """Alice at past eleven in the evening, whose work is on its hoop; this phone knows it."""
    her = Stitcher.begin(context, server)
    in_zone(her, 23)
    her.post(f"/frame/{her.project}", state="on")
    go(page := context.new_page(), f"{her.url}/projects/{her.project}/stitch")
    until(page, lambda: is_kept(page))
    page.close()
    return her


@pytest.fixture
def sheet(alice, page):
    page.goto(f"{alice.url}/shell/tonight", wait_until="networkidle")
    expect(page.get_by_role("button", name="Leave it tonight")).to_be_visible()
    return page


def in_zone(alice, hour):
    settings = {"hand": "right", "unit": "in", "bedtime": "22:30", "week_start": "0"}
    alice.post("/account", zone=zone_where_it_is(hour), **settings)


def answer(sheet, name, said):
    sheet.get_by_role("button", name=name).tap()
    expect(sheet.get_by_text(said)).to_be_visible()
    expect(sheet.get_by_role("button", name=name)).to_be_hidden()


def is_left(alice):
    return "Nothing will be said tonight." in alice.context.request.get(f"{alice.url}/reminders").text()


def told(page):
    """Gather what a page tells the house from here on: each answer the house took."""
    found = []

    def hear(response):
        if response.url.endswith("/tonight.json") and response.ok:
            found.append(response.request.post_data_json["answer"])

    page.on("response", hear)
    return found


def test_left_for_tonight_the_house_and_its_pages_are_quiet(alice, sheet):
    hours = alice.context.new_page()
    hours.goto(f"{alice.url}/hours", wait_until="networkidle")
    expect(hours.get_by_text(OFF)).to_be_visible()
    answer(sheet, "Leave it tonight", "Left for tonight.")
    assert is_left(alice)
    hours.reload(wait_until="networkidle")
    expect(hours.get_by_text(OFF)).to_be_hidden()


def test_in_half_an_hour_is_told_to_the_house(alice, sheet):
    took = told(sheet)
    answer(sheet, "In half an hour", "You hear of it again in half an hour.")
    assert took == ["later"]


@pytest.mark.parametrize(("name", "word"), [("Leave it tonight", "leave"), ("In half an hour", "later")])
def test_without_network_this_phone_is_quiet_at_once_and_the_house_hears_of_it_later(
    alice, sheet, context, name, word
):
    took = told(sheet)
    context.set_offline(True)
    stitch = context.new_page()
    stitch.goto(f"{alice.url}/projects/{alice.project}/stitch")  # the shell, which nobody drew it on
    expect(stitch.get_by_text(OFF)).to_be_visible()
    answer(sheet, name, "on this phone.")
    stitch.evaluate("document.dispatchEvent(new Event('visibilitychange'))")
    expect(stitch.get_by_text(OFF)).to_be_hidden()
    stitch.close()
    assert (took, is_left(alice)) == ([], False)
    context.set_offline(False)
    until(sheet, lambda: took == [word])
    assert is_left(alice) == (word == "leave")


def test_the_last_answer_counts_and_one_told_is_told_once(alice, sheet, context):
    took = told(sheet)
    context.set_offline(True)
    answer(sheet, "Leave it tonight", "on this phone.")
    sheet.reload()
    answer(sheet, "In half an hour", "on this phone.")
    context.set_offline(False)
    until(sheet, lambda: took == ["later"])
    sheet.reload(wait_until="networkidle")
    assert (took, is_left(alice)) == (["later"], False)


def test_with_every_page_closed_the_worker_tells_it(alice, sheet, context):
    context.set_offline(True)
    answer(sheet, "Leave it tonight", "on this phone.")
    sheet.goto("about:blank")
    context.set_offline(False)
    page = context.new_page()
    page.goto(f"{alice.url}/health")  # no page of hers, and it runs no script
    assert not is_left(alice)
    Sync(page).dispatch("send")
    until(page, lambda: is_left(alice))


NO_DATABASE = "Object.defineProperty(self, 'indexedDB', { get() { throw new Error('none') } })"
NO_ROOM = """() => {
  const full = () => { throw new Error('no room'); };
  Storage.prototype.setItem = IDBObjectStore.prototype.put = full;
}"""


def on_its_frame(sheet, alice):
    """Have a phone whose store forgets with the page know how the work is held."""
    sheet.goto(f"{alice.url}/shell/tonight")
    sheet.evaluate(PHONE)
    answer = alice.context.request.get(f"{alice.url}/projects/{alice.project}/snapshot")
    sheet.evaluate("(snapshot) => phone.take(snapshot)", answer.json())
    expect(sheet.get_by_role("button", name="It is off")).to_be_visible()


def test_where_there_is_no_database_the_next_page_tells_it(alice, page, context):
    page.add_init_script(NO_DATABASE)
    on_its_frame(page, alice)
    context.set_offline(True)
    answer(page, "In half an hour", "on this phone.")
    page.close()
    context.set_offline(False)
    page = context.new_page()
    took = told(page)
    page.goto(f"{alice.url}/shell/tonight")
    until(page, lambda: took == ["later"])


def test_where_nothing_can_be_kept_and_no_network_is_she_is_told_and_the_answers_stay(sheet, alice, context):
    sheet.evaluate(NO_ROOM)
    context.set_offline(True)
    sheet.get_by_role("button", name="In half an hour").tap()
    expect(
        sheet.get_by_text("This phone could not keep that, and the house did not hear it.")
    ).to_be_visible()
    context.set_offline(False)
    answer(sheet, "In half an hour", "You hear of it again in half an hour.")


def test_left_by_day_it_is_left_until_the_noon_after_the_coming_night(alice, sheet, context):
    in_zone(alice, 15)
    sheet.goto(f"{alice.url}/hours", wait_until="networkidle")  # which knows her zone
    sheet.goto(f"{alice.url}/shell/tonight", wait_until="networkidle")
    context.set_offline(True)
    answer(sheet, "Leave it tonight", "on this phone.")
    until_when = sheet.evaluate(
        "JSON.parse(Object.entries(localStorage).find(([k]) => /:left:/.test(k))[1]).until"
    )
    at = datetime.fromtimestamp(until_when / 1000, UTC)
    hour = datetime.now(UTC).replace(minute=0, second=0, microsecond=0)
    assert at - hour in (timedelta(hours=20), timedelta(hours=21))  # 15 o'clock, or just past 16


def test_what_the_house_does_not_take_is_kept_and_the_sheet_can_be_answered_again(alice, sheet):
    """Something on the way answers with an error: what she said is told with the next page."""
    sheet.route("**/reminders/tonight.json", lambda route: route.fulfill(status=503))
    answer(sheet, "In half an hour", "Kept on this phone.")
    sheet.unroute("**/reminders/tonight.json")
    took = told(sheet)
    sheet.reload(wait_until="networkidle")
    until(sheet, lambda: took == ["later"])
    sheet.get_by_role("button", name="It is off").tap()
    expect(sheet.get_by_text("Off the frame. Good night.")).to_be_visible()


@pytest.fixture
def put_on_elsewhere(context, server, page):
    """Alice at past eleven, whose work was put on when this phone had looked: it knows nothing of it."""
    her = Stitcher.arrive(context, server)
    in_zone(her, 23)
    page.goto(f"{her.url}/reminders", wait_until="networkidle")
    her.project = her.new_project()
    her.post(f"/frame/{her.project}", state="on")
    return her


def test_a_phone_that_never_opened_the_work_asks_the_house_and_can_answer(put_on_elsewhere, page):
    page.goto(f"{put_on_elsewhere.url}/shell/tonight#done")
    expect(page.get_by_text("Off the frame. Good night.")).to_be_visible()
    until(page, lambda: put_on_elsewhere.sums()["frame"]["state"] == "off")


def test_where_nothing_is_known_to_be_on_she_can_still_leave_it(put_on_elsewhere, page, context):
    until(page, lambda: is_kept(page))
    context.set_offline(True)
    page.goto(f"{put_on_elsewhere.url}/shell/tonight")
    expect(page.get_by_text("Nothing this phone knows of is on a frame.")).to_be_visible()
    answer(page, "Leave it tonight", "on this phone.")
    context.set_offline(False)
    until(page, lambda: is_left(put_on_elsewhere))


def test_the_button_of_a_notification_about_one_work_answers_for_that_alone(alice, page):
    other = alice.new_project("Quince tree")
    alice.post(f"/frame/{other}", state="on")
    page.goto(f"{alice.url}/shell/tonight?work={other}#done", wait_until="networkidle")
    until(page, lambda: alice.sums(other)["frame"]["state"] == "off")
    expect(page.get_by_role("button", name="It is off")).to_have_count(1)
    assert alice.sums()["frame"]["state"] == "on"


@pytest.mark.parametrize("word", ["done", "leave", "later"])
def test_what_is_touched_of_an_earlier_night_says_nothing_of_this_one(alice, page, word):
    took = told(page)
    page.goto(f"{alice.url}/shell/tonight?night=2026-01-20#{word}", wait_until="networkidle")
    expect(page.get_by_text("That was of an earlier night.")).to_be_visible()
    expect(page.get_by_role("button", name="It is off")).to_be_visible()
    assert (took, is_left(alice), alice.sums()["frame"]["state"]) == ([], False, "on")


def test_what_is_touched_of_the_night_it_is_still_counts(alice, page):
    ahead = -int(zone_where_it_is(23).removeprefix("Etc/GMT"))
    night = (datetime.now(UTC) + timedelta(hours=ahead - 12)).date()  # of the noon before
    page.goto(f"{alice.url}/shell/tonight?night={night}#leave", wait_until="networkidle")
    until(page, lambda: is_left(alice))
