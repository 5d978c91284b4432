"""The list of projects."""

from datetime import UTC, datetime, timedelta
from uuid import uuid4

import pytest


def written(moment):
    return moment.strftime("%Y-%m-%dT%H:%M:%S.000Z")


def lay(browser, project, ago=0, **fields):
    """Send entries as a phone does; gives the answer's snapshot."""
    now = datetime.now(UTC)
    at = now - timedelta(minutes=ago)
    kinds = [{"kind": "stitches", "by": 5, **fields}, {"kind": "done", "done": True, **fields}]
    entries = [
        {"id": str(uuid4()), "project": str(project), "at": written(at + timedelta(seconds=i)), **kind}
        for i, kind in enumerate(kinds)
    ]
    answer = browser.post("/journal", json={"sent_at": written(now), "entries": entries})
    assert answer.status_code == 200, answer.text
    assert answer.json["refused"] == []


def titles(page):
    return [part.split("</bdi>")[0].split(">")[1] for part in page.split("<bdi")[1:]]


def test_an_empty_list_says_what_to_do_first(alice):
    page = alice.get("/projects").text
    assert 'href="/projects/new"' in page
    assert "Its title and its size in stitches are enough to begin." in page


def test_the_project_in_hand_comes_first_with_its_way_to_stitch(alice, new_project):
    for title, state in (("Planned one", "planned"), ("In hand", "in hand"), ("Resting one", "resting")):
        project = new_project(alice, title=title, state=state)
        if state == "in hand":
            in_hand = project
    page = alice.get("/projects").text
    assert titles(page) == ["In hand", "Resting one", "Planned one"]
    assert f'href="/projects/{in_hand}/stitch"' in page
    assert page.count("/stitch") == 1


def test_of_two_in_hand_the_one_worked_last_is_first(alice, new_project):
    earlier = new_project(alice, title="Earlier", state="in hand")
    later = new_project(alice, title="Later", state="in hand")
    new_project(alice, title="Finished", state="finished")
    lay(alice, earlier, row=1, ago=20)
    lay(alice, later, row=1, ago=10)
    assert titles(alice.get("/projects").text) == ["Later", "Earlier", "Finished"]
    lay(alice, earlier, row=2, ago=5)
    assert titles(alice.get("/projects").text) == ["Earlier", "Later", "Finished"]


def test_the_list_says_how_far_each_is(alice, new_project):
    rows = new_project(alice, title="By rows")
    blocks = new_project(alice, title="By blocks", working="blocks", state="resting")
    new_project(alice, title="Untouched", width=30, height=12)
    for row in (1, 2, 3):
        lay(alice, rows, row=row)
    lay(alice, blocks, block=[2, 1])
    page = alice.get("/projects").text
    assert "of 98 rows" in page
    assert "1 of 140 blocks" in page
    assert "30 × 12 stitches" in page


def test_the_first_stitch_takes_a_planned_project_in_hand(alice, new_project):
    project = new_project(alice)
    lay(alice, project, row=1)
    page = alice.get("/projects").text
    assert f'href="/projects/{project}/stitch"' in page
    assert '<path class="weft"' in page


def test_what_is_put_away_is_behind_a_link(alice, new_project):
    new_project(alice, title="Here")
    away = new_project(alice, title="Away")
    assert "put-away" not in alice.get("/projects").text
    assert alice.post(f"/projects/{away}/away").status_code == 303
    page = alice.get("/projects").text
    assert titles(page) == ["Here"]
    assert 'href="/projects/put-away"' in page
    assert titles(alice.get("/projects/put-away").text) == ["Away"]


def test_charlie_sees_nothing_of_hers(alice, charlie, new_project):
    away = new_project(alice, title="Away")
    new_project(alice, title="Here")
    alice.post(f"/projects/{away}/away")
    assert titles(charlie.get("/projects").text) == []
    assert titles(charlie.get("/projects/put-away").text) == []
    assert "put-away" not in charlie.get("/projects").text


@pytest.mark.parametrize("address", ["/projects", "/projects/new", "/projects/put-away"])
def test_who_is_not_signed_in_is_asked_to(client, address):
    answer = client.get(address)
    assert answer.status_code == 303
    assert "next=" in answer.location
