"""The gauge at the shop counter: a real browser at phone size, without an account."""

import time

import pytest
from playwright.sync_api import expect

from tests.browser.phones import Stitcher
from tests.cloth.counter import first, slot

SHOWN = """() => [...document.querySelectorAll(".answer, .reading small")]
  .map((e) => e.innerText.replace(/\\s+/g, " "))"""


def test_three_touches_beside_the_digits_say_what_cloth_it_is(bench):
    began = time.monotonic()
    bench.get_by_label("Threads").tap()
    first(bench, "counted").tap()
    bench.keyboard.type("56")
    first(bench, "length").tap()
    bench.keyboard.type("2")
    expect(slot(bench, "count")).to_have_text("28")
    expect(slot(bench, "interval")).to_have_text("27.2 to 28.9")
    expect(slot(bench, "name")).to_have_text("count linen or evenweave")
    expect(slot(bench, "verdict")).to_have_text("Most likely (98\u00a0%).")
    expect(slot(bench, "said")).to_contain_text("Over two, the same as 14 count.")
    expect(slot(bench, "said")).to_contain_text("Measure 6 in to tell it from 27.")
    assert time.monotonic() - began < 10


@pytest.mark.parametrize(
    "state", ["unit=cm&counted=28&length=5", "kind=threads&counted=27&length=1", "counted=61&length=4"]
)
def test_the_same_is_shown_with_and_without_scripts(new_context, server, state):
    shown = []
    for scripts in (False, True):
        page = new_context(java_script_enabled=scripts).new_page()
        page.goto(f"{server.url}/cloth/gauge?{state}")
        if scripts:
            page.wait_for_selector('[data-island="gauge"][data-live]')
        shown.append(page.evaluate(SHOWN))
    assert shown[0] == shown[1]
    assert shown[0][0]


def test_a_question_as_long_as_an_address_can_be_is_refused_by_our_own_words(page, server):
    answer = page.request.get(f"{server.url}/cloth/gauge.json?squares={'9' * 8000}&length=2")
    assert answer.status == 422
    assert answer.json()["error"] == "That is too long."


def test_the_fraction_the_unit_and_pins_are_taken_in(bench):
    first(bench, "counted").fill("28")
    first(bench, "length").fill("1")
    first(bench, "part").select_option("3/4")
    expect(slot(bench, "count")).to_have_text("16")
    first(bench, "length").fill("5")
    bench.get_by_label("cm", exact=True).tap()
    expect(slot(bench, "measured")).to_have_text("14.2")
    wide = slot(bench, "interval").inner_text()
    bench.get_by_text("Measure with more care").tap()
    bench.get_by_label("Between two pins").tap()
    expect(slot(bench, "interval")).not_to_have_text(wide)
    bench.reload()
    bench.wait_for_selector('[data-island="gauge"][data-live]')
    expect(bench.get_by_label("cm", exact=True)).to_be_checked()  # the tape used on this phone last


def test_across_is_set_against_along_and_there_is_room_for_more(bench):
    first(bench, "counted").fill("128")
    first(bench, "length").fill("4")
    bench.get_by_label("Threads").tap()
    bench.get_by_text("Measure with more care").tap()
    bench.locator('[name="counted"]').nth(1).fill("140")
    bench.locator('[name="length"]').nth(1).fill("4")
    expect(slot(bench, "said")).to_contain_text("100 threads come out 6.8 mm (8.6\u00a0%) shorter across.")
    expect(slot(bench, "verdict")).to_have_text("Not square.")
    expect(slot(bench, "count")).to_have_text("32 and 35")
    expect(slot(bench, "metric")).to_have_text("across 35 (34.5 to 35.6)")
    expect(bench.locator('[name="counted"]')).to_have_count(3)


def test_enter_goes_on_to_the_length_and_then_shows_the_answer(bench):
    first(bench, "counted").fill("28")
    first(bench, "counted").press("Enter")
    expect(first(bench, "length")).to_be_focused()
    bench.keyboard.type("2")
    bench.keyboard.press("Enter")
    expect(first(bench, "length")).not_to_be_focused()
    expect(slot(bench, "count")).to_have_text("14")


def test_the_server_answers_the_same_without_scripts(new_context, server):
    page = new_context(java_script_enabled=False).new_page()
    page.goto(f"{server.url}/cloth")
    page.get_by_label("Threads").check()
    first(page, "counted").fill("56")
    first(page, "length").fill("2")
    page.get_by_role("button", name="What cloth is it?").click()
    expect(slot(page, "count")).to_have_text("28")
    expect(slot(page, "verdict")).to_have_text("Most likely (98\u00a0%).")
    expect(first(page, "counted")).to_have_value("56")
    first(page, "length").fill("two")
    page.get_by_role("button", name="What cloth is it?").click()
    expect(page.get_by_text("Write a number, like 2, 1 3/4 or 4.5.")).to_be_visible()
    expect(first(page, "length")).to_have_value("two")
    expect(slot(page, "count")).to_be_hidden()


def test_her_projects_are_set_against_the_cloth(page, server, said):
    Stitcher.arrive(page.context, server).new_project("Quince tree", width="140")
    page.goto(f"{server.url}/cloth")
    page.wait_for_selector('[data-island="gauge"][data-live]')
    page.get_by_label("Threads").tap()
    first(page, "counted").fill("56")
    first(page, "length").fill("2")
    expect(page.get_by_role("link", name="Quince tree")).to_be_visible()
    expect(page.locator("#hers")).to_contain_text("the same size over two, 10 × 7 in")
    first(page, "length").fill("4")
    page.get_by_label("Aida squares").tap()
    expect(page.locator("#hers")).to_contain_text("on such a cloth, 10 × 7 in")
