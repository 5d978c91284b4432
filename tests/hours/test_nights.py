from datetime import UTC, date, datetime, timedelta
from zoneinfo import ZoneInfo

from hypothesis import given
from hypothesis import strategies as st

from webapp.hours.nights import DEEP, Held, nights_on
from webapp.hours.week import week_from

WEEK = week_from(date(2026, 2, 9), ZoneInfo("Europe/London"))
LATER = datetime(2026, 3, 1, tzinfo=UTC)


def at(day, hour, state):
    return Held(datetime(2026, 2, day, hour, tzinfo=UTC), state)


def nights(*held, now=LATER, days=WEEK.days):
    """Give the days of the month on which nights on the frame began."""
    return [day.day for day in nights_on({"lanterns": held}, days, now).get("lanterns", [])]


def test_work_taken_off_at_bedtime_spent_no_night_on_the_frame():
    assert nights(at(9, 20, "on"), at(9, 23, "off")) == []


def test_each_night_until_it_came_off_counts():
    assert nights(at(9, 20, "on"), at(11, 8, "off")) == [9, 10]


def test_slack_for_the_night_is_not_on():
    assert nights(at(9, 20, "on"), at(9, 23, "slack"), at(11, 20, "on"), at(12, 3, "off")) == []


def test_what_was_on_before_the_week_counts_from_its_first_night():
    assert nights(at(1, 20, "on")) == [9, 10, 11, 12, 13, 14, 15]


def test_a_night_that_is_not_over_does_not_count_yet():
    assert nights(at(9, 20, "on"), now=datetime(2026, 2, 10, 3, tzinfo=UTC)) == []
    assert nights(at(9, 20, "on"), now=datetime(2026, 2, 10, 4, tzinfo=UTC)) == [9]


def test_put_on_anew_at_once_it_is_one_stay():
    assert nights(at(9, 20, "on"), at(10, 8, "off"), at(10, 8, "on"), at(11, 8, "off")) == [9, 10]


def test_a_day_that_the_calendar_skipped_has_no_night():
    # Apia went from Thursday, 29 December 2011, to Saturday the 31st (tz database, Pacific/Apia).
    days = week_from(date(2011, 12, 26), ZoneInfo("Pacific/Apia")).days
    assert nights(Held(days[0].begin, "on"), days=days) == [26, 27, 28, 29, 31, 1]


def reference(held, days, now):
    """Look at each night by itself."""
    deep = [(day.date.day, day.end + DEEP) for day in days]
    states = {n: [one.state for one in held if one.at <= at][-1:] for n, at in deep if at <= now}
    return [n for n, state in states.items() if state == ["on"]]


@given(
    st.lists(st.tuples(st.integers(0, 9 * 24), st.sampled_from(["on", "slack", "off"])), max_size=12),
    st.integers(0, 10 * 24),
)
def test_it_is_as_if_each_night_was_looked_at_by_itself(said, hours):
    begin = WEEK.begin - timedelta(days=1)
    held = [
        Held(begin + timedelta(hours=hour), state) for hour, state in sorted(said, key=lambda one: one[0])
    ]
    now = begin + timedelta(hours=hours)
    assert nights(*held, now=now) == reference(held, WEEK.days, now)
