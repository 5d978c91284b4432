"""The page of cloth in a real browser, with what the browser complains of."""

import pytest

from tests.browser.phones import complaints
from tests.cloth.counter import SHIFTS

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
