"""What the journeys in a browser share."""

from collections.abc import Callable

import pytest
from playwright.sync_api import BrowserContext

from tests.browser.phones import Stitcher


@pytest.fixture
def alice(context, server) -> Stitcher:
    """A stitcher of her own, with a project, on one phone."""
    return Stitcher.sign_up(context, server.url)


@pytest.fixture
def another_phone(new_context) -> Callable[[], BrowserContext]:
    return new_context
