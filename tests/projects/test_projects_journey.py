"""Projects in a real browser, at phone size."""

import pytest
from playwright.sync_api import expect

from tests.browser.phones import OURS, Stitcher, complaints, in_nobodys_way


@pytest.fixture
def hers(page, server):
    """A page of a stitcher of her own, which must not complain on its console."""
    said = complaints(page)
    Stitcher.arrive(page.context, server)
    page.goto(f"{server.url}/projects")
    yield page
    refused = "Failed to load resource: the server responded with a status of 422"
    assert [text for text in said if not text.startswith(refused)] == []


def test_a_project_from_the_pattern_to_put_away(hers):
    hers.get_by_role("link", name="New project").click()
    hers.get_by_label("Title").fill("Harbour lanterns")
    hers.get_by_label("Stitches wide").fill("14o")
    hers.get_by_label("Stitches high").fill("98")
    hers.get_by_role("button", name="Make the project").click()
    expect(hers.get_by_label("Stitches wide")).to_be_focused()
    expect(hers.get_by_text("Write the width in digits only, from 1 to 10,000.")).to_be_visible()
    hers.get_by_label("Stitches wide").fill("140")
    hers.get_by_role("button", name="Make the project").click()
    expect(hers.get_by_role("heading", name="Harbour lanterns")).to_be_visible()

    address = hers.url
    hers.get_by_role("button", name="Resting").click()
    expect(hers.get_by_role("button", name="Resting")).to_have_attribute("aria-pressed", "true")
    assert hers.url == address
    hers.reload()
    expect(hers.get_by_role("button", name="Resting")).to_have_attribute("aria-pressed", "true")

    hers.get_by_role("button", name="Put away").click()
    hers.get_by_role("link", name="Put away (1)").click()
    hers.get_by_role("link", name="Harbour lanterns").click()
    hers.get_by_role("button", name="Take it out").click()
    expect(hers.get_by_role("button", name="Put away")).to_be_visible()


def test_only_the_fields_of_her_way_are_shown_but_never_hiding_what_is_wrong(hers, server):
    hers.goto(f"{server.url}/projects/new")
    hers.get_by_text("More about it").click()
    row, block = hers.get_by_label("First row"), hers.get_by_role("group", name="First block")
    expect(row).to_be_visible()
    expect(block).to_be_hidden()
    row.fill("0")
    hers.get_by_label("By blocks of ten").check()
    expect(row).to_be_hidden()
    expect(block).to_be_visible()
    hers.get_by_role("button", name="Make the project").click()
    expect(row).to_be_visible()
    expect(block).to_be_visible()


def test_nothing_stands_in_anyones_way(hers, server):
    made = hers.request.post(
        f"{server.url}/projects",
        form={"title": "A" * 120, "width": "140", "height": "98", "state": "in hand"},
        headers=OURS,
    )
    for address in ("/projects", "/projects/put-away", "/projects/new", made.url, f"{made.url}/edit"):
        hers.goto(address if address.startswith("http") else server.url + address)
        in_nobodys_way(hers)
