from datetime import UTC, date, datetime, timedelta
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st

from webapp.hours.week import BadWeek, days_from, first_of, midnight, runs, week_beside, week_from, week_named

LONDON = ZoneInfo("Europe/London")

# Worked by hand from the rules of the public-domain tz database, as they stand in its text files.
DAY_LENGTHS = [
    ("Europe/London", "2026-03-29", 23),  # 01:00 to 02:00 skipped
    ("Europe/London", "2026-10-25", 25),  # 01:00 to 02:00 twice
    ("Europe/London", "2026-10-26", 24),
    ("America/New_York", "2026-03-08", 23),
    ("America/New_York", "2026-11-01", 25),
    ("Australia/Lord_Howe", "2026-04-05", 24.5),  # half an hour back at 02:00
    ("Australia/Lord_Howe", "2026-10-04", 23.5),
    ("Pacific/Chatham", "2026-04-05", 25),  # 12:45 ahead of UTC; back at 03:45
    ("Africa/Cairo", "2024-04-26", 23),  # summer time from 00:00: midnight is skipped
    ("Africa/Cairo", "2024-10-31", 25),  # 24:00 becomes 23:00
    ("America/Havana", "2025-03-09", 23),  # from 00:00
    ("America/Havana", "2025-11-02", 25),  # 01:00 becomes 00:00: midnight comes twice
    ("America/St_Johns", "2006-10-28", 25),  # 00:01 on the 29th becomes 23:01 on the 28th
    ("America/St_Johns", "2006-10-29", 24),
    ("America/Toronto", "1919-03-30", 23.5),  # 23:30 becomes 00:30: the gap lies across midnight
    ("America/Toronto", "1919-03-31", 23.5),
    ("Asia/Pyongyang", "2018-05-04", 23.5),  # 23:30 becomes 24:00
    ("Asia/Kathmandu", "1986-01-01", 23.75),  # 00:00 becomes 00:15
    ("Pacific/Apia", "2011-12-29", 24),
    ("Pacific/Apia", "2011-12-30", 0),  # the date line moved over it
    ("Pacific/Apia", "2011-12-31", 24),
]


@pytest.mark.parametrize(("zone", "day", "hours"), DAY_LENGTHS)
def test_a_day_is_as_long_as_her_clocks_make_it(zone, day, hours):
    day = date.fromisoformat(day)
    length = midnight(day + timedelta(days=1), ZoneInfo(zone)) - midnight(day, ZoneInfo(zone))
    assert length == timedelta(hours=hours)


@pytest.mark.parametrize(
    ("zone", "day", "begins"),
    [
        ("Europe/London", "2026-07-01", "2026-06-30T23:00"),
        ("Africa/Cairo", "2024-04-26", "2024-04-25T22:00"),  # 00:00 = 01:00 summer time, 3 h ahead
        ("America/Havana", "2025-11-02", "2025-11-02T04:00"),  # the first midnight, 4 h behind
        ("America/St_Johns", "2006-10-29", "2006-10-29T03:30"),  # the second midnight, 3 h 30 behind
        ("America/Toronto", "1919-03-31", "1919-03-31T04:30"),  # 23:30, 5 h behind
        ("Asia/Kathmandu", "2026-02-03", "2026-02-02T18:15"),
    ],
)
def test_a_day_begins_where_the_date_is_there_to_stay(zone, day, begins):
    begin = midnight(date.fromisoformat(day), ZoneInfo(zone))
    assert begin == datetime.fromisoformat(begins).replace(tzinfo=UTC)


zones = st.sampled_from([ZoneInfo(name) for name in {zone for zone, _, _ in DAY_LENGTHS}])


@given(zones, st.dates(date(1970, 1, 1), date(2100, 1, 1)))
def test_no_moment_falls_between_two_days(zone, day):
    begin, end = midnight(day, zone), midnight(day + timedelta(days=1), zone)
    assert begin <= end
    if begin < end:
        assert begin.astimezone(zone).date() == day
        assert (begin - timedelta(seconds=1)).astimezone(zone).date() < day


@given(st.dates(date(1971, 1, 4), date(2198, 12, 20)), st.integers(0, 6))
def test_a_week_is_named_as_iso_8601_names_its_thursday(day, week_start):
    week = week_from(first_of(day, week_start), LONDON)
    assert week.first.weekday() == week_start
    assert week.first <= day <= week.last
    year, number, _ = next(d.date for d in week.days if d.date.weekday() == 3).isocalendar()  # the reference
    assert week.name == f"{year}-W{number:02}"
    assert week_named(week.name, LONDON, week_start) == week


@given(st.dates(date(1971, 1, 4), date(2198, 12, 20)))
def test_a_week_from_monday_is_the_iso_week(day):
    assert week_from(first_of(day, 0), LONDON).iso == day.isocalendar()[:2]


def test_week_7_of_2026_holds_12_february_wherever_it_starts():
    assert week_named("2026-W07", LONDON, 0).first == date(2026, 2, 9)
    assert week_named("2026-W07", LONDON, 6).first == date(2026, 2, 8)
    assert week_named("2026-W07", LONDON, 5).first == date(2026, 2, 7)


def test_the_week_after_the_last_of_a_long_year_is_the_first_of_the_next():
    assert week_beside(week_named("2026-W53", LONDON, 0), 1, LONDON).name == "2027-W01"


@pytest.mark.parametrize(
    "name",
    [
        *("", "2026", "2026-7", "2026-W7", "2026-W00", "2026-W54", "2025-W53", "2026-w07", "2026-W07 "),
        *(
            "2026-W٠٧",
            "0001-W01",
            "9999-W52",
            "-026-W07",
            "2026-W07-1",
            "<b>",
            "1e9",
            "2026-W07\n",
            "9" * 5000,
        ),
    ],
)
def test_a_week_that_is_none_is_answered_by_a_sentence(name):
    with pytest.raises(BadWeek, match=r"[A-Z].+\."):
        week_named(name, LONDON, 0)


def test_a_year_is_five_runs_of_days_of_one_length():
    days = days_from(date(2026, 1, 1), date(2027, 1, 1), LONDON).days
    found = [(days[first].date.isoformat(), count) for first, count in runs(days)]
    changes = [("2026-03-29", 1), ("2026-10-25", 1)]  # 23 and 25 hours
    assert found == [("2026-01-01", 87), changes[0], ("2026-03-30", 209), changes[1], ("2026-10-26", 67)]
    assert list(runs([])) == [] == list(runs(()))
