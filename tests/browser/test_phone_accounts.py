"""One phone, several stitchers: what waits stays with her who tapped it; nobody else sees or sends it."""

import pytest

from tests.browser.phones import (
    PASSPHRASE,
    PHONE,
    Stitcher,
    go,
    is_kept,
    lay,
    painted,
    shown,
    state,
    until,
    waiting,
)

LEFT = """async () => [...await caches.keys()].filter((name) => /pages|owner/.test(name))"""


@pytest.fixture
def bob(new_context, server) -> Stitcher:
    """Bob has an account, and signs in on Alice's phone."""
    return Stitcher.begin(new_context(), server)


def sign_in(page, url, name):
    page.goto(f"{url}/sign-in")
    page.get_by_label("Name").fill(name)
    page.get_by_label("Passphrase", exact=True).fill(PASSPHRASE)
    page.get_by_role("button", name="Sign in").click()
    page.wait_for_url("**/projects")


def sign_out(page, url):
    page.goto(f"{url}/account")
    page.evaluate(PHONE)
    page.get_by_role("button", name="Sign out", exact=True).last.click()


def test_signing_out_sends_what_waits_first(alice):
    page = alice.open()
    lay(page, alice.project)
    sign_out(page, alice.url)
    page.wait_for_url(f"{alice.url}/")
    assert page.evaluate(LEFT) == []
    alice.post("/sign-in", name=alice.name, passphrase=PASSPHRASE)
    assert alice.on_the_server() == 1


def test_signed_out_without_network_and_another_account_in_between(alice, bob, context):
    page = alice.open()
    until(page, lambda: is_kept(page))
    page.goto(f"{alice.url}/account")
    page.goto(f"{alice.url}/projects/{alice.project}/stitch")
    page.evaluate(PHONE)
    context.set_offline(True)
    lay(page, alice.project, by=7)
    page.goto(f"{alice.url}/account")
    page.get_by_role("button", name="Sign out", exact=True).last.click()
    page.wait_for_url(f"{alice.url}/", timeout=20_000)
    assert "Harbour lanterns" not in page.content()
    page.get_by_text("What you had not sent (1) is kept on it, and goes when you sign in again.").wait_for()
    page.goto(f"{alice.url}/projects/{alice.project}/stitch")
    assert page.get_by_role("heading", name="No network").is_visible()

    sent = []
    context.on(
        "request",
        lambda request: sent.append(request.post_data_json) if request.url.endswith("/journal") else 0,
    )
    page.goto("about:blank")  # else that page tells the house itself, and goes elsewhere
    context.set_offline(False)
    page.goto(f"{alice.url}/projects")
    assert "/sign-in" in page.url  # the first contact was the sign-out
    sign_in(page, alice.url, bob.name)
    go(page, f"{alice.url}/projects/{bob.project}/stitch")
    lay(page, bob.project)
    until(page, lambda: waiting(page) == 0)
    assert shown(page, bob.project) == 1
    assert {entry["by"] for batch in sent for entry in batch["entries"]} == {1}
    sign_out(page, alice.url)
    page.wait_for_url(f"{alice.url}/")

    sign_in(page, alice.url, alice.name)
    go(page, f"{alice.url}/projects/{alice.project}/stitch")
    until(page, lambda: painted(page) == 7 and waiting(page) == 0)
    assert alice.on_the_server() == 7


def test_a_page_left_open_when_another_signs_in_keeps_its_taps(alice, bob, context):
    page = alice.open()
    bob.context = context
    bob.post("/sign-in", name=bob.name, passphrase=PASSPHRASE)  # the cookie is Bob's from here on
    lay(page, alice.project)
    until(page, lambda: state(page) == "other-account")
    assert (waiting(page), shown(page, alice.project)) == (1, 1)
    alice.post("/sign-in", name=alice.name, passphrase=PASSPHRASE)
    page.evaluate("phone.send()")
    until(page, lambda: waiting(page) == 0)
    assert alice.on_the_server() == 1


def test_a_slow_network_never_shows_the_last_stitchers_pages(alice, bob, context):
    page = alice.open("/projects")
    until(page, lambda: is_kept(page))
    page.goto(f"{alice.url}/projects")  # kept for her
    alice.post("/sign-out")
    page.goto(f"{alice.url}/sign-in")

    def slowly(route):
        page.wait_for_timeout(2500)
        route.continue_()

    page.get_by_label("Name").fill(bob.name)
    page.get_by_label("Passphrase", exact=True).fill(PASSPHRASE)
    context.route("**/projects", slowly)
    page.get_by_role("button", name="Sign in").click()
    page.wait_for_url("**/projects")
    content = page.content()
    assert bob.project in content
    assert alice.project not in content
