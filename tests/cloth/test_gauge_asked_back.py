"""What cannot be meant: asked back beside the field, and put right by one touch."""

from playwright.sync_api import expect

from tests.cloth.counter import first, slot


def test_what_cannot_be_meant_shows_no_figure_and_keeps_what_was_typed(bench):
    first(bench, "counted").fill("28")
    first(bench, "length").fill("2")
    expect(slot(bench, "count")).to_be_visible()
    first(bench, "counted").fill("500")
    expect(slot(bench, "count")).to_be_hidden()
    expect(bench.get_by_text("No Aida is so fine. Check both figures")).to_be_visible()
    expect(first(bench, "counted")).to_have_attribute("aria-invalid", "true")
    expect(first(bench, "counted")).to_have_value("500")
    first(bench, "counted").fill("28")
    expect(slot(bench, "count")).to_be_visible()
    expect(first(bench, "counted")).not_to_have_attribute("aria-invalid", "true")


def test_a_figure_goes_at_once_when_something_else_is_typed_over_it(bench):
    first(bench, "counted").fill("28")
    first(bench, "length").fill("2")
    expect(bench.get_by_text("Counted holes?")).to_be_visible()
    first(bench, "counted").fill("abc")
    assert bench.locator("[data-line] small").first.inner_text().startswith("Begin on a line")
    expect(bench.get_by_text("Write a number, like 28 or 27.5.")).to_be_visible()


def test_what_may_have_been_meant_is_one_touch_away(bench):
    bench.get_by_label("cm", exact=True).tap()
    first(bench, "counted").fill("28")
    first(bench, "length").fill("2")
    expect(bench.get_by_text("No Aida is so fine.")).to_be_visible()
    expect(slot(bench, "count")).to_be_hidden()
    bench.get_by_role("button", name="Was the tape in inches? It would be 14.").tap()
    expect(slot(bench, "count")).to_have_text("14")
    expect(slot(bench, "verdict")).to_have_text("Sure.")
    expect(bench.get_by_label("in", exact=True)).to_be_checked()
    expect(bench.locator(".error")).to_have_count(0)
    expect(slot(bench, "offers").locator("*")).to_have_count(0)


def test_figures_the_wrong_way_round_are_put_right_by_one_touch(bench):
    first(bench, "counted").fill("4")
    first(bench, "length").fill("56")
    bench.get_by_role("button", name="Figures the wrong way round? It would be 14.").tap()
    expect(slot(bench, "count")).to_have_text("14")
    expect(first(bench, "counted")).to_have_value("56")
    expect(first(bench, "length")).to_have_value("4")


def test_an_answer_that_fits_the_other_unit_is_asked_back_beside_it(bench):
    first(bench, "counted").fill("55")
    first(bench, "length").fill("10")
    expect(slot(bench, "count")).to_have_text("5.5")
    bench.get_by_role("button", name="Was the tape in centimetres? It would be 14.").tap()
    expect(slot(bench, "count")).to_have_text("14")


def test_a_fraction_of_more_than_one_is_read_back(bench):
    first(bench, "counted").fill("28")
    first(bench, "length").fill("7/4")
    expect(bench.get_by_text("7/4 is read as 1 3/4.")).to_be_visible()
    expect(slot(bench, "count")).to_have_text("16")


def test_a_number_half_typed_is_not_called_wrong(bench):
    first(bench, "counted").tap()
    bench.keyboard.type("5")
    first(bench, "length").tap()
    expect(bench.locator(".error")).to_have_count(0)
    bench.keyboard.type("1")
    expect(bench.locator(".error")).to_have_count(0)
