from datetime import date

import pytest

from webapp.db import db
from webapp.reminders.models import ReminderChoice, Told

CHOSEN = {"at_bedtime": "yes", "bedtime": "21:45", "hours": "4", "show_title": "yes", "away": "2026-02-20"}


@pytest.fixture
def chosen(app):
    """Read what was chosen, by whoever chose first."""

    def read():
        with app.app_context():
            return db.session.query(ReminderChoice).first()

    return read


def said(client):
    return " ".join(client.get("/frame/banner").text.split())


def test_it_works(alice, chosen):
    answer = alice.post("/reminders", data=CHOSEN)
    assert (answer.status_code, answer.location) == (303, "/reminders?kept=yes")
    choice = chosen()
    assert (choice.at_bedtime, choice.hours, choice.show_title) == (True, 4, True)
    assert choice.away == date(2026, 2, 20)
    page = alice.get("/reminders?kept=yes").text
    for shown in ('value="21:45"', 'value="2026-02-20"', '<option value="4" selected>', "Kept."):
        assert shown in page
    assert 'data-bedtime="21:45"' in page


def test_what_is_not_chosen_is_off(alice, chosen):
    alice.post("/reminders", data=CHOSEN)
    alice.post("/reminders", data={"bedtime": "22:30"})
    choice = chosen()
    assert (choice.at_bedtime, choice.hours, choice.show_title, choice.away) == (False, None, False, None)


def test_who_never_chose_is_shown_bedtime_alone(alice, chosen):
    page = alice.get("/reminders").text
    assert 'name="at_bedtime" value="yes" checked' in page
    assert 'name="show_title" value="no" checked' in page
    assert chosen() is None


@pytest.mark.parametrize(
    ("field", "typed", "sentence"),
    [
        ("bedtime", "25:00", "There is no such time."),
        ("bedtime", "", "Write the time as hours and minutes"),
        ("hours", "5000", "Choose one of those shown."),
        ("hours", "-1", "Choose one of those shown."),
        ("away", "soon", "Choose the day you are back."),
        ("away", "2026-02-31", "Choose the day you are back."),
    ],
)
def test_what_is_wrong_is_said_beside_it_and_nothing_is_changed(alice, chosen, field, typed, sentence):
    answer = alice.post("/reminders", data={**CHOSEN, field: typed})
    assert answer.status_code == 422
    assert sentence in answer.text
    assert f'value="{typed}"' in answer.text or not typed or field == "hours"
    assert chosen() is None


def test_left_for_tonight_the_pages_are_quiet_too_until_tomorrow(alice, new_project, hold, at_night):
    hold(alice, new_project(alice), "on")
    assert "still on the hoop" in said(alice)
    alice.post("/reminders/tonight", data={"answer": "leave"})
    assert said(alice) == ""
    assert "Nothing will be said tonight." in alice.get("/reminders").text
    assert 'data-left="1771070400000"' in alice.get("/projects").text  # noon of the 14th
    at_night.move_to("2026-02-14T22:30:00Z")
    assert "still on the hoop" in said(alice)


def test_away_the_pages_are_quiet_too(alice, new_project, hold):
    hold(alice, new_project(alice), "on")
    alice.post("/reminders", data={**CHOSEN, "away": "2026-02-14"})
    assert said(alice) == ""
    alice.post("/reminders", data={**CHOSEN, "away": "2026-02-13"})
    assert "still on the hoop" in said(alice)


def test_asked_to_say_it_again_it_waits_half_an_hour(app, alice):
    alice.post("/reminders/tonight", data={"answer": "leave"})
    answer = alice.post("/reminders/tonight.json", json={"answer": "later"})
    assert answer.json == {"answered": True}
    with app.app_context():
        (row,) = db.session.query(Told).all()
        assert (row.night, row.kind, row.state) == (date(2026, 2, 13), "bedtime", "waiting")
        assert f"{row.next_try:%H:%M}" == "00:00"
        assert db.session.query(ReminderChoice).one().left is None


@pytest.mark.parametrize("body", [{}, {"answer": "never"}, {"answer": ["leave"]}, [], None])
def test_an_answer_that_is_none_is_said(alice, body):
    answer = alice.post("/reminders/tonight.json", json=body)
    assert answer.status_code == 422
    assert "Choose to leave it tonight" in answer.json["error"]


def test_signed_out_nothing_is_shown_or_changed(client):
    assert client.get("/reminders").location == "/sign-in?next=/reminders"
    assert client.post("/reminders/tonight.json", json={"answer": "leave"}).status_code == 401


def test_which_way_failed_stands_above_the_pages_until_she_has_seen_it(app, alice, charlie):
    alice.post("/reminders", data=CHOSEN)
    with app.app_context():
        db.session.query(ReminderChoice).one().trouble = "The reminder did not get through, twice."
        db.session.commit()
    assert "did not get through, twice" in alice.get("/projects").text
    assert "did not get through" not in charlie.get("/projects").text
    assert alice.post("/reminders/seen").location == "/reminders"
    assert "did not get through" not in alice.get("/projects").text


def test_it_is_found_from_her_account(alice):
    assert 'href="/reminders"' in alice.get("/account").text
    for page in ("/reminders", "/reminders/here", "/shell/tonight"):
        assert alice.get(page).status_code == 200
