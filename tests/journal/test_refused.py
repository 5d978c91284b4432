"""Refused: only what can never be right, each entry alone, and a batch of which nothing can be told."""

import json
from uuid import uuid4

import pytest

from tests.journal.posted import AT, post, stitches
from tests.journal.worlds import uuid


@pytest.mark.parametrize(
    ("fields", "why"),
    [
        ({"by": True}, "“by” must be a whole number."),
        ({"by": 1.0}, "“by” must be a whole number."),
        ({"by": "1"}, "“by” must be a whole number."),
        ({"by": 0}, "“by” must not be 0."),
        ({"by": 10_001}, "“by” must be from -10000 to 10000."),
        ({"by": 10**400}, "“by” must be from -10000 to 10000."),
        ({"row": 0}, "“row” must be from 1 to 10000."),
        ({"row": None}, "“row” needs a row or a block, and only one of them."),
        ({"block": [1, 1]}, "“row” needs a row or a block, and only one of them."),
        ({"row": None, "block": [0, 1]}, "“block” must be [across, down], each from 1 to 1000."),
        ({"row": None, "block": [True, 1]}, "“block” must be [across, down], each from 1 to 1000."),
        ({"at": "yesterday"}, "“at” is not a moment like 2026-02-03T20:14:05.120Z."),
        ({"at": 5}, "“at” is not a moment like 2026-02-03T20:14:05.120Z."),
        ({"at": "2026-02-30T20:14:05Z"}, "“at” is "),
        ({"id": "7"}, "“id” must be a UUID."),
        ({"id": [1]}, "“id” must be a UUID."),
        ({"kind": "knit"}, "There is no such kind"),
        ({"kind": ["stitches"]}, "There is no such kind"),
        ({"why": "magic"}, "“why” must be one of"),
        ({"pass": "half"}, "“pass” must be one of"),
        ({"thread": "x" * 101}, "“thread” must have 1 to 100 characters."),
        ({"thread": "\ud800"}, "“thread” has characters that cannot be kept."),
        ({"kind": "done"}, "“done” is missing."),
        ({"kind": "done", "done": 1}, "“done” must be true or false."),
        ({"kind": "frame", "state": "tight"}, "“state” must be one of: on, slack, off."),
        ({"kind": "undo"}, "“entry” needs an entry or an act, and only one of them."),
        ({"kind": "amend", "sitting": uuid(5)}, "“begin” needs a begin and an end, or struck."),
        ({"kind": "amend", "sitting": uuid(5), "begin": AT, "end": "2026-02-03T19:00:00Z"}, "“end” is"),
        ({"kind": "end", "sitting": uuid(5), "note": "x" * 201}, "“note” must have at most 200 characters."),
        ({"project": str(uuid4())}, "There is no such project of yours."),
    ],
)  # fmt: skip
def test_what_can_never_be_right_is_refused_alone(alice, project, fields, why):
    answer = post(alice, stitches(project) | fields, stitches(project, 2))
    assert answer.status_code == 200
    assert answer.json["accepted"] == [uuid(2)]
    assert answer.json["refused"][0]["why"].startswith(why)
    assert answer.json["projects"][str(project)]["stitches"] == 1


@pytest.mark.parametrize("entry", [5, None, "x", [], True, {}])
def test_what_is_no_entry_at_all_is_refused_alone(alice, project, entry):
    answer = post(alice, entry, stitches(project))
    assert (answer.status_code, answer.json["accepted"]) == (200, [uuid(1)])


@pytest.mark.parametrize(
    "body",
    [
        b"", b"[]", b"5", b"null", b"{", b"{}", b'{"entries": {}}', b'{"entries": []}', b'{"entries": null}',
        b"\xff\xfe{}", b'{"entries": ' + b"[" * 100_000, b'{"entries": [' + b",".join([b"{}"] * 501) + b"]}",
    ],
)  # fmt: skip
def test_a_batch_of_which_nothing_can_be_told_is_malformed(alice, body):
    answer = alice.post("/journal", data=body, content_type="application/json")
    assert answer.status_code == 422
    assert answer.json["error"] == "A batch is a JSON object with a list of 1 to 500 entries."


def test_a_number_that_is_none_is_refused_and_the_rest_taken(alice, project):
    entries = [stitches(project, by="NAN"), stitches(project, 2)]
    body = json.dumps({"entries": entries}).replace('"NAN"', "NaN")
    answer = alice.post("/journal", data=body, content_type="application/json")
    assert answer.json["accepted"] == [uuid(2)]


def test_ten_megabytes_are_too_large(alice):
    answer = alice.post("/journal", data=b"x" * 10_000_000, content_type="application/json")
    assert answer.status_code == 413
    assert "too large" in answer.json["error"]
