"""The gauge at the shop counter: a real browser at phone size, without an account."""

import time
from uuid import uuid4

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import expect

SHIFTS = """
  window.shifted = 0;
  new PerformanceObserver((list) => {
    for (const entry of list.getEntries()) if (!entry.hadRecentInput) window.shifted += entry.value;
  }).observe({ type: "layout-shift", buffered: true });
"""
REFUSED = "the server responded with a status of 422"


@pytest.fixture
def said(page):
    """What the browser complains of, which must stay empty."""
    said = []
    page.on("console", lambda message: said.append(message.text) if message.type == "error" else None)
    page.on("pageerror", lambda error: said.append(str(error)))
    yield said
    assert [text for text in said if REFUSED not in text] == []


@pytest.fixture
def bench(page, server, said):
    """The page of cloth, with its island alive."""
    page.add_init_script(SHIFTS)
    page.goto(f"{server.url}/cloth")
    page.wait_for_selector('[data-island="gauge"][data-live]')
    return page


def first(page, name):
    return page.locator(f'[name="{name}"]').first


def slot(page, name):
    return page.locator(f'[data-slot="{name}"]')


def test_three_touches_beside_the_digits_say_what_cloth_it_is(bench):
    began = time.monotonic()
    bench.get_by_label("Threads").tap()
    first(bench, "counted").tap()
    bench.keyboard.type("56")
    first(bench, "length").tap()
    bench.keyboard.type("2")
    expect(slot(bench, "count")).to_have_text("28")
    expect(slot(bench, "interval")).to_have_text("27.1 to 28.9")
    expect(slot(bench, "said")).to_contain_text("Most likely it is 28 count (98\u00a0%).")
    expect(slot(bench, "said")).to_contain_text("Over two, the same as 14 count.")
    expect(slot(bench, "said")).to_contain_text("Measure 5 in to tell it from 27.")
    assert time.monotonic() - began < 10


@pytest.mark.parametrize("size", [(360, 640), (390, 844)])
def test_nothing_moves_when_the_page_comes_or_the_answer(bench, size):
    bench.set_viewport_size({"width": size[0], "height": size[1]})
    bench.reload()
    bench.wait_for_selector('[data-island="gauge"][data-live]')
    before = slot(bench, "answer").bounding_box()
    first(bench, "counted").press_sequentially("28")
    first(bench, "length").press_sequentially("2")
    expect(slot(bench, "said")).to_contain_text("It is 14 count.")
    assert slot(bench, "answer").bounding_box() == before
    first(bench, "length").clear()
    first(bench, "length").press_sequentially("13/4")
    expect(bench.get_by_text("Write a fraction like 1 3/4")).to_be_visible()
    assert slot(bench, "answer").bounding_box() == before
    assert bench.evaluate("shifted") == 0
    assert bench.evaluate("document.documentElement.scrollWidth") <= size[0]


def test_what_cannot_be_meant_shows_no_figure_and_keeps_what_was_typed(bench):
    first(bench, "counted").fill("28")
    first(bench, "length").fill("2")
    expect(slot(bench, "count")).to_be_visible()
    first(bench, "counted").fill("500")
    expect(slot(bench, "count")).to_be_hidden()
    expect(bench.get_by_text("No cloth for counting is finer than that.")).to_be_visible()
    expect(first(bench, "counted")).to_have_attribute("aria-invalid", "true")
    expect(first(bench, "counted")).to_have_value("500")
    first(bench, "counted").fill("28")
    expect(slot(bench, "count")).to_be_visible()
    expect(first(bench, "counted")).not_to_have_attribute("aria-invalid", "true")


def test_a_number_half_typed_is_not_called_wrong(bench):
    first(bench, "counted").tap()
    bench.keyboard.type("5")
    first(bench, "length").tap()
    expect(bench.locator(".error")).to_have_count(0)
    bench.keyboard.type("1")
    expect(bench.locator(".error")).to_have_count(0)


def test_the_fraction_the_unit_and_pins_are_taken_in(bench):
    first(bench, "counted").fill("28")
    first(bench, "length").fill("1")
    first(bench, "part").select_option("3/4")
    expect(slot(bench, "count")).to_have_text("16")
    first(bench, "length").fill("5")
    bench.get_by_label("Centimetres").tap()
    expect(slot(bench, "count")).to_have_text("14.2")
    wide = slot(bench, "interval").inner_text()
    bench.get_by_text("Measure with more care").tap()
    bench.get_by_label("Between two pins").tap()
    expect(slot(bench, "interval")).not_to_have_text(wide)
    bench.reload()
    bench.wait_for_selector('[data-island="gauge"][data-live]')
    expect(bench.get_by_label("Centimetres")).to_be_checked()  # the tape used on this phone last


def test_across_is_set_against_along_and_there_is_room_for_more(bench):
    first(bench, "counted").fill("128")
    first(bench, "length").fill("4")
    bench.get_by_label("Threads").tap()
    bench.get_by_text("Measure with more care").tap()
    bench.locator('[name="counted"]').nth(1).fill("140")
    bench.locator('[name="length"]').nth(1).fill("4")
    expect(slot(bench, "said")).to_contain_text("Not square: 32 along, 35 across.")
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
    expect(slot(page, "said")).to_contain_text("Most likely it is 28 count (98\u00a0%).")
    expect(first(page, "counted")).to_have_value("56")
    first(page, "length").fill("two")
    page.get_by_role("button", name="What cloth is it?").click()
    expect(page.get_by_text("Write a number, like 2, 1 3/4 or 4.5.")).to_be_visible()
    expect(first(page, "length")).to_have_value("two")
    expect(slot(page, "count")).to_be_hidden()


@pytest.mark.browser_context_args(service_workers="allow")
def test_it_answers_from_a_cold_start_without_network(new_context, server):
    context = new_context()
    page = context.new_page()
    page.goto(f"{server.url}/cloth")
    page.evaluate("navigator.serviceWorker.ready.then(() => null)")
    page.wait_for_function("caches.keys().then((names) => names.length > 0)")
    page.close()
    context.set_offline(True)
    for address in ("/cloth", "/cloth/gauge"):
        page = context.new_page()
        page.goto(f"{server.url}{address}")
        page.wait_for_selector('[data-island="gauge"][data-live]')
        first(page, "counted").fill("28")
        first(page, "length").fill("2")
        expect(slot(page, "said")).to_contain_text("It is 14 count.")
        page.close()


@pytest.mark.parametrize("scheme", ["dark", "light"])
@pytest.mark.parametrize(
    "query", ["", "?counted=28&length=2&part=&way=along", "?counted=2x&length=2&part=&way=along"]
)
def test_axe_finds_nothing(page, server, said, scheme, query):
    page.emulate_media(color_scheme=scheme)
    page.goto(f"{server.url}/cloth/gauge{query}")
    page.wait_for_selector('[data-island="gauge"][data-live]')
    page.get_by_text("Measure with more care").tap()
    assert Axe().run(page).response["violations"] == []


def test_her_projects_are_set_against_the_cloth(page, server, said):
    sent = {"headers": {"Sec-Fetch-Site": "same-origin"}}
    form = {"name": f"Alice {uuid4()}", "passphrase": "a long enough passphrase", "zone": "Europe/London"}
    assert page.request.post(f"{server.url}/accounts", form=form, **sent).ok
    plan = {"title": "Quince tree", "width": "140", "height": "98", "count": "14", "over": "1"}
    assert page.request.post(f"{server.url}/projects", form=plan, **sent).ok
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
