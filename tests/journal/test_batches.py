"""Batches: each entry once, whoever sends it and however often, and only to her whose it is."""

from concurrent.futures import ThreadPoolExecutor
from uuid import uuid4

from tests.journal.posted import post, stitches
from tests.journal.worlds import uuid


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
