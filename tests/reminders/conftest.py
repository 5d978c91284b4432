"""What the tests of reminders share: an hour after bedtime."""

from uuid import uuid4

import pytest

from tests.reminders.evening import Evening
from tests.reminders.service import push_service
from tests.stopped import stopped
from webapp import clock
from webapp.journal.moments import write


@pytest.fixture(autouse=True)
def at_night(request):
    """Stop the clock at half past eleven of 13 February 2026; bedtime is at half past ten if none is set."""
    yield from stopped(request, "2026-02-13T23:30:00Z")


@pytest.fixture
def hold():
    """Say how a project's work is held."""

    def hold(client, project, state, at="2026-02-13T20:00:00.000Z"):
        entry = {"id": str(uuid4()), "project": str(project), "kind": "frame", "state": state, "at": at}
        answer = client.post("/journal", json={"sent_at": write(clock.now()), "entries": [entry]})
        assert answer.json["refused"] == [], answer.json
        return entry["id"]

    return hold


@pytest.fixture
def another_phone(new_context):
    return new_context


@pytest.fixture
def evening(app, config, alice, new_project, hold):
    """Alice's work is on its frame, and she wants to be told on her phones."""
    hold(alice, new_project(alice), "on")
    with push_service() as service, app.app_context():
        yield Evening.begin(config, service)
