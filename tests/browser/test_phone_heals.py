"""A script that could not be had on a first visit: the page opens itself again, and nothing is lost."""

import pytest
from playwright.sync_api import Page, expect

from tests.browser.phones import painted, tap_on, until

SAID = "This needs the network once; the page opens itself again then."


@pytest.fixture
def page(page: Page) -> Page:
    """A page that no worker has taken yet."""
    page.add_init_script("delete Navigator.prototype.serviceWorker")
    return page


def opened(alice, page: Page) -> Page:
    page.goto(f"{alice.url}/projects/{alice.project}/stitch")
    page.wait_for_selector("[data-live][data-island=stitch]")
    return page


def test_a_button_dead_without_network_is_alive_when_it_is_back(alice, page, context):
    opened(alice, page)
    context.set_offline(True)
    page.click("[data-act=more]")
    expect(page.locator(".say")).to_contain_text(SAID)
    with page.expect_event("load"):
        context.set_offline(False)
    page.wait_for_selector("[data-live][data-island=stitch]")
    page.click("[data-act=more]")
    expect(page.get_by_role("heading", name="More")).to_be_visible()


def test_taps_whose_sender_could_not_be_had_are_sent_when_the_network_is_back(alice, page, context):
    opened(alice, page)
    context.set_offline(True)
    tap_on(page, 7)
    page.wait_for_timeout(300)
    context.set_offline(False)
    until(page, lambda: alice.on_the_server() == 7)
    assert painted(page) == 7


def test_it_waits_for_a_finger_to_lift_and_a_question_to_be_answered(alice, page, context):
    opened(alice, page)
    page.evaluate("document.querySelector('[data-act=step]').click()")  # no touch: it would fetch the rest
    page.wait_for_selector("dialog[open]")
    context.set_offline(True)
    page.evaluate("document.querySelector('[data-act=undo]').click()")
    expect(page.locator(".say")).to_contain_text(SAID)
    page.evaluate("window.same = true")
    context.set_offline(False)
    page.wait_for_timeout(700)
    assert page.evaluate("window.same"), "a question was open"
    page.locator("dialog").get_by_role("button", name="Close").click()
    touches = page.context.new_cdp_session(page)
    box = page.locator("[data-act=tap]").bounding_box()
    finger = [{"x": box["x"] + 90, "y": box["y"] + 90}]
    touches.send("Input.dispatchTouchEvent", {"type": "touchStart", "touchPoints": finger})
    page.evaluate("dispatchEvent(new Event('online'))")
    page.wait_for_timeout(700)
    assert page.evaluate("window.same"), "a finger was down"
    touches.send("Input.dispatchTouchEvent", {"type": "touchEnd", "touchPoints": []})
    with page.expect_event("load"):
        page.evaluate("dispatchEvent(new Event('online'))")


def test_it_opens_again_when_the_worker_has_taken_the_page(alice, context):
    page = context.new_page()
    page.add_init_script("""
      navigator.serviceWorker.register = ((own) => async (...given) => {
        await new Promise((go) => (window.go = go));
        return own.apply(navigator.serviceWorker, given);
      })(navigator.serviceWorker.register)""")
    page.route("**/more.js", lambda route: route.abort())
    opened(alice, page)
    page.click("[data-act=more]")
    expect(page.locator(".say")).to_contain_text(SAID)
    page.unroute("**/more.js")
    with page.expect_event("load"):
        page.evaluate("go()")
    page.wait_for_selector("[data-live][data-island=stitch]")
    page.click("[data-act=more]")
    expect(page.get_by_role("heading", name="More")).to_be_visible()
