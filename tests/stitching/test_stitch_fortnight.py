"""Back after a fortnight: her photograph over her line, with and without network."""

import pytest
from playwright.sync_api import expect

from tests.browser.phones import Stitcher, in_nobodys_way, is_kept, until
from tests.stitching.away import away


def test_after_a_fortnight_away_the_photograph_stands_over_the_line(context, server):
    her = Stitcher.begin(context, server)
    away(her)
    page = context.new_page()
    page.set_viewport_size({"width": 360, "height": 640})
    page.goto(f"{her.url}/projects/{her.project}/stitch")
    image = page.get_by_alt_text("The lamp post, second thread")
    expect(image).to_be_visible()
    assert image.evaluate("(image) => [image.naturalWidth, image.naturalHeight]") == [640, 480]
    expect(page.locator("dialog")).to_contain_text("Needle 24, 2 strands as usual.")
    expect(page.locator("dialog").get_by_text("The lamp post, second thread")).to_have_count(1)
    expect(page.get_by_role("button", name="Yes, it is")).to_be_in_viewport(ratio=1)
    in_nobodys_way(page)


@pytest.mark.browser_context_args(service_workers="allow")
def test_without_network_the_line_is_there_and_the_photograph_as_this_phone_kept_it(context, server):
    her = Stitcher.begin(context, server)
    away(her)
    address = f"{her.url}/projects/{her.project}/stitch"
    page = context.new_page()
    page.goto(address)
    expect(page.get_by_alt_text("The lamp post, second thread")).to_be_visible()
    until(page, lambda: is_kept(page))
    page.close()
    context.set_offline(True)
    page = context.new_page()
    page.goto(address)
    expect(page.locator("dialog")).to_contain_text("Row 37: is it 52?")
    expect(page.get_by_alt_text("The lamp post, second thread")).to_be_visible()
    context.set_offline(False)


def test_a_photograph_that_was_deleted_goes_from_the_phone_too(context, server):
    her = Stitcher.begin(context, server)
    away(her)
    page = context.new_page()
    address = f"{her.url}/projects/{her.project}/stitch"
    page.goto(address)
    image = page.get_by_alt_text("The lamp post, second thread")
    expect(image).to_be_visible()
    href = her.context.request.get(f"{her.url}/projects/{her.project}/stopped.json").json()["photograph"][
        "href"
    ]
    held = "(href) => caches.match(href).then(Boolean)"
    assert page.evaluate(held, href)
    her.post(href.replace(".jpg", "/away"))
    page.goto(address)
    expect(page.locator("dialog")).to_contain_text("Needle 24")
    expect(image).to_have_count(0)
    assert not page.evaluate(held, href)
