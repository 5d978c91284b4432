"""A sitting moved, moved on and put back: wherever it was on its way, at most once does it count."""

from uuid import UUID, uuid4

import pytest

from tests.hours.test_fix_moved import LIST, back, move, shares
from tests.hours.test_fix_times import WEEK, seconds, times
from webapp.hours.amends import moved_to
from webapp.journal.audit import differences


@pytest.fixture(autouse=True)
def sound(app):
    """Whatever was done, what the journal worked out is what it would work out anew."""
    yield
    with app.app_context():
        assert list(differences()) == []


@pytest.fixture
def hedge(alice, new_project):
    return new_project(alice, title="Winter hedge")


@pytest.fixture
def sitting(alice, lanterns, quince, hedge, sit):
    """A sitting of an hour at the lanterns; gives its address."""
    id = sit(alice, lanterns, "2026-02-10T20:00", "2026-02-10T21:00")
    return f"/hours/sittings/{lanterns}/{id}"


def moved(client, sitting, to, end="2026-02-10T21:00"):
    """Move a sitting; gives its new address."""
    answer = client.post(sitting, data=times(end=end, project=str(to)))
    assert answer.status_code == 303, answer.text
    return f"/hours/sittings/{to}/{moved_to(UUID(sitting.rsplit('/', 1)[1]), to)}"


def changed(client, sitting, end="2026-02-10T20:30"):
    assert client.post(sitting, data=times(end=end)).status_code == 303


def written(client, project):
    return client.get(f"/projects/{project}/snapshot").json["revision"]


def minutes(client):
    return {title: time / 60 for title, (time, _) in shares(client).items()}


def test_put_back_after_its_time_was_changed_where_it_went_it_stands_once(alice, quince, sitting):
    changed(alice, moved(alice, sitting, quince))
    back(alice, sitting)
    assert minutes(alice) == {"Harbour lanterns": 60}


def test_put_back_after_it_was_moved_on_with_another_time_it_stands_once(alice, quince, hedge, sitting):
    moved(alice, moved(alice, sitting, quince), hedge, end="2026-02-10T20:40")
    assert minutes(alice) == {"Winter hedge": 40}
    back(alice, sitting)
    assert minutes(alice) == {"Harbour lanterns": 60}
    assert "Put back" not in alice.get(LIST).text


def test_half_way_back_it_stands_where_it_was_half_way(alice, quince, hedge, sitting):
    there = moved(alice, sitting, quince)
    changed(alice, moved(alice, there, hedge))
    back(alice, there)
    assert minutes(alice) == {"Quince tree": 60}
    assert "moved to Quince tree" in alice.get(LIST).text
    back(alice, sitting)
    assert minutes(alice) == {"Harbour lanterns": 60}


def test_each_it_was_on_its_way_names_where_it_is_now(alice, quince, hedge, sitting):
    moved(alice, moved(alice, sitting, quince), hedge)
    page = alice.get(LIST).text
    assert (page.count("moved to Winter hedge"), page.count("struck out")) == (2, 0)


def test_moved_there_and_back_the_first_is_said_to_be_moved(alice, lanterns, quince, sitting):
    moved(alice, moved(alice, sitting, quince), lanterns)
    page = alice.get(LIST).text
    assert "moved to Quince tree and back" in page
    assert "struck out" not in page
    back(alice, sitting)
    assert minutes(alice) == {"Harbour lanterns": 60}
    assert alice.get(LIST).text.count("20:00 to 21:00") == 1


def test_moved_anew_after_all_that_it_stands_once(alice, quince, hedge, sitting):
    moved(alice, moved(alice, sitting, quince), hedge)
    back(alice, sitting)
    moved(alice, sitting, quince)
    assert minutes(alice) == {"Quince tree": 60}


@pytest.mark.parametrize("part", ["", "/list"])
def test_a_stale_form_for_one_that_was_moved_changes_nothing(alice, lanterns, quince, sitting, part):
    moved(alice, sitting, quince)
    before = written(alice, lanterns), written(alice, quince)
    for form in (times(end="2026-02-10T20:20"), times(end="2026-02-10T20:20", project=str(lanterns))):
        answer = alice.post(sitting + part, data=form)
        assert answer.status_code == 422
        assert "This sitting was moved to Quince tree meanwhile." in answer.text
    assert (written(alice, lanterns), written(alice, quince)) == before
    assert minutes(alice) == {"Quince tree": 60}


def test_a_stale_form_moves_nothing_a_second_time(alice, quince, hedge, sitting):
    moved(alice, sitting, quince)
    answer = move(alice, sitting, hedge)
    assert answer.status_code == 422
    assert "moved to Quince tree meanwhile" in answer.text
    assert minutes(alice) == {"Quince tree": 60}


def test_a_stale_form_strikes_out_nothing_that_was_moved(alice, lanterns, quince, sitting):
    moved(alice, sitting, quince)
    before = written(alice, lanterns)
    answer = alice.post(f"{sitting}/strike", data={"once": str(uuid4()), **WEEK})
    assert answer.status_code == 422
    assert "moved to Quince tree meanwhile" in answer.text
    assert written(alice, lanterns) == before


def test_a_stale_form_for_one_that_was_struck_out_changes_nothing(alice, sitting):
    alice.post(f"{sitting}/strike", data={"once": str(uuid4()), **WEEK})
    answer = alice.post(sitting, data=times())
    assert answer.status_code == 422
    assert "This sitting was struck out meanwhile." in answer.text
    assert seconds(alice) == 0


@pytest.mark.parametrize("what", ["", "/strike", "/return"])
def test_a_stale_form_for_one_that_went_back_where_it_came_from_changes_nothing(alice, quince, sitting, what):
    there = moved(alice, sitting, quince)
    back(alice, sitting)
    before = written(alice, quince)
    answer = alice.post(there + what, data=times())
    assert answer.status_code == 422
    assert "This sitting is not there any more" in answer.text
    assert written(alice, quince) == before
    assert minutes(alice) == {"Harbour lanterns": 60}


def test_a_form_that_moved_it_says_so_again_when_it_is_sent_twice(alice, quince, sitting):
    form = times(project=str(quince))
    for _ in range(2):
        assert alice.post(sitting, data=form).status_code == 303
    assert seconds(alice) == 4200


def test_a_form_that_moved_it_gone_back_to_and_changed_is_stale(alice, quince, hedge, sitting):
    form = times(project=str(quince))
    alice.post(sitting, data=form)
    assert alice.post(sitting, data=form | {"project": str(hedge)}).status_code == 422
    assert seconds(alice) == 4200


def test_the_form_that_added_one_does_not_bring_it_back_once_it_was_moved(alice, lanterns, quince, sitting):
    form = times("2026-02-11T20:00", "2026-02-11T21:00", project=str(lanterns))
    alice.post("/hours/sittings", data=form)
    move = times("2026-02-11T20:00", "2026-02-11T21:00", project=str(quince))
    assert alice.post(f"/hours/sittings/{lanterns}/{form['once']}", data=move).status_code == 303
    answer = alice.post("/hours/sittings", data=form | {"end": "2026-02-11T20:30"})
    assert answer.status_code == 422
    assert "moved to Quince tree meanwhile" in answer.text
    assert minutes(alice) == {"Harbour lanterns": 60, "Quince tree": 60}


def test_what_a_move_added_is_not_put_back_to_nothing(alice, quince, sitting):
    there = moved(alice, sitting, quince)
    back(alice, there)
    assert minutes(alice) == {"Quince tree": 60}


def test_times_kept_as_they_are_write_nothing(alice, lanterns, sitting):
    before = written(alice, lanterns)
    answer = alice.post(f"{sitting}/list", data=times(end="2026-02-10T21:00"))
    assert answer.status_code == 200
    assert "Kept." in answer.text
    assert "It was" not in answer.text
    assert written(alice, lanterns) == before


def test_a_stale_form_with_a_wrong_time_is_answered_by_that_sentence(alice, quince, sitting):
    moved(alice, sitting, quince)
    answer = alice.post(sitting, data=times(end="2026-02-10T19:00"))
    assert answer.status_code == 422
    assert "The end must come after the beginning." in answer.text
