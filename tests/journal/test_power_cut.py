"""The server killed in the middle of work loses nothing that it confirmed and counts nothing twice."""

import json
import threading
import urllib.request
from http.client import HTTPException
from uuid import UUID, uuid4

from tests.house import Server
from webapp import clock
from webapp.journal import moments

PHONES = 4
TAPS = 150


class Phone:
    """Sends taps one after another, each until it is confirmed, as a phone does."""

    def __init__(self, server: Server, cookie: str, project: UUID) -> None:
        self.server, self.cookie, self.project = server, cookie, project
        self.left = [self.tap(n % 9 + 1) for n in range(TAPS)]
        self.thread = threading.Thread(target=self.run)

    def tap(self, row: int) -> dict:
        at = moments.write(clock.now())
        entry = {"id": str(uuid4()), "kind": "stitches", "row": row, "by": 1, "at": at}
        return entry | {"project": str(self.project)}

    def run(self) -> None:
        while self.left:
            batch = self.left[:7]
            try:
                done = set(post(self.server, "/journal", self.cookie, {"entries": batch})["accepted"])
            except (OSError, HTTPException, ValueError):
                continue
            self.left = [entry for entry in self.left if entry["id"] not in done]


def post(server: Server, path: str, cookie: str, body: dict) -> dict:
    headers = {"Content-Type": "application/json", "Sec-Fetch-Site": "same-origin", "Cookie": cookie}
    request = urllib.request.Request(server.url + path, json.dumps(body).encode(), headers)
    with urllib.request.urlopen(request, timeout=10) as answer:
        return json.loads(answer.read())


def begin(server: Server, playwright) -> tuple[str, UUID]:
    """Begin without a name, with one project."""
    door = playwright.request.new_context(
        base_url=server.url, extra_http_headers={"Sec-Fetch-Site": "same-origin"}
    )
    door.post("/accounts/unclaimed", form={"zone": "UTC"}, max_redirects=0)
    form = {"title": "Harbour lanterns", "width": "140", "height": "98"}
    made = door.post("/projects", form=form, max_redirects=0)
    cookie = next(c for c in door.storage_state()["cookies"] if c["name"] == "evenrow")
    door.dispose()
    return f"evenrow={cookie['value']}", UUID(made.headers["location"].rsplit("/", 1)[1])


def test_a_server_killed_under_load_loses_nothing_and_counts_nothing_twice(own_server, playwright):
    cookie, project = begin(own_server, playwright)
    phones = [Phone(own_server, cookie, project) for _ in range(PHONES)]
    for phone in phones:
        phone.thread.start()
    for _ in range(3):
        threading.Event().wait(0.7)
        own_server.kill()
        assert own_server.audit() == "No difference."
        own_server.start()
    for phone in phones:
        phone.thread.join(60)
        assert phone.left == []
    entry = phones[0].tap(1)
    answer = post(own_server, "/journal", cookie, {"entries": [entry]})
    assert answer["projects"][str(project)]["stitches"] == PHONES * TAPS + 1
    assert own_server.audit() == "No difference."
