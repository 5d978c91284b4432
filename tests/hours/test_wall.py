from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st

from webapp.hours.wall import NoSuchTime, meant, shown, wrong_with

LONDON = ZoneInfo("Europe/London")
ZONES = ["Europe/London", "Australia/Lord_Howe", "Africa/Cairo", "America/Havana", "Asia/Kathmandu"]


def utc(text):
    return datetime.fromisoformat(text).replace(tzinfo=UTC)


# Worked by hand: in 2026 summer time in London is from 29 March to 25 October, both at 01:00 UTC.
@pytest.mark.parametrize(
    ("wall", "after", "moment"),
    [
        ("2026-02-03T20:14", None, "2026-02-03T20:14"),
        ("2026-07-03T20:14", None, "2026-07-03T19:14"),
        ("2026-10-25T01:20", None, "2026-10-25T00:20"),  # shown twice: the earlier
        ("2026-10-25T01:20", "2026-10-25T00:10", "2026-10-25T00:20"),
        ("2026-10-25T01:20", "2026-10-25T00:40", "2026-10-25T01:20"),  # the later, as it must come after
        ("2026-10-25T01:20", "2026-10-25T03:00", "2026-10-25T01:20"),  # neither does: that is said elsewhere
    ],
)
def test_a_time_on_the_wall_is_a_moment(wall, after, moment):
    assert meant(datetime.fromisoformat(wall), LONDON, after and utc(after)) == utc(moment)


@pytest.mark.parametrize(
    ("zone", "wall"),
    [
        ("Europe/London", "2026-03-29T01:00"),
        ("Europe/London", "2026-03-29T01:59"),
        ("Africa/Cairo", "2024-04-26T00:30"),
        ("Australia/Lord_Howe", "2026-10-04T02:15"),
        ("Pacific/Apia", "2011-12-30T12:00"),
    ],
)
def test_a_time_the_clocks_skipped_is_refused_by_a_sentence(zone, wall):
    with pytest.raises(NoSuchTime, match=r"There was no \d\d:\d\d that day: .+\."):
        meant(datetime.fromisoformat(wall), ZoneInfo(zone))


moments = st.datetimes(datetime(1990, 1, 1), datetime(2037, 1, 1)).map(
    lambda m: m.replace(second=0, microsecond=0, tzinfo=UTC)
)


@given(moments, st.sampled_from(ZONES).map(ZoneInfo))
def test_what_is_shown_means_what_it_was(moment, zone):
    wall = shown(moment, zone)
    assert moment in (meant(wall, zone), meant(wall, zone, moment - timedelta(minutes=1)))


@pytest.mark.parametrize(
    ("begin", "end", "field"),
    [
        ("2026-02-03T20:00", "2026-02-03T20:00", "end"),
        ("2026-02-03T20:00", "2026-02-03T19:59", "end"),
        ("2026-02-03T20:00", "2026-02-04T20:01", "end"),
        ("2026-02-13T21:00", "2026-02-13T22:01", "end"),
        ("2026-02-13T22:01", "2026-02-13T22:30", "begin"),
        ("1970-01-01T00:00", "1970-01-01T01:00", "begin"),
    ],
)
def test_times_that_cannot_be_right_are_answered_by_a_sentence(begin, end, field):
    wrong = wrong_with(utc(begin), utc(end), utc("2026-02-13T22:00"))
    assert list(wrong) == [field]
    assert wrong[field].endswith(".")


def test_a_day_and_night_is_the_longest_sitting():
    assert wrong_with(utc("2026-02-03T20:00"), utc("2026-02-04T20:00"), utc("2026-02-13T22:00")) == {}
