"""What the journeys in a browser share."""

from collections.abc import Callable

import pytest
from playwright.sync_api import BrowserContext

from tests.browser.phones import Stitcher


@pytest.fixture
def alice(context, server) -> Stitcher:
    """A stitcher of her own, with a project, on one phone."""
    return Stitcher.begin(context, server)


@pytest.fixture
def another_phone(new_context) -> Callable[[], BrowserContext]:
    return new_context


@pytest.fixture(scope="session")
def browser_context_args(browser_context_args):
    """These journeys are about the worker too."""
    return {**browser_context_args, "service_workers": "allow"}
