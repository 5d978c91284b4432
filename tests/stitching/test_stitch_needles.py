"""Needles in hand: a strip of threads, one of which taps are laid with; others wait where she parked them."""

import re
from uuid import uuid4

import pytest
from playwright.sync_api import expect

from tests.stitching.needles import chip, legend, press_long, threads


def test_taps_go_to_the_needle_in_hand_and_what_is_left_is_told(desk):
    page = legend(desk)
    desk.tap(2)
    chip(page, "Madder dark").click()
    desk.tap(3)
    expect(page.locator(".chip[aria-pressed=true] small")).to_contain_text("297 left · ")
    chip(page, "Sea green").click()
    desk.tap(5)
    desk.act("back")
    desk.act("undo")
    assert threads(desk) == {"Madder dark": {"cross": [3, 3]}, "Sea green": {"cross": [5, 5]}}
    assert desk.slot("row_stitches") == "10"


def test_a_needle_put_down_leaves_taps_to_nobody(desk):
    page = legend(desk)
    chip(page, "Madder dark").click()
    desk.tap()
    chip(page, "Madder dark").click()
    desk.answer("Put it down")
    desk.tap()
    assert threads(desk) == {"Madder dark": {"cross": [1, 1]}}


def test_the_needle_in_hand_is_there_again_after_a_reload_before_the_strip_is(desk):
    page = legend(desk)
    chip(page, "Sea green").click()
    desk.open()
    desk.tap(2)
    expect(page.locator(".chip[aria-pressed=true]")).to_contain_text("Sea green")
    assert threads(desk) == {"Sea green": {"cross": [2, 2]}}


def test_a_long_press_parks_a_needle_and_picking_it_up_leads_back_there(desk):
    page = legend(desk, step="row")
    chip(page, "Madder dark").click()
    desk.act("step")
    desk.answer("5")
    desk.tap(2)
    press_long(page, chip(page, "Sea green"))
    expect(chip(page, "Sea green, parked at Row 1, column 11")).to_contain_text("1 · 11")
    assert desk.slot("row_stitches") == "10"
    desk.act("done")
    desk.wait_for("row", 2)
    chip(page, "Sea green, parked at Row 1, column 11").click()
    desk.wait_for("row", 1)
    expect(page.locator(".chip[data-parked]")).to_have_count(0)


def test_a_miscount_and_what_is_unpicked_are_of_the_thread_in_hand_but_spend_none(desk):
    page = legend(desk)
    chip(page, "Madder dark").click()
    desk.tap(8)
    desk.act("says")
    page.get_by_label("Stitches really there").fill("10")
    desk.answer("It was miscounted")
    desk.wait_for("row_stitches", 10)
    desk.act("says")
    page.get_by_label("Stitches really there").fill("4")
    desk.answer("I unpicked back to there")
    desk.wait_for("row_stitches", 4)
    assert threads(desk) == {"Madder dark": {"cross": [4, 8]}}


def test_up_to_twelve_needles_are_chosen_from_a_long_legend(desk):
    many = [{"symbol": chr(65 + n), "thread": f"Shade {n}", "full": "10"} for n in range(14)]
    page = legend(desk, many)
    page.get_by_role("button", name="Choose needles").click()
    ticks = page.locator("dialog input[type=checkbox]")
    for n in range(12):
        ticks.nth(n).check()
    ticks.nth(12).click()
    expect(ticks.nth(12)).not_to_be_checked()
    expect(page.get_by_text("12 of 12 needles.")).to_be_visible()
    desk.answer("Take these")
    expect(page.locator(".chip[aria-pressed]")).to_have_count(12)


def test_a_thread_that_may_not_reach_is_told_once_while_more_can_be_bought(desk):
    page = legend(desk)
    desk.post("/thread/stash", id=str(uuid4()), thread="Madder dark", skeins="0.05", kind="cotton")
    desk.open()
    chip(page, "Madder dark").click()
    desk.tap(2)
    said = page.locator(".say")
    expect(said).to_contain_text("Madder dark: what is left may not reach.")
    said.get_by_role("button", name="Look").click()
    page.wait_for_url(f"**/projects/{desk.id}/thread/running")


@pytest.mark.parametrize("size", [(360, 640), (390, 844)])
def test_the_field_stays_large_and_the_symbol_in_hand_is_read_at_arms_length(desk, size):
    desk.page.set_viewport_size({"width": size[0], "height": size[1]})
    page = legend(desk)
    chip(page, "Madder dark").click()
    swatch = page.locator(".chip[aria-pressed=true] .swatch")
    assert swatch.evaluate("node => parseFloat(getComputedStyle(node).fontSize)") >= 40
    assert swatch.bounding_box()["height"] >= 40
    assert page.locator(".field").bounding_box()["height"] >= 0.35 * size[1]
    assert page.evaluate("document.documentElement.scrollWidth") <= size[0]


def test_without_a_legend_nothing_is_said_of_needles(desk):
    page = desk.open()
    desk.act("more")
    expect(page.get_by_role("button", name="Passes")).to_be_visible()
    expect(page.get_by_role("button", name="Needles")).to_have_count(0)
    assert page.locator(".strip").count() == 0


# What a plan or a legend changed meanwhile does to a needle


def drop_lines(desk, *names):
    """Take lines out of the legend, as she does on their own page."""
    html = desk.page.request.get(f"{desk.server.url}/projects/{desk.id}/thread").text()
    for line in dict.fromkeys(re.findall(rf"/projects/{desk.id}/thread/lines/[0-9a-f-]{{36}}", html)):
        if any(name in desk.page.request.get(desk.server.url + line).text() for name in names):
            desk.post(f"{line}/remove")


def test_a_needle_parked_in_a_row_leads_nowhere_once_it_is_worked_by_blocks(desk):
    page = legend(desk)
    chip(page, "Sea green").click()
    desk.tap(3)
    press_long(page, chip(page, "Sea green"))
    desk.snapshot()
    desk.post(
        f"/projects/{desk.id}",
        title="Harbour lanterns",
        width=140,
        height=98,
        count=14,
        over=1,
        working="blocks",
    )
    desk.open()
    expect(page.locator(".chip[data-parked]")).to_have_count(0)
    chip(page, "Sea green").click()
    desk.tap(2)
    assert threads(desk) == {"Sea green": {"cross": [5, 5]}}
    assert page.evaluate("phone.refused()") == []


def test_a_line_taken_out_of_the_legend_is_in_no_hand(desk):
    page = legend(desk)
    chip(page, "Sea green").click()
    desk.tap(2)
    desk.snapshot()
    drop_lines(desk, "Sea green")
    desk.open()
    expect(page.locator(".chip[aria-pressed]")).to_have_count(2)
    desk.tap(3)
    assert threads(desk) == {"Sea green": {"cross": [2, 2]}}


def test_a_legend_taken_away_takes_its_needles_and_what_was_in_hand_with_it(desk):
    page = legend(desk)
    chip(page, "Sea green").click()
    desk.tap(2)
    desk.snapshot()
    drop_lines(desk, "Sea green", "Madder dark", "Charcoal")
    page.evaluate("phone.send().then(() => dispatchEvent(new Event('online')))")
    expect(page.locator(".chip")).to_have_count(0)
    desk.tap(3)
    assert threads(desk) == {"Sea green": {"cross": [2, 2]}}


@pytest.mark.parametrize("name", ["__proto__", "constructor"])
def test_a_thread_may_be_called_anything(desk, name):
    page = legend(desk, [{"symbol": "c", "thread": name, "full": "9"}])
    page.locator(".chip").first.click()
    desk.tap(2)
    expect(page.locator(".chip[aria-pressed=true] small")).to_contain_text("7 left · ")
    assert threads(desk) == {name: {"cross": [2, 2]}}
