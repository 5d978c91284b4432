"""What the tests of Hours share: a Friday evening, and sittings written as a phone writes them."""

import io
from uuid import uuid4

import pytest
from werkzeug.datastructures import FileStorage, MultiDict
from werkzeug.test import stream_encode_multipart

from tests.hours.test_pictures import picture
from tests.stopped import stopped

WORK = picture()


@pytest.fixture(autouse=True)
def friday_evening(request):
    """Stop the clock at ten in the evening of Friday, 13 February 2026, in week 7."""
    yield from stopped(request, "2026-02-13T22:00:00Z")


@pytest.fixture
def lanterns(alice, new_project):
    return new_project(alice)


@pytest.fixture
def quince(alice, new_project):
    return new_project(alice, title="Quince tree")


@pytest.fixture
def lay():
    """Send entries to the journal; gives their ids."""

    def lay(client, project, *entries):
        whole = [{"id": str(uuid4()), "project": str(project), **entry} for entry in entries]
        answer = client.post("/journal", json={"sent_at": "2026-02-13T22:00:00.000Z", "entries": whole})
        assert answer.json["refused"] == [], answer.json
        return [entry["id"] for entry in whole]

    return lay


@pytest.fixture
def sit(lay):
    """Write a sitting, with its stitches laid as it ended; gives its id."""

    def sit(client, project, begin, end=None, stitches=0):
        first = {"id": str(uuid4()), "kind": "begin", "at": f"{begin}:00.000Z"}
        at = f"{end or begin}:00.000Z"
        laid = [{"kind": "stitches", "row": 1, "by": stitches, "at": at}] if stitches else []
        ended = [{"kind": "end", "sitting": first["id"], "at": at}] if end else []
        return lay(client, project, first, *laid, *ended)[0]

    return sit


@pytest.fixture
def figures():
    """Ask for a week's figures."""

    def figures(client, week="2026-W07"):
        answer = client.get(f"/hours.json?week={week}")
        assert answer.status_code == 200, answer.text
        return answer.json

    return figures


@pytest.fixture
def send_photograph():
    """Send a form with a photograph, or with none chosen where its data is None."""

    def send(client, address, data=WORK, **fields):
        form = MultiDict({"once": str(uuid4()), "line": "", **fields})
        file = FileStorage(io.BytesIO(data or b""), "work.jpg" if data is not None else "", "photograph")
        body, _, boundary = stream_encode_multipart(
            MultiDict({**form, "photograph": file}), use_tempfile=False
        )
        kind = f"multipart/form-data; boundary={boundary}"
        return client.post(address, data=body.read(), content_type=kind)

    return send
