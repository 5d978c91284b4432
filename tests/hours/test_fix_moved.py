"""Sittings moved between projects, ends offered, and every fix undone again."""

from uuid import uuid4

import pytest

from tests.hours.test_fix_times import WEEK, seconds, times
from webapp.journal.audit import differences

LIST = "/hours/sittings?week=2026-W07"


@pytest.fixture
def sitting(alice, lanterns, quince, sit):
    """A sitting of 1 h 30 with 40 stitches; gives its address."""
    id = sit(alice, lanterns, "2026-02-10T20:00", "2026-02-10T21:30", stitches=40)
    return f"/hours/sittings/{lanterns}/{id}"


def shares(client):
    week = client.get("/hours.json?week=2026-W07").json
    return {one["title"]: (one["seconds"], one["stitches"]) for one in week["projects"]}


def move(client, sitting, to, **more):
    return client.post(sitting, data=times(end="2026-02-10T21:30", project=str(to), **more))


def back(client, sitting):
    return client.post(f"{sitting}/return/list", data={"once": str(uuid4()), **WEEK})


def test_a_sitting_is_moved_and_its_stitches_stay_where_they_were_laid(app, alice, quince, sitting):
    assert move(alice, sitting, quince).status_code == 303
    assert shares(alice) == {"Quince tree": (5400, 0), "Harbour lanterns": (0, 40)}
    page = alice.get(LIST).text
    assert "moved to Quince tree" in page
    with app.app_context():
        assert list(differences()) == []


def test_a_move_is_put_back_whole(app, alice, quince, sitting):
    move(alice, sitting, quince)
    assert "Put back." in back(alice, sitting).text
    assert shares(alice) == {"Harbour lanterns": (5400, 40)}
    with app.app_context():
        assert list(differences()) == []


def test_moved_put_back_and_moved_again_it_counts_once(alice, quince, sitting):
    move(alice, sitting, quince)
    back(alice, sitting)
    move(alice, sitting, quince)
    assert shares(alice)["Quince tree"] == (5400, 0)
    assert seconds(alice) == 5400


def test_the_same_move_sent_twice_counts_once(alice, quince, sitting):
    once = str(uuid4())
    for _ in range(2):
        move(alice, sitting, quince, once=once)
    assert seconds(alice) == 5400


def test_moved_on_and_put_back_it_stands_where_it_was_before(alice, new_project, quince, sitting):
    from uuid import UUID

    from webapp.hours.amends import moved_to

    third = new_project(alice, title="Winter hedge")
    move(alice, sitting, quince)
    became = moved_to(UUID(sitting.rsplit("/", 1)[1]), quince)
    there = f"/hours/sittings/{quince}/{became}"
    move(alice, there, third)
    assert shares(alice)["Winter hedge"] == (5400, 0)
    back(alice, there)
    assert shares(alice)["Quince tree"] == (5400, 0)
    assert seconds(alice) == 5400


def test_charlies_project_takes_nothing_of_alices(alice, charlie, new_project, sitting):
    answer = move(alice, sitting, new_project(charlie))
    assert answer.status_code == 422
    assert "There is no such project of yours." in answer.text
    assert seconds(alice) == 5400
    assert "struck out" not in alice.get(LIST).text


@pytest.mark.parametrize("project", ["lanterns", "<b>"])
def test_what_is_no_project_is_answered_by_a_sentence(alice, sitting, project):
    answer = move(alice, sitting, project)
    assert (answer.status_code, seconds(alice)) == (422, 5400)
    assert "Choose the project." in answer.text


def test_times_that_were_kept_say_what_they_were_and_are_put_back(alice, sitting):
    alice.post(sitting, data=times())
    assert "It was 20:00 to 21:30" in alice.get(LIST).text
    back(alice, sitting)
    assert seconds(alice) == 5400
    assert "It was" not in alice.get(LIST).text


def test_each_of_two_changes_is_put_back_by_itself(alice, sitting):
    alice.post(sitting, data=times(end="2026-02-10T21:00"))
    alice.post(sitting, data=times(end="2026-02-10T20:30"))
    back(alice, sitting)
    assert seconds(alice) == 3600
    back(alice, sitting)
    assert seconds(alice) == 5400


def test_one_left_running_is_offered_its_last_tap_and_her_usual_gap(alice, lanterns, lay):
    begin = {"id": str(uuid4()), "kind": "begin", "at": "2026-02-11T20:00:00.000Z"}
    taps = [
        {"kind": "stitches", "row": 1, "by": 10, "at": f"2026-02-11T20:{n:02}:00.000Z"} for n in (4, 8, 12)
    ]
    lay(alice, lanterns, begin, *taps)
    page = alice.get(LIST).text
    assert "20:00, left running" in page
    assert 'value="2026-02-11T20:16"' in page
    assert "Its last tap and your usual gap are offered here." in page


def test_taps_that_come_while_times_are_fixed_are_all_there(app, alice, lanterns, sitting, lay):
    id = sitting.rsplit("/", 1)[1]
    lay(alice, lanterns, {"kind": "stitches", "row": 2, "by": 3, "at": "2026-02-10T21:20:00.000Z"})
    alice.post(sitting, data=times())
    lay(
        alice,
        lanterns,
        {"kind": "stitches", "row": 2, "by": 4, "at": "2026-02-10T21:25:00.000Z"},
        {"kind": "end", "sitting": id, "at": "2026-02-10T21:26:00.000Z"},
    )
    assert shares(alice) == {"Harbour lanterns": (4200, 47)}
    with app.app_context():
        assert list(differences()) == []


def test_the_same_put_back_sent_twice_counts_once(alice, sitting):
    alice.post(sitting, data=times(end="2026-02-10T21:00"))
    alice.post(sitting, data=times(end="2026-02-10T20:30"))
    form = {"once": str(uuid4()), **WEEK}
    for _ in range(2):
        alice.post(f"{sitting}/return", data=form)
    assert seconds(alice) == 3600
