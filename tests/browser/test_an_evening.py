"""An evening from end to end, in a real browser at phone size, by someone who begins without a name."""

from datetime import UTC, datetime

import pytest
from playwright.sync_api import Page, expect

from tests.browser.phones import axe_finds_nothing
from tests.house import Server

SAID_TO_US = "Failed to load resource"  # what Chromium itself says of a page that cannot be had


def at_night() -> str:
    """Name a zone (POSIX signs: west is +) in which it is about eleven in the evening now."""
    west = (datetime.now(UTC).hour - 23) % 24
    return f"Etc/GMT+{west}" if west <= 12 else f"Etc/GMT-{24 - west}"


@pytest.fixture
def evening(browser, browser_context_args, own_server: Server):
    """A small phone in the evening; nothing may complain on the console, the policy least of all."""
    small = {"viewport": {"width": 360, "height": 640}, "timezone_id": at_night(), "base_url": own_server.url}
    context = browser.new_context(**browser_context_args | small)
    page = context.new_page()
    said: list[str] = []
    page.on(
        "console", lambda message: said.append(message.text) if message.type in ("error", "warning") else None
    )
    page.on("pageerror", lambda error: said.append(str(error)))
    yield page
    assert [text for text in said if SAID_TO_US not in text] == []
    context.close()
    assert own_server.audit() == "No difference."


def test_an_evening_from_end_to_end(evening: Page, own_server: Server):
    begin_without_a_name(evening)
    tap_in(evening)
    tap_without_network(evening)
    put_right_and_close(evening)
    claim(evening)
    be_told_to_take_it_off(evening)
    sit_up(evening)
    look_back(evening)
    ask_what_cloth_this_is(evening)
    rest_it(evening)
    see_where_she_is_signed_in_and_leave(evening)
    for place in ("/", "/sign-in", "/cloth/gauge"):
        evening.goto(place)
        axe_finds_nothing(evening)


def begin_without_a_name(page: Page) -> None:
    page.goto("/")
    page.get_by_role("button", name="Begin without signing up").click()
    page.wait_for_url("**/projects/new")
    axe_finds_nothing(page)
    page.locator("main button.main").click()
    expect(page.locator("[aria-invalid=true]").first).to_be_visible()  # a sentence, and nothing lost
    page.locator("[name=title]").fill("Harbour lanterns")
    page.locator("[name=width]").fill("24")
    page.locator("[name=height]").fill("12")
    page.locator("main button.main").click()
    page.wait_for_url("**/projects/*-*")
    axe_finds_nothing(page)
    page.goto(page.url.split("?")[0] + "/stitch")
    page.wait_for_selector("[data-island=stitch][data-live]")


def tap_in(page: Page) -> None:
    for n in range(1, 8):
        page.locator("[data-act=tap]").tap()
        expect(page.locator("[data-slot=row_stitches]")).to_have_text(str(n))
    expect(page.locator("[data-slot=waiting]")).to_have_text("0")
    expect(page.locator("[data-slot=sitting]")).to_contain_text("min")
    axe_finds_nothing(page)


def tap_without_network(page: Page) -> None:
    page.evaluate("navigator.serviceWorker.ready.then(() => 1)")
    page.context.set_offline(True)
    for _ in range(5):
        page.locator("[data-act=tap]").tap()
    expect(page.locator("[data-slot=row_stitches]")).to_have_text("12")
    page.reload()
    expect(page.locator("[data-slot=row_stitches]")).to_have_text("12")
    page.context.set_offline(False)
    expect(page.locator("[data-slot=waiting]")).to_have_text("0", timeout=15_000)
    snapshot = page.request.get(page.url.removesuffix("stitch") + "snapshot").json()
    assert (snapshot["row_stitches"], snapshot["frame"]["state"]) == (12, "on")


def put_right_and_close(page: Page) -> None:
    page.locator("[data-act=undo]").click()
    expect(page.locator("[data-slot=row_stitches]")).to_have_text("11")
    for _ in range(13):
        page.locator("[data-act=tap]").tap()
    expect(page.locator("[data-slot=row_stitches]")).to_have_text("24")
    page.locator("[data-act=done]").click()
    if page.locator("dialog[open]").count():  # the width is no promise of how many a row has
        page.locator("dialog[open] button.main").click()
    expect(page.locator(".stitch [data-slot=row]")).to_have_text("2")
    expect(page.locator("[data-slot=waiting]")).to_have_text("0")


def claim(page: Page) -> None:
    page.goto("/account")
    axe_finds_nothing(page)
    page.get_by_role("link", name="Sign up and keep it").first.click()
    page.locator("[name=name]").fill("Alice")
    page.locator("[name=passphrase]").fill("linen, indigo, lamp")
    page.get_by_role("button", name="Sign up").click()
    page.wait_for_url("**/projects")
    expect(page.locator("main").get_by_text("Harbour lanterns").first).to_be_visible()


def be_told_to_take_it_off(page: Page) -> None:
    page.goto("/account")
    page.locator("[name=bedtime]").fill("22:00")
    page.locator("#settings button.main").click()
    expect(page.get_by_text("Kept.")).to_be_visible()
    for place in ("/projects", "/hours", "/cloth", "/account"):
        page.goto(place)
        expect(page.get_by_role("button", name="It is off").first).to_be_visible()
    axe_finds_nothing(page)
    page.get_by_role("button", name="It is off").first.click()
    expect(page.get_by_role("button", name="It is off")).to_have_count(0)


def sit_up(page: Page) -> None:
    page.goto("/projects")
    page.locator("main a[href$='/stitch']").first.click()
    page.wait_for_selector("[data-island=stitch][data-live]")
    page.locator("[data-act=sitting]").click()
    page.locator("#stopped").fill("at the mast")
    page.locator("dialog[open] button.main").click()
    expect(page.locator("[data-slot=sitting]")).not_to_contain_text("min")
    expect(page.locator("[data-slot=waiting]")).to_have_text("0")


def look_back(page: Page) -> None:
    page.goto("/hours")
    expect(page.get_by_text("24 stitches").first).to_be_visible()
    axe_finds_nothing(page)
    page.get_by_role("link", name="Earlier week").click()
    expect(page.get_by_text("24 stitches")).to_have_count(0)


def ask_what_cloth_this_is(page: Page) -> None:
    page.goto("/cloth/gauge")
    page.context.set_offline(True)
    page.reload()
    page.get_by_label("I counted").first.fill("28")
    page.locator("main input[inputmode]").nth(1).fill("2")
    expect(page.get_by_text("count Aida")).to_be_visible()
    axe_finds_nothing(page)
    page.context.set_offline(False)


def rest_it(page: Page) -> None:
    page.goto("/projects")
    page.locator("main a[href*='/projects/0']:not([href$='/stitch'])").first.click()
    with page.expect_response("**/state"):
        page.get_by_text("Resting", exact=True).click()
    expect(page.locator(".htmx-request")).to_have_count(0)
    page.goto("/projects")
    expect(page.get_by_role("heading", name="Resting")).to_be_visible()
    axe_finds_nothing(page)


def see_where_she_is_signed_in_and_leave(page: Page) -> None:
    page.goto("/account")
    expect(page.get_by_text("This one")).to_be_visible()
    axe_finds_nothing(page)
    page.get_by_role("button", name="Sign out").click()
    page.wait_for_url(lambda address: address.endswith("/"))
    page.goto("/projects")
    page.wait_for_url(lambda address: "/sign-in" in address)
    page.locator("[name=name]").fill("alice")
    page.locator("[name=passphrase]").fill("linen, indigo, lamp")
    page.get_by_role("button", name="Sign in").click()
    page.wait_for_url("**/projects")
    expect(page.locator("main").get_by_text("Harbour lanterns").first).to_be_visible()
    page.goto("/account")
    page.get_by_role("button", name="Sign out").click()
    page.wait_for_url(lambda address: address.endswith("/"))
