"""A phone that goes on reminding: with another key of the house, after signing in again, after a cut."""

import pytest
from playwright.sync_api import expect

from tests.browser.phones import Stitcher, until
from tests.reminders.pushed import on_page, turned_on
from webapp.reminders.vapid import make_key, public_key

pytestmark = pytest.mark.browser_context_args(service_workers="allow")


@pytest.mark.parametrize("first", ["/projects", "/reminders"])
def test_signed_in_again_the_phone_reminds_her_by_itself_and_no_other(alice, server, browser_of_hers, first):
    page = turned_on(alice)
    alice.post(f"/frame/{alice.project}", state="on")
    page.goto(f"{alice.url}/account", wait_until="networkidle")
    page.get_by_role("button", name="Sign out", exact=True).last.click()
    page.wait_for_url(f"{alice.url}/")

    other = Stitcher.arrive(alice.context, server)
    page.goto(f"{alice.url}/reminders", wait_until="networkidle")
    expect(page.get_by_text("This phone does not remind you yet.")).to_be_visible()
    other.post("/sign-out")

    alice.sign_in_on(alice.context)
    page.goto(f"{alice.url}{first}")
    until(page, lambda: alice.context.request.get(f"{alice.url}/reminders/phones.json").json()["on"])
    page.goto(f"{alice.url}/reminders", wait_until="networkidle")
    expect(page.get_by_text("This phone reminds you.")).to_be_visible()
    page.get_by_role("button", name="Try it").tap()
    expect(page.get_by_text("Sent. It shows in a few seconds.")).to_be_visible()
    assert len(browser_of_hers.came) == 1


def test_another_key_of_the_house_renews_the_phone(alice, server, browser_of_hers):
    turned_on(alice).close()
    former = public_key(server.data)
    (server.data / "vapid.pem").unlink()
    make_key(server.data)
    alice.post(f"/frame/{alice.project}", state="on")
    page = on_page(alice, f"/projects/{alice.project}/stitch")
    page.goto(f"{alice.url}/hours")
    kept = "localStorage.getItem('evenrow:renewed')"
    until(page, lambda: page.evaluate(kept))
    page.goto(f"{alice.url}/reminders", wait_until="networkidle")
    page.get_by_role("button", name="Try it").tap()
    expect(page.get_by_text("Sent. It shows in a few seconds.")).to_be_visible()
    assert browser_of_hers.came[-1]["key"] == public_key(server.data) != former


def test_a_renewal_that_was_cut_off_is_tried_again_with_the_next_page(alice, server, browser_of_hers):
    turned_on(alice).close()
    (server.data / "vapid.pem").unlink()
    make_key(server.data)
    alice.post(f"/frame/{alice.project}", state="on")
    page = on_page(alice, f"/projects/{alice.project}/stitch")
    page.route("**/phones.json", lambda r: r.abort() if r.request.method == "POST" else r.continue_())
    with page.expect_event("requestfailed", lambda r: "phones.json" in r.url):
        page.goto(f"{alice.url}/hours")
    page.unroute("**/phones.json")
    page.goto(f"{alice.url}/hours")
    about = f"{alice.url}/reminders/phones.json"
    until(page, lambda: alice.context.request.get(about).json()["told"] == public_key(server.data))
