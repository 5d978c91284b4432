"""What the tests of batches share: a stitch as a phone writes it, and a batch as it is sent."""

from tests.journal.worlds import uuid
from webapp import clock
from webapp.journal import moments

AT = "2026-02-03T20:14:05.120Z"


def stitches(project, number=1, **fields):
    return {
        "id": uuid(number),
        "kind": "stitches",
        "project": str(project),
        "at": AT,
        "row": 12,
        "by": 1,
    } | fields


def post(client, *entries, **more):
    return client.post(
        "/journal", json={"sent_at": moments.write(clock.now()), "entries": list(entries), **more}
    )
