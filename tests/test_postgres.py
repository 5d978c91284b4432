"""The same house on PostgreSQL: two servers, one database. Runs where EVENROW_TEST_POSTGRES names one.

Such as postgresql+psycopg://me@/scratch?host=/var/run/postgresql; it works in a schema of its own.
"""

import json
import os
from concurrent.futures import ThreadPoolExecutor
from contextlib import closing
from http.client import HTTPConnection
from urllib.parse import urlencode
from uuid import uuid4

import pytest
from sqlalchemy import create_engine, make_url
from sqlalchemy.schema import CreateSchema, DropSchema

from tests.house import Server

URL = os.environ.get("EVENROW_TEST_POSTGRES")
pytestmark = pytest.mark.skipif(not URL, reason="EVENROW_TEST_POSTGRES names no PostgreSQL database")


@pytest.fixture
def database():
    """A schema of its own, by a URL that leads there."""
    schema = f"evenrow_{uuid4().hex}"
    engine = create_engine(URL)
    with engine.begin() as connection:
        connection.execute(CreateSchema(schema))
    url = make_url(URL).update_query_dict({"options": f"-csearch_path={schema}"})
    yield url.render_as_string(hide_password=False)
    with engine.begin() as connection:
        connection.execute(DropSchema(schema, cascade=True))
    engine.dispose()


@pytest.fixture
def servers(database, tmp_path):
    two = [Server(tmp_path / name, EVENROW_DATABASE_URL=database) for name in ("one", "two")]
    yield two
    for server in two:
        server.stop()


class Phone:
    """A phone of Alice's: her requests alone, to either server."""

    def __init__(self):
        self.cookie = ""

    def ask(self, server, method, path, body=None, kind="application/x-www-form-urlencoded"):
        host = server.url.removeprefix("http://")
        headers = {"Sec-Fetch-Site": "same-origin", "Content-Type": kind, "Cookie": self.cookie}
        with closing(HTTPConnection(host, timeout=60)) as connection:
            connection.request(method, path, body, headers)
            answer = connection.getresponse()
            self.cookie = self.cookie or (answer.headers["Set-Cookie"] or "").split(";")[0]
            return answer.status, answer.headers["Location"], answer.read()

    def form(self, server, path, **fields):
        status, location, said = self.ask(server, "POST", path, urlencode(fields))
        assert status == 303, said
        return location

    def send(self, server, batch):
        return self.ask(server, "POST", "/journal", batch, "application/json")[0]


def batch_of(project, row):
    at = "2026-02-10T20:00:00.000Z"
    laid = [{"kind": "stitches", "row": row, "by": by} for by in (7, 3)]
    entries = [
        *laid,
        {"kind": "done", "row": row, "done": True},
        {"kind": "begin"},
        {"kind": "frame", "state": "on"},
    ]
    whole = [{"id": str(uuid4()), "project": project, "at": at, **entry} for entry in entries]
    return json.dumps({"sent_at": "2026-02-10T20:00:01.000Z", "entries": whole})


def test_two_servers_of_one_house_count_each_entry_once(servers):
    phone = Phone()
    phone.form(
        servers[0], "/accounts", name="Alice", passphrase="a long enough passphrase", zone="Europe/London"
    )
    project = phone.form(servers[1], "/projects", title="Moth", width=140, height=98).rsplit("/", 1)[1]
    batches = [batch for row in range(1, 6) for batch in [batch_of(project, row)] * 10]  # ten times at once
    with ThreadPoolExecutor(10) as pool:
        answers = list(pool.map(phone.send, servers * 25, batches))
    assert answers == [200] * 50
    snapshot = json.loads(phone.ask(servers[0], "GET", f"/projects/{project}/snapshot")[2])
    assert (snapshot["stitches"], snapshot["rows_done"], snapshot["revision"]) == (50, 5, 25)
    assert servers[1].audit() == "No difference."
    for page in ("/projects", f"/projects/{project}", "/hours", "/hours.json", "/hours/sittings", "/account"):
        assert phone.ask(servers[1], "GET", page)[0] == 200, page
