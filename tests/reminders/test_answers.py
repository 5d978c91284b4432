"""Her answers for the night as a phone tells them that had no network: late, twice, or too late."""

from datetime import UTC, date, datetime

import pytest

from webapp.db import db
from webapp.reminders.models import ReminderChoice, Told

NIGHT = date(2026, 2, 13)


@pytest.fixture
def tell(alice):
    """Tell the house what she answered, and when (UTC)."""

    def tell(answer, at, **more):
        body = {"answer": answer, "at": f"2026-02-{at}:00.000Z", **more}
        answer = alice.post("/reminders/tonight.json", json=body)
        assert answer.json == {"answered": True}, answer.text

    return tell


@pytest.fixture
def left(app):
    def read():
        with app.app_context():
            choice = db.session.query(ReminderChoice).first()
            return choice and choice.left

    return read


@pytest.fixture
def told(app):
    """List the ledger's rows: night, kind, state, and when it is said, by the clock."""

    def read():
        with app.app_context():
            rows = db.session.query(Told).all()
            return [(one.night, one.kind, one.state, f"{one.next_try:%H:%M}") for one in rows]

    return read


def test_it_works(tell, left, told):
    tell("leave", "13T22:40")
    assert left() == NIGHT
    tell("later", "13T23:10")
    assert (left(), told()) == (None, [(NIGHT, "bedtime", "waiting", "23:40")])


def test_her_last_word_counts_in_whatever_order_it_is_told(tell, left, told):
    """Two phones, one without network for a while."""
    tell("leave", "13T22:50")
    tell("later", "13T22:40")
    assert (left(), told()) == (NIGHT, [])
    tell("later", "13T23:00")
    tell("leave", "13T22:50")
    assert (left(), told()) == (None, [(NIGHT, "bedtime", "waiting", "23:30")])


@pytest.mark.parametrize("at", ["0001-01-01T00:00:00Z", "9999-12-31T23:59:59.999Z"])
@pytest.mark.parametrize("answer", ["leave", "later"])
def test_a_phone_that_is_wrong_by_ages_is_answered(alice, answer, at):
    told = alice.post("/reminders/tonight.json", json={"answer": answer, "at": at})
    assert (told.status_code, told.json) == (200, {"answered": True})


@pytest.mark.parametrize("path", ["/reminders/tonight.json", "/reminders/phones.json"])
def test_what_nests_without_end_is_answered_by_a_sentence(alice, path):
    answer = alice.post(path, data="[" * 100_000, content_type="application/json")
    assert answer.status_code == 422


def test_left_by_day_it_is_of_the_coming_night_even_if_told_in_it(tell, left, at_night):
    at_night.move_to("2026-02-14T08:00:00Z")
    tell("leave", "13T15:00")
    assert left() == NIGHT


def test_an_answer_of_a_night_that_is_over_is_dropped(tell, left, told, at_night):
    at_night.move_to("2026-02-14T12:00:00Z")
    tell("leave", "13T23:00")
    tell("later", "13T23:00")
    assert (left(), told()) == (None, [])


def test_a_past_answer_ends_no_answer_of_the_night_it_is(tell, left, at_night):
    at_night.move_to("2026-02-14T23:00:00Z")
    tell("leave", "14T22:50")
    tell("later", "13T23:00")
    assert left() == date(2026, 2, 14)


def test_half_an_hour_that_is_over_is_said_at_once_and_an_hour_later_no_more(tell, told, at_night):
    at_night.move_to("2026-02-14T00:30:00Z")
    tell("later", "13T23:00")
    assert told() == []
    tell("later", "13T23:01")
    assert told() == [(NIGHT, "bedtime", "waiting", "23:31")]


def test_told_twice_it_is_said_once(app, tell, told, at_night):
    tell("later", "13T23:00")
    with app.app_context():
        db.session.query(Told).one().state = "sent"
        db.session.commit()
    tell("later", "13T23:00")
    tell("later", "13T22:50")
    assert told() == [(NIGHT, "bedtime", "sent", "23:30")]
    tell("later", "13T23:05")
    assert told() == [(NIGHT, "bedtime", "waiting", "23:35")]


def test_a_phone_that_is_ahead_answers_now(tell, told):
    tell("later", "20T23:00")
    assert told() == [(NIGHT, "bedtime", "waiting", "00:00")]


@pytest.mark.parametrize("at", ["", "now", 7, [], "2026-02-30T10:00:00Z"])
def test_when_it_was_must_be_a_moment(alice, left, at):
    answer = alice.post("/reminders/tonight.json", json={"answer": "leave", "at": at})
    assert (answer.status_code, left()) == (422, None)
    assert answer.json["error"] == "When that was answered cannot be read. Answer again."


def test_another_stitchers_answer_stays_on_her_phone(alice, charlie, left):
    hers = alice.get("/projects").headers["X-Evenrow-Account"]
    given = {"answer": "leave", "at": datetime(2026, 2, 13, 23, tzinfo=UTC).isoformat(), "account": hers}
    assert charlie.post("/reminders/tonight.json", json=given).status_code == 409
    assert left() is None
    assert alice.post("/reminders/tonight.json", json=given).status_code == 200
    assert left() == NIGHT
