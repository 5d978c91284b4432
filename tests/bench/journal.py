"""A POST of one entry against a bare Flask view with one sqlite3 INSERT: same server, same run, a ratio."""

import http.client
import json
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator
from pathlib import Path
from uuid import UUID

from sqlalchemy import select

from tests.conftest import browser_of
from tests.house import Server
from webapp import clock, create_app
from webapp.accounts.models import Account
from webapp.config import Config
from webapp.db import db, writing
from webapp.ids import new_id
from webapp.journal import moments
from webapp.journal.batch import take

POSTS = 400
FILLED = 200_000
ROWS = 400


def figures() -> Iterator[str]:
    with tempfile.TemporaryDirectory() as folder:
        house, bare = Server(Path(folder) / "house"), start_bare(Path(folder) / "bare.db")
        try:
            config = Config.from_environment(house.settings)
            stitcher, project, token = account(config)
            yield line("an empty house", *measure(house.url, bare.url, project, token))
            fill(config, stitcher, project)
            yield line(f"after {FILLED:,} entries", *measure(house.url, bare.url, project, token))
            yield f"journal: audit after it all: {house.audit()}"
        finally:
            house.stop()
            bare.process.terminate()


class start_bare:
    def __init__(self, path: Path) -> None:
        command = [sys.executable, "-m", "tests.bench.bare", str(path)]
        self.process = subprocess.Popen(command, stdout=subprocess.PIPE, text=True)
        self.url = self.process.stdout.readline().strip().rsplit(" at ", 1)[1]


def account(config: Config) -> tuple[UUID, UUID, str]:
    """Make a stitcher and a project through the same door as she would."""
    client = browser_of(create_app(config))
    client.post(
        "/accounts", data={"name": "Measured", "passphrase": "a long enough passphrase", "zone": "UTC"}
    )
    made = client.post("/projects", data={"title": "Measured", "width": 500, "height": ROWS})
    with client.application.app_context():
        stitcher = db.session.scalars(select(Account.id)).one()
    return stitcher, UUID(made.location.rsplit("/", 1)[1]), client.get_cookie("evenrow").value


def fill(config: Config, stitcher: UUID, project: UUID) -> None:
    """Add two hundred thousand taps, spread over the rows as months of evenings are."""
    app = create_app(config)
    with app.app_context(), writing():
        for start in range(0, FILLED, 5_000):
            take(stitcher, [tap(project, row=n * ROWS // FILLED + 1) for n in range(start, start + 5_000)])
        db.session.commit()


def tap(project: UUID, row: int) -> dict[str, object]:
    at = moments.write(clock.now())
    return {"id": str(new_id()), "kind": "stitches", "project": str(project), "at": at, "row": row, "by": 1}


def measure(ours: str, bare: str, project: UUID, token: str) -> tuple[list[float], list[float]]:
    """Time posts to one and the other by turns, each over a connection that is kept."""
    doors = [http.client.HTTPConnection(url.removeprefix("http://")) for url in (ours, bare)]
    times: list[list[float]] = [[], []]
    revision = 0
    for n in range(POSTS + 20):
        for door, took in zip(doors, times, strict=True):
            known = {str(project): revision}
            body = json.dumps({"entries": [tap(project, row=n % 7 + 1)], "known": known}).encode()
            headers = {
                "Content-Type": "application/json",
                "Cookie": f"evenrow={token}",
                "Sec-Fetch-Site": "same-origin",
            }
            begun = time.perf_counter()
            door.request("POST", "/journal", body, headers)
            answer = door.getresponse()
            said = json.loads(answer.read())
            if n >= 20:
                took.append((time.perf_counter() - begun) * 1000)
            assert answer.status == 200, said
            revision = said["projects"][str(project)]["revision"] if "projects" in said else revision
    return times[0], times[1]


def signed_in(token: str) -> dict[str, str]:
    return {"Cookie": f"evenrow={token}", "Sec-Fetch-Site": "same-origin"}


def line(when: str, ours: list[float], bare: list[float]) -> str:
    middle, floor = statistics.median(ours), statistics.median(bare)
    late = statistics.quantiles(ours, n=100)[98]
    return (
        f"journal: one entry posted, {when}: {middle:.1f} ms (p99 {late:.1f}), bare INSERT {floor:.1f} ms, "
        f"ratio {middle / floor:.1f}"
    )
