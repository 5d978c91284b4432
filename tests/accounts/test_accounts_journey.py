"""Accounts in a real browser, at phone size."""

import re
from uuid import uuid4

import pytest
from playwright.sync_api import expect

from tests.accounts.conftest import PASSPHRASE
from tests.browser.phones import complaints, in_nobodys_way

LIVE = '[data-island="forms"][data-live]'


@pytest.fixture
def stranger(page, server):
    """A browser that has never been here; its page must not complain on its console."""
    said = complaints(page)
    page.goto(server.url)
    yield page
    expected = re.compile("Failed to load resource: the server responded with a status of (422|503)")
    assert [text for text in said if not expected.match(text)] == []


@pytest.fixture
def name():
    return f"Alice {uuid4()}"


def begin(page):
    page.get_by_role("button", name="Begin without signing up").click()
    page.get_by_label("Title").fill("Harbour lanterns")
    page.get_by_label("Stitches wide").fill("140")
    page.get_by_label("Stitches high").fill("98")
    page.get_by_role("button", name="Make the project").click()
    expect(page.get_by_role("heading", name="Harbour lanterns")).to_be_visible()


def sign_up(page, server, name):
    page.goto(f"{server.url}/accounts/new")
    page.get_by_label("Name", exact=True).fill(name)
    page.get_by_label("Passphrase").fill(PASSPHRASE)
    page.get_by_role("button", name="Sign up").click()
    expect(page).to_have_url(f"{server.url}/projects")


def test_begun_without_a_name_and_kept_under_one(stranger, server, name):
    begin(stranger)
    stranger.goto(f"{server.url}/account")
    expect(stranger.get_by_label("Time zone")).to_have_value("Europe/London")  # the browser's own
    stranger.get_by_role("link", name="Sign up and keep it").first.click()
    sign_up(stranger, server, name)
    expect(stranger.get_by_text("Harbour lanterns")).to_be_visible()
    stranger.goto(f"{server.url}/account")
    expect(stranger.get_by_role("heading", name=name)).to_be_visible()


def test_a_passphrase_can_be_pasted_and_looked_at(stranger, server):
    stranger.goto(f"{server.url}/accounts/new")
    stranger.wait_for_selector(LIVE)
    field = stranger.get_by_label("Passphrase")
    field.evaluate("e => e.addEventListener('paste', p => window.refused = p.defaultPrevented)")
    field.focus()
    stranger.keyboard.insert_text("pasted in whole")
    expect(field).to_have_attribute("type", "password")
    stranger.get_by_role("button", name="Show").click()
    expect(field).to_have_attribute("type", "text")
    expect(field).to_have_value("pasted in whole")
    stranger.get_by_role("button", name="Show").click()
    expect(field).to_have_attribute("type", "password")


def test_settings_are_kept_without_leaving_the_page(stranger, server, name):
    sign_up(stranger, server, name)
    stranger.goto(f"{server.url}/account")
    stranger.wait_for_selector(LIVE)
    zone = stranger.get_by_label("Time zone")
    zone.fill("Mars/Olympus")
    stranger.get_by_label("Left").check(force=True)
    stranger.get_by_role("button", name="Keep").click()
    expect(stranger.get_by_text("There is no such time zone.")).to_be_visible()
    expect(stranger.get_by_label("Left")).to_be_checked()
    stranger.get_by_role("button", name="Use this phone's").click()
    expect(zone).to_have_value("Europe/London")
    stranger.get_by_role("button", name="Keep").click()
    expect(stranger.get_by_text("Kept.")).to_be_visible()
    stranger.reload()
    expect(stranger.locator("html")).to_have_attribute("data-hand", "left")


def test_another_device_is_signed_out_from_here(stranger, server, name, new_context):
    sign_up(stranger, server, name)
    other = new_context(user_agent="Mozilla/5.0 (Linux; Android 14; K) Mobile").new_page()
    other.goto(f"{server.url}/sign-in?next=/account")
    other.get_by_label("Name", exact=True).fill(name)
    other.get_by_label("Passphrase").fill(PASSPHRASE)
    other.get_by_role("button", name="Sign in").click()
    expect(other).to_have_url(f"{server.url}/account")
    stranger.goto(f"{server.url}/account")
    stranger.get_by_role("button", name=re.compile("Sign out: Android phone")).click()
    expect(stranger.get_by_text("Android phone")).to_have_count(0)
    other.get_by_role("button", name="Keep").click()  # a part of the page: the whole page goes to the door
    expect(other).to_have_url(re.compile("/sign-in"))


def test_signing_out_asks_to_sign_in_again(stranger, server, name):
    sign_up(stranger, server, name)
    stranger.goto(f"{server.url}/account")
    stranger.get_by_role("button", name="Sign out").click()
    expect(stranger.get_by_role("link", name="Sign in")).to_be_visible()
    stranger.goto(f"{server.url}/account")
    expect(stranger.get_by_role("heading", name="Sign in")).to_be_visible()


def tap(page):
    """Lay one stitch on the phone, as the counter does; the page's own phone, since modules are made once."""
    page.evaluate(
        """async () => {
          const base = document.querySelector('script[src$="app.js"]').src.replace('app.js', '');
          const { openPhone } = await import(base + 'journal/phone.js');
          window.phone = await openPhone({ account: document.body.dataset.account });
          const [project] = window.phone.projects();
          await window.phone.lay(project, [{ kind: 'stitches', row: 1, by: 1 }]);
        }"""
    )


def test_what_still_waits_on_the_phone_comes_along_too(stranger, server, name, new_context):
    sign_up(new_context().new_page(), server, name)
    begin(stranger)
    project = stranger.url.rsplit("/", 1)[1]
    stranger.goto(f"{stranger.url}/stitch")
    stranger.wait_for_selector('[data-island="stitch"][data-live]')
    stranger.context.route("**/journal", lambda route: route.fulfill(status=503))
    tap(stranger)
    stranger.goto(f"{server.url}/sign-in")
    stranger.wait_for_selector(LIVE)
    stranger.get_by_label("Name", exact=True).fill(name)
    stranger.get_by_label("Passphrase").fill(PASSPHRASE)
    stranger.get_by_role("button", name="Sign in").click()
    expect(stranger.get_by_text("could not be sent yet")).to_be_visible(timeout=15_000)
    stranger.context.unroute("**/journal")
    stranger.get_by_role("button", name="Sign in").click()
    expect(stranger).to_have_url(f"{server.url}/projects")
    assert stranger.request.get(f"{server.url}/projects/{project}/snapshot").json()["stitches"] == 1


def test_nothing_stands_in_anyones_way(stranger, server, name):
    for address in ("/sign-in", "/accounts/new", "/"):
        check(stranger, server.url + address)
    begin(stranger)
    for address in ("/account", "/sign-in", "/accounts/new"):
        check(stranger, server.url + address)
    sign_up(stranger, server, name)
    check(stranger, f"{server.url}/account")


def check(page, address):
    page.goto(address)
    for summary in page.locator("summary:visible").all():
        summary.click()
    in_nobodys_way(page)


def test_the_first_page_fits_a_small_phone_whole(stranger):
    stranger.set_viewport_size({"width": 360, "height": 640})
    assert stranger.evaluate("document.documentElement.scrollHeight <= innerHeight")
