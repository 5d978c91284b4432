"""The bag and the finishing sheet in a real browser at phone size."""

import pytest
from playwright.sync_api import expect

from tests.browser.phones import Stitcher, complaints, in_nobodys_way
from tests.cloth.counter import SHIFTS
from tests.cloth.forty import forty
from webapp.cloth.slip_text import Slip, write

SLIP = Slip(70, 98, 14, title="Quince tree", threads=forty()[:8])


@pytest.fixture
def project(page, server):
    """A project whose legend came with a slip."""
    her = Stitcher.arrive(page.context, server)
    return server.url + her.post("/cloth/slip", s=write(SLIP))


@pytest.mark.parametrize("sheet", ["bag", "finishing"])
def test_a_sheet_stands_still_and_a_thumb_finds_every_line(page, project, sheet):
    page.add_init_script(SHIFTS)
    for width, height in ((390, 844), (360, 640)):
        page.set_viewport_size({"width": width, "height": height})
        page.goto(f"{project}/{sheet}")
        assert page.evaluate("shifted") == 0
    in_nobodys_way(page)
    page.get_by_label("A line of your own").fill("Flask of tea")
    page.get_by_role("button", name="Add", exact=True).tap()
    expect(page.get_by_role("button", name="Remove Flask of tea")).to_be_visible()
    in_nobodys_way(page)


def test_lines_are_ticked_as_fast_as_a_thumb_goes_and_stay_so(page, project):
    said = complaints(page)
    page.goto(f"{project}/bag")
    lines = page.locator("[aria-pressed]")
    many = lines.count()
    for n in range(many):
        lines.nth(n).tap()
    expect(page.locator("#sum")).to_have_text(f"{many} of {many}")
    page.reload()
    expect(page.locator('[aria-pressed="true"]')).to_have_count(many)
    page.get_by_role("button", name="Start over").tap()
    expect(page.locator('[aria-pressed="true"]')).to_have_count(0)
    expect(page.locator("#sum")).to_have_text(f"0 of {many}")
    assert said == []


def test_her_own_line_is_added_ticked_and_removed_where_she_is(page, project):
    page.goto(f"{project}/finishing")
    page.get_by_label("A line of your own").fill("Sign it")
    page.keyboard.press("Enter")
    line = page.get_by_role("button", name="Sign it", exact=True)
    line.tap()
    expect(line).to_have_attribute("aria-pressed", "true")
    expect(page.get_by_label("A line of your own")).to_have_value("")
    page.get_by_role("button", name="Remove Sign it").tap()
    expect(line).to_have_count(0)
    page.get_by_role("button", name="Add", exact=True).tap()
    expect(page.get_by_text("Write what to take along or to do.")).to_be_visible()


@pytest.mark.browser_context_args(java_script_enabled=False)
def test_without_scripts_it_is_a_form(page, project):
    page.goto(f"{project}/bag")
    page.get_by_role("button", name="Scissors").tap()
    expect(page.get_by_role("button", name="Scissors")).to_have_attribute("aria-pressed", "true")
    page.get_by_label("A line of your own").fill("Flask of tea")
    page.get_by_role("button", name="Add", exact=True).tap()
    page.get_by_role("button", name="Remove Flask of tea").tap()
    expect(page.get_by_text("Flask of tea")).to_have_count(0)
    expect(page).to_have_url(f"{project}/bag")


def test_on_paper_there_are_boxes_and_no_buttons(page, project):
    page.goto(f"{project}/finishing")
    page.emulate_media(media="print")
    expect(page.get_by_role("button", name="Wash it")).to_be_visible()
    for hidden in ("Start over", "Add", "Print"):
        expect(page.get_by_role("button", name=hidden)).to_be_hidden()
    assert page.evaluate("getComputedStyle(document.body).backgroundColor") == "rgb(255, 255, 255)"
    assert page.pdf().count(b"/Type /Page\n") == 1


def test_a_project_that_is_finished_is_led_to_its_finishing(page, project):
    page.goto(project)
    page.get_by_role("button", name="Finished").tap()
    page.get_by_role("link", name="Finish it safely").tap()
    expect(page.get_by_role("heading", name="Finishing")).to_be_visible()
