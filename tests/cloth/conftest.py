"""The pages of cloth in a real browser, with what the browser complains of."""

import pytest

from tests.browser.phones import complaints
from tests.cloth.counter import EVERY_SHIFT, SHIFTS
from tests.cloth.glass import LIVE

REFUSED = "the server responded with a status of 422"


@pytest.fixture
def said(page):
    """What the browser complains of, which must stay empty."""
    said = complaints(page)
    yield said
    assert [text for text in said if REFUSED not in text] == []


@pytest.fixture
def bench(page, server, said):
    """The page of cloth, with its island alive."""
    page.add_init_script(SHIFTS)
    page.goto(f"{server.url}/cloth")
    page.wait_for_selector('[data-island="gauge"][data-live]')
    return page


@pytest.fixture
def phone(browser, browser_context_args, server):
    """Open the ruler on a phone of some pixel ratio; what the browser complains of must stay empty."""
    said, opened = [], []

    def take(ratio=3, width=390, height=844, **more):
        screen = {"device_scale_factor": ratio, "viewport": {"width": width, "height": height}}
        context = browser.new_context(**{**browser_context_args, **screen, **more})
        opened.append(context)
        page = context.new_page()
        page.add_init_script(EVERY_SHIFT)
        said.append(complaints(page))
        page.goto(f"{server.url}/cloth/ruler")
        page.wait_for_selector(LIVE)
        return page

    yield take
    for context in opened:
        context.close()
    assert [text for one in said for text in one] == []
