"""A stitcher of her own for each journey, with a project open on Stitch."""

from datetime import UTC, datetime, timedelta
from uuid import uuid4

import pytest
from playwright.sync_api import expect

from tests.browser.phones import OURS, PHONE, Stitcher, until, waiting


def ago(**span) -> str:
    """Write a moment that lies so far back, as entries have it."""
    moment = datetime.now(UTC) - timedelta(**span)
    return moment.isoformat(timespec="milliseconds").replace("+00:00", "Z")


class Desk:
    """What a journey on Stitch needs: the page, and the house behind it."""

    def __init__(self, page, server) -> None:
        self.page, self.server = page, server
        # Without a worker, which would fetch everything there is anew for each of these short journeys.
        page.add_init_script("delete Navigator.prototype.serviceWorker")
        self.errors = []
        page.on(
            "console",
            lambda said: self.errors.append(f"{said.text} {said.location}") if said.type == "error" else None,
        )
        page.on("pageerror", lambda error: self.errors.append(str(error)))
        Stitcher.arrive(page.context, server)

    def post(self, path, **fields):
        url = self.server.url + path
        answer = self.page.request.post(url, form=fields, headers=OURS, max_redirects=0)
        assert answer.status < 400, answer.text()
        return answer

    def project(self, **fields) -> str:
        data = {
            "title": "Harbour lanterns",
            "width": 140,
            "height": 98,
            "count": 14,
            "over": 1,
            "frame": "hand",
        }
        self.id = self.post("/projects", **(data | fields)).headers["location"].rsplit("/", 1)[1]
        return self.id

    def journal(self, *entries) -> None:
        """Send entries as another phone of hers would."""
        batch = [{"id": str(uuid4()), "at": ago(), "project": self.id} | entry for entry in entries]
        body = {"sent_at": ago(), "entries": batch}
        answer = self.page.request.post(self.server.url + "/journal", data=body, headers=OURS)
        assert answer.ok, answer.text()
        assert answer.json()["refused"] == []

    def open(self, **fields):
        """Open a project on Stitch; a new one if none was made yet."""
        if not hasattr(self, "id") or fields:
            self.project(**fields)
        self.page.goto(f"{self.server.url}/projects/{self.id}/stitch")
        self.page.wait_for_selector("[data-live]")
        return self.page

    def slot(self, name) -> str:
        return self.page.inner_text(f".stitch [data-slot={name}]")

    def act(self, name) -> None:
        self.page.click(f".stitch [data-act={name}]")

    def tap(self, times=1) -> None:
        for _ in range(times):
            self.page.click(".field")

    def rows(self, times) -> None:
        """Tap so many whole rows, no faster than a thumb: what comes at once is taken for one touch."""
        for _ in range(times):
            self.tap()
            self.page.wait_for_timeout(310)

    def answer(self, name) -> None:
        """Press a button of the open sheet."""
        self.page.locator("dialog").get_by_role("button", name=name, exact=True).click()

    def wait_for(self, slot, text) -> None:
        expect(self.page.locator(f".stitch [data-slot={slot}]")).to_have_text(str(text))

    def snapshot(self) -> dict:
        """Wait until the house has all that was laid, and nothing changes there any more."""
        before = None
        self.page.evaluate(PHONE)
        self.page.evaluate("dispatchEvent(new Event('online'))")  # else taps are gathered for a second
        for _ in range(40):
            until(self.page, lambda: waiting(self.page) == 0)
            found = self.page.request.get(f"{self.server.url}/projects/{self.id}/snapshot").json()
            if found == before:
                break
            before = found
            self.page.wait_for_timeout(150)
        return found


@pytest.fixture
def desk(page, server):
    desk = Desk(page, server)
    yield desk
    assert desk.errors == []
