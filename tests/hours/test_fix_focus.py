"""Times put right by key: after each fix the focus is on what was fixed, or on what is said of it."""

import pytest
from playwright.sync_api import expect

from tests.browser.phones import Stitcher
from tests.hours.test_hours_journey import MONDAY, NAMED, sit


@pytest.fixture
def alice(context, server):
    return Stitcher.begin(context, server)


@pytest.fixture
def hers(alice, page):
    """Last week's times, with a sitting of 1 h 10 on its Monday."""
    sit(alice, page, alice.project, 20, 70, 84)
    page.goto(f"{alice.url}/hours/sittings?week={NAMED}")
    return page


def test_after_each_fix_the_focus_is_where_it_was_made(alice, hers):
    focused = hers.locator(":focus")
    its = hers.get_by_role("region", name="Harbour lanterns")

    hers.get_by_text("Change").click()
    hers.get_by_label("Ended").last.fill(f"{MONDAY}T19:00")
    hers.get_by_role("button", name="Keep these times").click()
    expect(focused).to_have_attribute("name", "end")
    expect(focused).to_have_accessible_description(
        "The end must come after the beginning. Give a later time."
    )

    focused.fill(f"{MONDAY}T20:45")
    focused.press("Enter")
    expect(hers.get_by_role("status")).to_have_text("Kept.")
    expect(its).to_be_focused()

    hers.get_by_text("Change").click()
    hers.get_by_role("button", name="Strike it out").press("Enter")
    expect(hers.get_by_role("status")).to_have_text("Struck out.")
    expect(its).to_be_focused()
    hers.keyboard.press("Tab")
    expect(focused).to_have_text("Put back")
    hers.keyboard.press("Enter")
    expect(hers.get_by_role("status")).to_have_text("Put back.")
    expect(its).to_be_focused()

    hers.get_by_text("Add a forgotten one").click()
    hers.get_by_label("Began").first.fill("2020-01-06T15:00")
    hers.get_by_label("Ended").first.fill("")
    hers.get_by_role("button", name="Add it").click()
    expect(focused).to_have_accessible_description("Say when it ended.")
    focused.fill("2020-01-06T15:30")
    hers.get_by_role("button", name="Add it").click()
    expect(hers.get_by_role("status")).to_have_text("Added.")  # in another week: nothing to stand on
    expect(hers.get_by_role("status")).to_be_focused()


def test_a_stale_form_is_answered_where_she_is(alice, hers):
    other = hers.context.new_page()
    other.goto(hers.url)
    for page in (other, hers):
        page.get_by_text("Change").click()
        page.get_by_role("button", name="Strike it out").click()
        if page is other:
            expect(page.get_by_role("status")).to_have_text("Struck out.")
    expect(hers.get_by_role("alert")).to_have_text(
        "This sitting was struck out meanwhile. Put it back first."
    )
    expect(hers.get_by_role("alert")).to_be_focused()
