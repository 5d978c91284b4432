"""Batches: each entry once, and only what can never be right refused."""

import json
from concurrent.futures import ThreadPoolExecutor
from datetime import timedelta
from uuid import uuid4

import pytest

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


@pytest.fixture
def project(alice, new_project):
    return new_project(alice)


def test_it_works(alice, project):
    answer = post(alice, stitches(project))
    assert answer.status_code == 200
    assert answer.json["accepted"] == [uuid(1)]
    assert answer.json["refused"] == []
    snapshot = answer.json["projects"][str(project)]
    assert (snapshot["row"], snapshot["row_stitches"], snapshot["stitches"], snapshot["revision"]) == (
        12,
        1,
        1,
        1,
    )


def test_the_same_batch_again_is_accepted_and_counts_once(alice, project):
    post(alice, stitches(project))
    again = post(alice, stitches(project), stitches(project))
    assert again.json["accepted"] == [uuid(1)]
    assert again.json["projects"][str(project)]["stitches"] == 1


def test_the_same_batch_ten_times_at_once_counts_once(app, alice, project):
    cookie = alice.get_cookie("evenrow").value
    batch = [stitches(project, n) for n in range(1, 41)]

    def send(_):
        from tests.conftest import browser_of

        client = browser_of(app)
        client.set_cookie("evenrow", cookie)
        return post(client, *batch)

    with ThreadPoolExecutor(10) as pool:
        answers = list(pool.map(send, range(10)))
    assert {a.status_code for a in answers} == {200}
    assert {a.json["projects"][str(project)]["stitches"] for a in answers} == {40}


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


def test_another_stitchers_project_is_as_if_it_did_not_exist(alice, charlie, project):
    answer = post(charlie, stitches(project))
    assert answer.json["refused"] == [{"id": uuid(1), "why": "There is no such project of yours."}]
    assert answer.json["projects"] == {}
    assert charlie.get(f"/projects/{project}/snapshot").status_code == 404


def test_two_stitchers_may_make_the_same_id(alice, charlie, project, new_project):
    hers = new_project(charlie)
    assert post(alice, stitches(project)).json["accepted"] == [uuid(1)]
    assert post(charlie, stitches(hers)).json["accepted"] == [uuid(1)]


def test_an_id_used_for_something_else_is_refused(alice, project, new_project):
    post(alice, stitches(project))
    other = new_project(alice, title="Quince tree")
    answer = post(alice, stitches(other), stitches(project, 2))
    assert answer.json["refused"] == [{"id": uuid(1), "why": "This id was used before, for something else."}]
    assert answer.json["accepted"] == [uuid(2)]


def test_an_id_in_capitals_is_the_same_id_and_answered_as_sent(alice, project):
    shouted = str(uuid4()).upper()
    assert post(alice, stitches(project, id=shouted)).json["accepted"] == [shouted]
    assert post(alice, stitches(project, id=shouted.lower())).json["projects"][str(project)]["stitches"] == 1


def test_another_account_decides_nothing(alice, project):
    assert post(alice, stitches(project), account=str(uuid4())).status_code == 409
    assert alice.get(f"/projects/{project}/snapshot").json["stitches"] == 0
    me = post(alice, stitches(project), account="not even a uuid")
    assert me.status_code == 409


def test_the_signed_out_get_json_and_no_redirect(client):
    answer = client.post("/journal", json={"entries": [{}]})
    assert (answer.status_code, answer.mimetype) == (401, "application/json")
    assert client.get(f"/projects/{uuid4()}/snapshot").status_code == 401


def test_another_site_cannot_write(alice, project):
    headers = {"Sec-Fetch-Site": "cross-site"}
    answer = alice.post("/journal", json={"entries": [stitches(project)]}, headers=headers)
    assert answer.status_code == 403
    assert alice.get(f"/projects/{project}/snapshot").json["revision"] == 0


def test_a_clock_that_is_years_off_is_corrected_and_its_own_time_kept_to(alice, project):
    wrong = clock.now() - timedelta(days=3000)
    batch = {"sent_at": moments.write(wrong), "entries": [stitches(project, at=moments.write(wrong))]}
    answer = alice.post("/journal", json=batch).json
    assert abs(answer["offset"] - 3000 * 86_400_000) < 60_000
    at = moments.read(answer["projects"][str(project)]["tail"][0]["at"])
    assert abs(at - clock.now()) < timedelta(minutes=1)


def test_a_delay_of_a_minute_moves_nothing(alice, project):
    late = moments.write(clock.now() - timedelta(seconds=60))
    answer = alice.post("/journal", json={"sent_at": late, "entries": [stitches(project, at=late)]}).json
    assert answer["offset"] == 0
    assert answer["projects"][str(project)]["tail"][0]["at"] == late


def test_an_amends_times_are_never_corrected(alice, project):
    wrong = moments.write(clock.now() - timedelta(days=3000))
    amend = {"kind": "amend", "sitting": uuid(9), "begin": AT, "end": AT, "row": None, "by": None}
    batch = {"sent_at": wrong, "entries": [stitches(project, **amend)]}
    tail = alice.post("/journal", json=batch).json["projects"][str(project)]["tail"]
    assert (tail[0]["begin"], tail[0]["end"]) == (AT, AT)


@pytest.mark.parametrize("sent_at", [None, 5, "soon", "9999-12-31T23:59:59.999Z", "0001-01-01T00:00:00.000Z"])
def test_nothing_is_refused_for_its_time(alice, project, sent_at):
    batch = {"sent_at": sent_at, "entries": [stitches(project, at="0001-01-01T00:00:00.000Z")]}
    assert alice.post("/journal", json=batch).json["accepted"] == [uuid(1)]


def test_a_snapshot_not_changed_since_is_not_sent_again(alice, project):
    post(alice, stitches(project))
    first = alice.get(f"/projects/{project}/snapshot")
    assert first.headers["ETag"] == '"1"'
    again = alice.get(f"/projects/{project}/snapshot", headers={"If-None-Match": first.headers["ETag"]})
    assert again.status_code == 304


def test_a_newer_plan_is_sent_though_no_entry_was_added(alice, project):
    first = alice.get(f"/projects/{project}/snapshot")
    alice.post(f"/projects/{project}/state", data={"state": "resting"})
    asked = {"If-None-Match": first.headers["ETag"]}
    again = alice.get(f"/projects/{project}/snapshot?plan={first.json['plan']['revision']}", headers=asked)
    assert again.json["plan"]["state"] == "resting"


def test_only_the_places_changed_since_a_known_revision_come_back(alice, project):
    post(alice, stitches(project), stitches(project, 2, row=13))
    known = {str(project): 2}
    snapshot = post(alice, stitches(project, 3, row=14), known=known).json["projects"][str(project)]
    assert snapshot["rows"] == {"14": {"stitches": 1, "done": False}}
    assert (snapshot["since"], snapshot["stitches"]) == (2, 3)


def test_the_first_stitch_takes_a_planned_project_in_hand(alice, project):
    before = alice.get(f"/projects/{project}/snapshot").json["plan"]
    after = post(alice, stitches(project)).json["projects"][str(project)]["plan"]
    assert (before["state"], after["state"]) == ("planned", "in hand")
    assert after["revision"] > before["revision"]
