"""Quick thread at the shop counter, by touch, with and without network."""

import re

import pytest
from playwright.sync_api import expect

from tests.browser.phones import Stitcher, complaints, in_nobodys_way, lose_network
from tests.cloth.counter import SHIFTS, slot


def alive(page, address):
    page.add_init_script(SHIFTS)
    page.goto(address)
    page.wait_for_selector("[data-bench][data-live]")


def looked_at(page):
    assert page.evaluate("shifted") == 0
    in_nobodys_way(page)


@pytest.mark.browser_context_args(service_workers="allow")
def test_without_network_it_answers_from_a_cold_start(new_context, server):
    page = lose_network(new_context(), f"{server.url}/thread")
    page.set_viewport_size({"width": 360, "height": 640})
    alive(page, f"{server.url}/thread")
    page.get_by_label("Stitches", exact=True).last.press_sequentially("2400")
    expect(slot(page, "headline")).to_have_text("1 to 2")
    expect(slot(page, "what")).to_have_text("skeins")
    expect(slot(page, "headline")).to_be_in_viewport()
    page.get_by_label("Two", exact=True).tap()
    page.get_by_label("Count", exact=True).fill("32")
    expect(slot(page, "amount")).to_contain_text("8.9 yd")
    page.get_by_label("Thread", exact=True).select_option("Metallic")
    expect(slot(page, "what")).to_have_text("spools")
    looked_at(page)
    page.reload()
    page.wait_for_selector("[data-bench][data-live]")
    expect(page.get_by_label("Count", exact=True)).to_have_value("32")
    expect(slot(page, "what")).to_have_text("spools")


def test_a_block_is_counted_and_multiplied(page, server):
    said = complaints(page)
    alive(page, f"{server.url}/thread")
    page.get_by_label("A block").tap()
    page.get_by_label("In one block").press_sequentially("64")
    page.get_by_label("Such blocks").press_sequentially("9")
    expect(slot(page, "also")).to_have_text("9 × 64 = 576 stitches.")
    expect(page.get_by_label("Skeins", exact=True)).to_be_hidden()
    assert "by=block" in page.url
    looked_at(page)
    assert said == []


def test_printed_skeins_are_brought_to_this_cloth(page, server):
    alive(page, f"{server.url}/thread")
    page.get_by_label("Printed").tap()
    page.get_by_label("Skeins", exact=True).press_sequentially("3")
    expect(slot(page, "headline")).to_have_text("3")
    page.get_by_label("Count", exact=True).fill("28")
    page.get_by_label("One", exact=True).tap()
    page.get_by_label("Strands", exact=True).last.fill("1")
    expect(slot(page, "rests")).to_contain_text(re.compile(r"takes 0\.\d+ times"))
    looked_at(page)


def test_one_length_stitched_takes_the_drawing_s_place(page, server):
    alive(page, f"{server.url}/thread?stitches=2400")
    page.get_by_text("How it is worked").tap()
    page.get_by_label("It gave").fill("33")
    expect(slot(page, "rests")).to_have_text("From the 33 crosses that one length gave you.")
    page.get_by_label("It gave").fill("500")
    expect(page.get_by_text("No cross takes so little or so much")).to_be_visible()
    expect(slot(page, "headline")).to_be_hidden()
    page.get_by_label("It gave").fill("33")
    page.get_by_label("One by one").tap()
    page.get_by_label("Scattered").tap()
    page.get_by_label("cm", exact=True).tap()
    expect(slot(page, "amount")).to_contain_text(re.compile(r"^[\d.]+\sm \("))
    looked_at(page)


def test_without_script_the_form_is_answered_by_the_server(new_context, server):
    page = new_context(java_script_enabled=False).new_page()
    page.goto(f"{server.url}/thread")
    page.get_by_label("Stitches", exact=True).last.fill("2400")
    page.get_by_role("button", name="How much thread?").tap()
    expect(slot(page, "headline")).to_have_text("1 to 2")


def test_she_finds_it_among_the_places_and_her_projects_under_it(page, server):
    her = Stitcher.arrive(page.context, server)
    project = her.new_project("Quince tree")
    page.goto(f"{server.url}/projects")
    page.get_by_role("link", name="Thread", exact=True).tap()
    page.wait_for_selector("[data-bench][data-live]")
    hers = page.get_by_role("navigation", name="Thread of yours")
    expect(hers.get_by_role("link", name="Quince tree")).to_have_attribute(
        "href", f"/projects/{project}/thread"
    )
    in_nobodys_way(page)
