"""An evening's end in a real browser, at phone size: told, done with one tap, with and without network."""

from datetime import UTC, datetime

import pytest
from playwright.sync_api import expect

from tests.browser.phones import PHONE, Stitcher, complaints, go, in_nobodys_way, until

OFF = "is still on the hoop. Take it off for the night."


def zone_where_it_is(hour):
    """Name a zone where it is now that hour; these names count westwards."""
    ahead = (hour - datetime.now(UTC).hour + 11) % 24 - 11
    return f"Etc/GMT{-ahead:+}"


@pytest.fixture
def alice(context, server):
    """Alice, for whom it is past eleven in the evening, and who sits at Harbour lanterns."""
    her = Stitcher.begin(context, server)
    settings = {"hand": "right", "unit": "in", "bedtime": "22:30", "week_start": "0"}
    her.post("/account", zone=zone_where_it_is(23), **settings)
    her.post(f"/frame/{her.project}", state="on")
    return her


@pytest.fixture
def hers(alice, page):
    """Her page of hours, which must not complain on its console."""
    said = complaints(page)
    page.goto(f"{alice.url}/hours", wait_until="networkidle")
    yield page
    assert [text for text in said if "ERR_INTERNET_DISCONNECTED" not in text] == []


def frame(alice):
    return alice.sums()["frame"]["state"]


def test_she_is_told_and_takes_it_off_with_one_tap(alice, hers):
    posts = []
    hers.on("request", lambda request: posts.append(request.url) if request.method == "POST" else None)
    expect(hers.get_by_text(OFF)).to_be_visible()
    hers.get_by_role("button", name="It is off").tap()
    expect(hers.get_by_text(OFF)).to_be_hidden()
    until(hers, lambda: frame(alice) == "off")
    assert {url.removeprefix(alice.url) for url in posts} == {"/journal"}
    hers.reload()
    expect(hers.get_by_text(OFF)).to_be_hidden()


@pytest.mark.browser_context_args(service_workers="allow")
def test_without_network_it_is_said_from_what_the_phone_knows(alice, hers, context):
    alice.post(f"/frame/{alice.project}", state="off")
    go(hers, f"{alice.url}/projects/{alice.project}/stitch")
    hers.evaluate("navigator.serviceWorker.ready.then(() => true)")
    hers.goto(f"{alice.url}/hours")
    expect(hers.get_by_text(OFF)).to_be_hidden()
    context.set_offline(True)
    hers.evaluate(PHONE)
    hers.evaluate("(p) => phone.lay(p, [{kind: 'frame', state: 'on'}])", alice.project)
    expect(hers.get_by_text(OFF)).to_be_visible()

    hers.goto(f"{alice.url}/projects/{alice.project}/stitch")  # the shell, which nobody drew it on
    expect(hers.get_by_text(OFF)).to_be_visible()
    hers.get_by_role("button", name="It is off").tap()
    expect(hers.get_by_text(OFF)).to_be_hidden()
    hers.reload()
    expect(hers.get_by_text(OFF)).to_be_hidden()

    assert frame(alice) == "off"
    context.set_offline(False)
    hers.evaluate(PHONE)
    until(hers, lambda: hers.evaluate("phone.waiting()") == 0)
    assert frame(alice) == "off"


def test_another_phones_tap_is_heard_of(alice, hers):
    expect(hers.get_by_text(OFF)).to_be_visible()
    alice.post(f"/frame/{alice.project}", state="off")
    hers.evaluate("document.body.dispatchEvent(new CustomEvent('evenrow:frame'))")
    expect(hers.get_by_text(OFF)).to_be_hidden()


def test_without_scripts_the_button_is_a_plain_form(alice, browser):
    state = alice.context.storage_state()
    with browser.new_context(java_script_enabled=False, storage_state=state) as plain:
        page = plain.new_page()
        page.goto(f"{alice.url}/hours?week=2026-W07")
        page.get_by_role("button", name="It is off").click()
        page.wait_for_url("**/hours?week=2026-W07")
        expect(page.get_by_text(OFF)).to_be_hidden()
        assert frame(alice) == "off"


def test_the_notice_stands_in_nobodys_way(alice, hers):
    long = alice.new_project("A" * 120)
    alice.post(f"/frame/{long}", state="on")
    hers.reload()
    expect(hers.get_by_text(OFF)).to_have_count(2)
    in_nobodys_way(hers)


PAGES = [
    "/projects",
    "/projects/new",
    "/projects/put-away",
    "/hours",
    "/hours/sittings",
    "/cloth",
    "/account",
]


def test_its_button_stays_inside_the_notice_on_every_page(alice, hers):
    hers.set_viewport_size({"width": 360, "height": 640})
    for address in (*PAGES, f"/projects/{alice.project}", f"/projects/{alice.project}/edit"):
        hers.goto(alice.url + address)
        notice, button = (hers.locator(f".tonight {one}").first.bounding_box() for one in ("form", "button"))
        assert button["x"] + button["width"] <= notice["x"] + notice["width"] <= 360, address
        assert button["height"] >= 48, address
