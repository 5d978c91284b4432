"""A house whose push service is the tests' own, and the browser that has windows."""

import pytest

from tests.browser.phones import Stitcher
from tests.house import FLAGS, Server, find_chromium
from tests.reminders.pushed import gives_address
from tests.reminders.service import push_service


@pytest.fixture(scope="module")
def browser(browser_type):
    """The browser that has windows: the other shows no notifications."""
    browser = browser_type.launch(executable_path=find_chromium(), args=FLAGS)
    yield browser
    browser.close()


@pytest.fixture(scope="module")
def service():
    with push_service() as service:
        yield service


@pytest.fixture(scope="module")
def server(service, tmp_path_factory):
    """A house whose operator vouches for the push service of the tests."""
    server = Server(tmp_path_factory.mktemp("house"), EVENROW_PUSH_SERVICES=service.origin)
    yield server
    server.stop()


@pytest.fixture
def browser_of_hers(context, service):
    browser = service.subscribe()
    gives_address(context, browser)
    return browser


@pytest.fixture
def alice(context, server, browser_of_hers):
    return Stitcher.begin(context, server)
