"""By plain http under a name that is not localhost a browser lends less: it still counts, keeps and sends."""

from dataclasses import dataclass

import pytest
from playwright.sync_api import Page

from tests.browser.phones import Stitcher, painted, tap_on, until, waiting
from tests.house import FLAGS, Server

POST = "([path, form]) => fetch(path, { method: 'POST', body: new URLSearchParams(form) }).then((r) => r.url)"
GET = "(path) => fetch(path, { cache: 'no-store' }).then((r) => r.json())"


@dataclass
class AtHome(Stitcher):
    """Only her browser knows the name of the house, so everything is asked from a page of it."""

    page: Page | None = None

    def post(self, path, **form):
        self.page = self.page or self.context.new_page()
        self.page.goto(f"{self.url}/cloth")
        return self.page.evaluate(POST, [path, form])

    def sums(self, project=""):
        return self.page.evaluate(GET, f"/projects/{self.project}/snapshot")


@pytest.fixture
def server(tmp_path):
    """A house on the home network."""
    server = Server(tmp_path / "house", EVENROW_HOST="0.0.0.0")
    yield server
    said = server.audit()
    server.stop()
    assert said == "No difference."


@pytest.fixture
def at_home(browser_type, browser_type_launch_args, browser_context_args, server):
    """A phone on that network."""
    port = server.url.rsplit(":", 1)[1]
    flags = [*FLAGS, "--host-resolver-rules=MAP evenrow.test 127.0.0.1"]
    browser = browser_type.launch(**{**browser_type_launch_args, "args": flags})
    context = browser.new_context(**browser_context_args)
    yield AtHome.begin(context, server, f"http://evenrow.test:{port}")
    browser.close()


def test_plain_http_counts_keeps_and_sends(at_home):
    page = at_home.open()
    assert (
        page.evaluate("[isSecureContext, 'serviceWorker' in navigator, 'randomUUID' in crypto]")
        == [False] * 3
    )
    tap_on(page, 20)
    assert painted(page) == 20
    until(page, lambda: waiting(page) == 0)
    assert at_home.on_the_server() == 20
    assert not page.locator(".notices").count()  # nothing lies over the count
    page.goto(f"{at_home.url}/projects")
    page.get_by_text("This page came over plain http").wait_for()


def test_plain_http_keeps_what_is_tapped_without_network(at_home):
    page = at_home.open()
    page.wait_for_timeout(800)
    at_home.context.set_offline(True)
    tap_on(page, 5)
    page.wait_for_timeout(1500)
    assert (painted(page), waiting(page) > 0) == (5, True)
    at_home.context.set_offline(False)
    page.reload()
    until(page, lambda: at_home.on_the_server() == 5)
    assert painted(page) == 5
