from datetime import UTC, date, datetime
from zoneinfo import ZoneInfo

from webapp.hours.nights import Held, nights_on
from webapp.hours.week import week_from

WEEK = week_from(date(2026, 2, 9), ZoneInfo("Europe/London"))
LATER = datetime(2026, 3, 1, tzinfo=UTC)


def at(day, hour, state):
    return Held(datetime(2026, 2, day, hour, tzinfo=UTC), state)


def nights(*held, now=LATER):
    return nights_on({"lanterns": held}, WEEK.days, now)


def test_work_taken_off_at_bedtime_spent_no_night_on_the_frame():
    assert nights(at(9, 20, "on"), at(9, 23, "off")) == {}


def test_each_night_until_it_came_off_counts():
    assert nights(at(9, 20, "on"), at(11, 8, "off")) == {"lanterns": 2}


def test_slack_for_the_night_is_not_on():
    assert nights(at(9, 20, "on"), at(9, 23, "slack"), at(11, 20, "on"), at(12, 3, "off")) == {}


def test_what_was_on_before_the_week_counts_from_its_first_night():
    assert nights(at(1, 20, "on")) == {"lanterns": 7}


def test_a_night_that_is_not_over_does_not_count_yet():
    assert nights(at(9, 20, "on"), now=datetime(2026, 2, 10, 3, tzinfo=UTC)) == {}
    assert nights(at(9, 20, "on"), now=datetime(2026, 2, 10, 4, tzinfo=UTC)) == {"lanterns": 1}
