"""The reminder as a calendar by a secret address."""

import re
from datetime import UTC, date, datetime, timedelta

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from icalendar import Calendar

from webapp.db import db
from webapp.reminders import calendar
from webapp.reminders.calendar import Evening
from webapp.reminders.models import ReminderChoice

BEDTIME = datetime(2026, 2, 13, 22, 30, tzinfo=UTC)


def link_on(page):
    return re.search(r'value="[^"]*(/reminders/calendar/[^"]+\.ics)"', page.text).group(1)


def events(answer):
    assert answer.mimetype == "text/calendar"
    assert all(len(line) <= 75 for line in answer.data.split(b"\r\n"))
    (found,) = Calendar.from_ical(answer.data, multiple=True)
    assert (found["VERSION"], bool(found["PRODID"])) == ("2.0", True)
    assert found.errors == []
    return found.walk("VEVENT")


def test_a_calendar_has_the_night_that_needs_it(alice, client, new_project, hold):
    hold(alice, new_project(alice), "on")
    (event,) = events(client.get(link_on(alice.post("/reminders/calendar"))))
    assert event["DTSTART"].dt == BEDTIME
    (alarm,) = event.walk("VALARM")
    assert (alarm["ACTION"], alarm["TRIGGER"].dt) == ("DISPLAY", timedelta())
    assert str(alarm["DESCRIPTION"]) == str(event["SUMMARY"]) == "Your work is still on its frame."
    assert str(event["UID"]).startswith("night-2026-02-13@")
    assert {"DTSTAMP", "DURATION"} <= event.keys()
    assert event.errors == alarm.errors == []


def test_on_other_nights_it_has_nothing(alice, client, new_project, hold, at_night):
    link = link_on(alice.post("/reminders/calendar"))
    assert events(client.get(link)) == []
    hold(alice, new_project(alice), "on")
    alice.post("/reminders/tonight", data={"answer": "leave"})
    assert events(client.get(link)) == []
    at_night.move_to("2026-02-14T12:00:00Z")
    (event,) = events(client.get(link))
    assert event["DTSTART"].dt == BEDTIME + timedelta(days=1)


def test_where_nothing_is_said_at_bedtime_a_calendar_says_nothing_either(alice, client, new_project, hold):
    link = link_on(alice.post("/reminders/calendar"))
    hold(alice, new_project(alice), "on")
    assert len(events(client.get(link))) == 1
    page = alice.post("/reminders", data={"at_bedtime": "", "bedtime": "22:30", "hours": "", "away": ""})
    assert page.status_code == 303, page.text
    assert events(client.get(link)) == []
    assert "It stays empty while nothing is said at bedtime." in alice.get("/reminders").text


def test_a_calendar_can_be_ended_and_made_anew(alice, client):
    first = link_on(alice.post("/reminders/calendar"))
    second = link_on(alice.post("/reminders/calendar"))
    assert client.get(first).status_code == 404
    assert client.get(second).status_code == 200
    alice.post("/reminders/calendar/end")
    assert client.get(second).status_code == 404


def test_its_address_is_shown_once_and_kept_as_a_hash(app, alice):
    link = link_on(alice.post("/reminders/calendar"))
    token = link.rsplit("/", 1)[1].removesuffix(".ics")
    assert token not in alice.get("/reminders").text
    with app.app_context():
        assert token not in str(db.session.query(ReminderChoice.feed).one())


@given(st.text(max_size=200), st.dates(date(1990, 1, 1), date(2037, 1, 1)))
@settings(suppress_health_check=[HealthCheck.function_scoped_fixture])
def test_whatever_a_work_is_called_the_calendar_can_be_read(said, night):
    begin = datetime(night.year, night.month, night.day, 22, 30, tzinfo=UTC)
    found = calendar.written("her", [Evening(night, begin, said)], BEDTIME)
    assert all(len(line) <= 75 for line in found.split(b"\r\n"))
    (event,) = Calendar.from_ical(found).walk("VEVENT")
    assert event["DTSTART"].dt == begin
    kept = [c for c in str(event["SUMMARY"]) if c.isprintable() and c != "\\"]
    assert kept == [c for c in said if c.isprintable() and c != "\\"]
