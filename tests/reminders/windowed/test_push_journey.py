"""A reminder from end to end in a real browser: asked for, sent, shown, answered without network."""

import json
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta

import pytest
from playwright.sync_api import Page, expect

from tests.browser.phones import Stitcher, complaints, go, in_nobodys_way, until
from tests.reminders.pushed import Worker, gives_address, on_page, turned_on
from tests.reminders.service import Browser
from tests.reminders.test_night_journey import zone_where_it_is

pytestmark = pytest.mark.browser_context_args(service_workers="allow")


@dataclass
class Waiting:
    """Berta's phone, whose bedtime comes: a real minute has to pass, so it is begun before other tests."""

    her: Stitcher
    browser: Browser
    page: Page
    bedtime: datetime


@pytest.fixture(scope="module")
def waiting(browser, browser_context_args, server, service):
    """Reminders turned on, the frame on, bedtime set to the coming minute."""
    context = browser.new_context(**{**browser_context_args, "service_workers": "allow"})
    push = service.subscribe()
    gives_address(context, push)
    her = Stitcher.begin(context, server)
    zone = zone_where_it_is(22)
    go(page := turned_on(her), f"{her.url}/projects/{her.project}/stitch")
    her.post(f"/frame/{her.project}", state="on")
    bedtime = (datetime.now(UTC) + timedelta(minutes=1)).replace(second=0, microsecond=0)
    there = bedtime - timedelta(hours=int(zone.removeprefix("Etc/GMT")))
    her.post("/account", hand="right", unit="in", bedtime=f"{there:%H:%M}", week_start="0", zone=zone)
    yield Waiting(her, push, page, bedtime)
    context.close()


@pytest.mark.usefixtures("waiting")
def test_she_turns_it_on_tries_it_and_turns_it_off(alice, browser_of_hers):
    page = on_page(alice, "/reminders")
    said = complaints(page)
    worker = Worker(page)
    page.reload()
    page.get_by_role("button", name="Remind me on this phone").tap()
    expect(page.get_by_text("This phone reminds you.")).to_be_visible()
    page.get_by_role("button", name="Try it").tap()
    expect(page.get_by_text("Sent. It shows in a few seconds.")).to_be_visible()
    worker.deliver(json.dumps(browser_of_hers.came[-1]["said"]))
    until(page, worker.shown)
    assert worker.shown()[0]["title"] == "This is how a reminder looks."
    page.reload()
    expect(page.get_by_text("This phone reminds you.")).to_be_visible()
    page.get_by_role("button", name="Turn off here").tap()
    expect(page.get_by_text("This phone does not remind you yet.")).to_be_visible()
    assert said == []


@pytest.fixture
def sheet(alice):
    """The sheet, with one work on its hoop and one tight on a scroll frame."""
    scroll = alice.new_project("Quince tree", frame="scroll")
    for project in (alice.project, scroll):
        alice.post(f"/frame/{project}", state="on")
        go(page := alice.context.new_page(), f"{alice.url}/projects/{project}/stitch")
        page.close()
    return on_page(alice, "/shell/tonight?night=2026-02-13")


def test_each_work_is_answered_for_by_itself(alice, sheet):
    sheet.get_by_role("button", name="It is slack").tap()
    expect(sheet.get_by_role("button", name="It is slack")).to_be_hidden()
    expect(sheet.get_by_role("button", name="It is off")).to_be_visible()
    sheet.get_by_role("button", name="It is off").tap()
    expect(sheet.get_by_text("Good night.")).to_be_visible()
    until(sheet, lambda: alice.sums()["frame"]["state"] == "off")


def test_the_button_on_the_notification_answers_for_all(alice, sheet):
    night = f"{datetime.now(UTC):%Y-%m-%d}"  # over tomorrow at noon at the soonest
    sheet.goto(f"{alice.url}/shell/tonight?night={night}#done")
    expect(sheet.get_by_text("Off the frame. Good night.")).to_be_visible()
    until(sheet, lambda: sheet.url.endswith(night))
    until(sheet, lambda: alice.sums()["frame"]["state"] == "off")


UNREADABLE = [
    "",
    "no JSON",
    "{}",
    "null",
    "7",
    '"night"',
    "[1]",
    '{"tag": 7}',
    '{"tag": ""}',
    '{"title": null, "open": []}',
]


def test_every_push_shows_a_notification_and_one_night_has_one(alice):
    page = on_page(alice, "/reminders")
    worker = Worker(page)
    for text in UNREADABLE:
        worker.deliver(text)
    until(page, worker.shown)
    assert [(one["title"], one["tag"]) for one in worker.shown()] == [
        ("Is your work off its frame?", "night")
    ]
    for title in ("first", "second"):
        worker.deliver(json.dumps({"title": title, "tag": "night-2026-02-13", "open": "/shell/tonight"}))
    until(page, lambda: "second" in str(worker.shown()))
    assert [one["title"] for one in worker.shown() if one["tag"] == "night-2026-02-13"] == ["second"]


@pytest.mark.parametrize(("action", "opened"), [("", ""), ("done", "#done"), ("leave", "#leave")])
def test_touched_it_opens_the_sheet_and_is_gone(alice, action, opened):
    page = on_page(alice, "/reminders")
    worker = Worker(page)
    said = {
        "title": "Off?",
        "tag": "night-2026-02-13",
        "open": "/shell/tonight?night=2026-02-13",
        "done": "It is off",
    }
    worker.deliver(json.dumps(said))
    until(page, worker.shown)
    assert set(worker.shown()[0]["actions"]) <= {"done", "later", "leave"}
    assert worker.touch(action) == [said["open"] + opened]
    assert worker.shown() == []


def test_the_pages_stand_in_nobodys_way(alice, sheet):
    in_nobodys_way(sheet)
    for path in ("/reminders", "/reminders/here"):
        sheet.goto(alice.url + path, wait_until="networkidle")
        in_nobodys_way(sheet)


@pytest.mark.browser_context_args(user_agent="Mozilla/5.0 (iPhone; CPU iPhone OS 18_0 like Mac OS X) Mobile")
def test_an_iphone_is_told_to_put_it_on_the_home_screen_first(alice):
    page = on_page(alice, "/reminders")
    expect(page.get_by_text("Put Evenrow on the home screen first")).to_be_visible()
    expect(page.get_by_role("button", name="Remind me on this phone")).to_be_hidden()


def test_blocked_notifications_are_said_with_what_to_do(alice, context):
    context.add_init_script("Object.defineProperty(Notification, 'permission', { value: 'denied' })")
    page = on_page(alice, "/reminders")
    expect(page.get_by_text("Notifications are blocked for Evenrow.")).to_be_visible()


def test_what_works_here_is_said_and_can_be_tried(alice):
    turned_on(alice).close()
    page = on_page(alice, "/reminders/here")
    Worker(page)
    page.reload(wait_until="networkidle")
    for name, words in {"worker": "Stitch is kept", "push": "Sent.", "sound": "heard?"}.items():
        page.locator(f"[data-act={name}]").tap()
        expect(page.locator(f"[data-thing={name}] [data-slot=state]")).to_contain_text(words)


def test_told_at_bedtime_she_answers_without_network_and_the_second_phone_knows(waiting, another_phone):
    """Push delivered, answered offline, network back."""
    her, page = waiting.her, waiting.page
    page.reload(wait_until="networkidle")
    worker = Worker(page)
    until(page, lambda: waiting.browser.came, seconds=100)
    assert datetime.now(UTC) >= waiting.bedtime
    (came,) = waiting.browser.came
    her.context.set_offline(True)
    worker.deliver(json.dumps(came["said"]))
    (stands,) = worker.shown()
    assert (stands["title"], stands["tag"]) == ("Your work is still on its frame.", came["topic"])
    assert {"done", "later", "leave"} >= set(stands["actions"])

    page.goto(her.url + stands["open"])
    page.get_by_role("button", name="It is off").tap()
    expect(page.get_by_text("Off the frame. Good night.")).to_be_visible()
    until(page, lambda: worker.shown() == [])
    assert her.sums()["frame"]["state"] == "on"  # the house does not know yet

    her.context.set_offline(False)
    page.evaluate("dispatchEvent(new Event('online'))")
    until(page, lambda: her.sums()["frame"]["state"] == "off")
    second = her.sign_in_on(another_phone())
    assert second.sums()["frame"]["state"] == "off"
    page = second.context.new_page()
    page.goto(f"{her.url}/projects/{her.project}/stitch")
    expect(page.locator("[data-slot=frame]")).to_have_text("off")
