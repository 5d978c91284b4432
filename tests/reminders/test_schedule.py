from dataclasses import replace
from datetime import UTC, date, datetime, time, timedelta
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st

from webapp.reminders.bedtime import Held, span
from webapp.reminders.schedule import LATE, Choices, next_bedtime, night_of, reminders

LONDON = ZoneInfo("Europe/London")
HERS = Choices(time(22, 30), LONDON)
NIGHT = date(2026, 2, 13)
ZONES = ["Europe/London", "Australia/Lord_Howe", "Africa/Cairo", "America/Havana", "Asia/Kathmandu"]


def at(text):
    return datetime.fromisoformat(f"{text}Z" if text.count(":") == 1 else text)


def on(since="2026-02-13T20:00", kind="hoop", state="on", project="a"):
    return Held(project, "Moth", kind, state, at(since))


def said(held, moment, choices=HERS):
    return [(one.kind, one.night) for one in reminders(held, at(moment), choices)]


def test_it_works():
    (one,) = reminders([on()], at("2026-02-13T22:30"), HERS)
    assert (one.kind, one.night, one.at) == ("bedtime", NIGHT, at("2026-02-13T22:30"))
    assert one.until == at("2026-02-14T01:30")
    assert one.works == ((on(), "off"),)


def test_with_nothing_on_a_frame_there_is_nothing_to_say():
    assert said([], "2026-02-13T22:30") == said([on(state="off")], "2026-02-13T22:30") == []


@pytest.mark.parametrize(
    ("kind", "state", "asks"),
    [
        ("hoop", "on", ["off"]),
        ("hoop", "slack", ["off"]),
        ("clamps", "on", ["off"]),
        ("scroll", "on", ["slack"]),
        ("scroll", "slack", []),
        ("stretched", "on", []),
        ("hand", "on", []),
    ],
)
def test_what_is_asked_follows_the_kind_of_the_frame(kind, state, asks):
    found = reminders([on(kind=kind, state=state)], at("2026-02-13T23:00"), HERS)
    assert [ask for one in found for _, ask in one.works] == asks


def test_late_is_sent_and_too_late_is_not():
    moments = ("13T22:29", "13T22:30", "14T01:29", "14T01:30", "14T09:00")
    assert [bool(said([on()], f"2026-02-{moment}")) for moment in moments] == [
        False,
        True,
        True,
        False,
        False,
    ]


def test_a_bedtime_after_midnight_is_of_the_evening_before():
    late = replace(HERS, bedtime=time(0, 30))
    assert said([on()], "2026-02-14T00:30", late) == [("bedtime", NIGHT)]


def test_a_bedtime_in_the_morning_is_of_the_day_before():
    night_shift = replace(HERS, bedtime=time(8, 0))
    assert said([on("2026-02-14T01:00")], "2026-02-14T08:00", night_shift) == [("bedtime", NIGHT)]


def test_what_is_put_on_after_bedtime_is_left_in_peace_for_an_hour():
    late = [on("2026-02-13T23:40")]
    moments = ("13T23:41", "14T00:39", "14T00:40", "14T03:39", "14T03:40")
    assert [bool(said(late, f"2026-02-{moment}")) for moment in moments] == [False, False, True, True, False]


def test_what_is_put_on_in_the_morning_waits_for_the_evening():
    assert said([on("2026-02-14T06:00")], "2026-02-14T08:00") == []


@pytest.mark.parametrize(
    ("choices", "expected"),
    [
        ({"left": NIGHT}, []),
        ({"left": NIGHT - timedelta(days=1)}, [("bedtime", NIGHT)]),
        ({"away": NIGHT + timedelta(days=1)}, []),
        ({"away": NIGHT}, [("bedtime", NIGHT)]),
        ({"at_bedtime": False}, []),
    ],
)
def test_she_is_left_in_peace_when_she_says_so(choices, expected):
    assert said([on()], "2026-02-13T22:45", replace(HERS, **choices)) == expected


def test_after_so_many_hours_without_a_break_she_is_told_too():
    four = replace(HERS, hours=4)
    moments = ("15:59", "16:00", "18:59", "19:00")
    held = [on("2026-02-13T12:00")]
    found = [said(held, f"2026-02-13T{moment}", four) for moment in moments]
    assert found == [[], [("hours", NIGHT)], [("hours", NIGHT)], []]


def test_slack_for_a_while_is_a_break_on_a_scroll_frame_and_none_on_a_hoop():
    four = replace(HERS, hours=4)
    times = {"since": "2026-02-13T10:00", "tight": "2026-02-13T13:00"}
    for kind, told in (("scroll", ["17:00"]), ("hoop", ["14:00", "16:59"])):
        held = [Held("a", "Moth", kind, "on", at(times["since"]), at(times["tight"]))]
        moments = ("14:00", "16:59", "17:00")
        assert [one for one in moments if said(held, f"2026-02-13T{one}", four)] == told, kind


def test_hours_that_end_close_to_bedtime_wait_for_it():
    four = replace(HERS, hours=4)
    held = [on("2026-02-13T18:00")]
    assert said(held, "2026-02-13T22:00", four) == []
    assert said(held, "2026-02-13T22:30", four) == [("bedtime", NIGHT)]
    assert said(held, "2026-02-13T22:00", replace(four, at_bedtime=False)) == [("hours", NIGHT)]


@pytest.mark.parametrize("bedtime", [time(22, 30), time(13)])
def test_what_is_put_on_in_the_morning_has_its_hours_said_by_day(bedtime):
    """Bedtime leaves it to the next night, so nothing else would say it for the whole of the day."""
    two = replace(HERS, hours=2, bedtime=bedtime)
    held = [Held("a", "", "hoop", "on", at("2026-02-14T06:00"))]
    told = {n: said(held, f"2026-02-14T{n:02}:05", two) for n in range(6, 12)}
    assert [bool(told[n]) for n in (6, 7, 8, 9, 10)] == [False, False, True, True, True]
    assert {kind for one in told.values() for kind, _ in one} == {"hours"}


def test_hours_that_end_before_noon_are_of_one_night_on_both_sides_of_it():
    four = replace(HERS, hours=4, at_bedtime=False)
    held = [on("2026-02-14T07:30")]
    assert said(held, "2026-02-14T11:59", four) == said(held, "2026-02-14T12:01", four) == [("hours", NIGHT)]


def test_a_bedtime_that_does_not_exist_is_taken_with_the_offset_before_the_gap():
    """RFC 5545, section 3.3.5: 01:30 of 29 March 2026 in London is half past two by the new time."""
    gap = replace(HERS, bedtime=time(1, 30))
    (one,) = reminders([on("2026-03-28T20:00")], at("2026-03-29T01:30"), gap)
    assert (one.at, one.night) == (at("2026-03-29T01:30"), date(2026, 3, 28))
    assert said([on("2026-03-28T20:00")], "2026-03-29T01:29", gap) == []


def test_of_a_bedtime_that_comes_twice_the_first_counts():
    """The same: 01:30 of 25 October 2026 in London is 00:30 UTC, then 01:30 UTC; one night, one name."""
    twice = replace(HERS, bedtime=time(1, 30))
    held = [on("2026-10-24T19:00")]
    assert said(held, "2026-10-25T00:29", twice) == []
    (first,), (second,) = (reminders(held, at(f"2026-10-25T{m}"), twice) for m in ("00:30", "01:30"))
    assert first.at == second.at == at("2026-10-25T00:30")
    assert first.night == second.night == date(2026, 10, 24)


def test_flown_east_past_bedtime_she_is_told_the_next_evening():
    tokyo = replace(HERS, zone=ZoneInfo("Asia/Tokyo"))
    held = [on("2026-02-13T09:00")]
    assert said(held, "2026-02-13T21:00", tokyo) == []  # six in the morning there
    assert said(held, "2026-02-14T13:30", tokyo) == [("bedtime", date(2026, 2, 14))]


def test_flown_west_the_same_evening_has_the_same_name():
    york = replace(HERS, zone=ZoneInfo("America/New_York"))
    assert said([on()], "2026-02-13T22:30") == [("bedtime", NIGHT)]
    assert said([on()], "2026-02-14T03:30", york) == [("bedtime", NIGHT)]


moments = st.datetimes(datetime(1990, 1, 1), datetime(2037, 1, 1)).map(lambda m: m.replace(tzinfo=UTC))
bedtimes = st.times().map(lambda t: t.replace(second=0, microsecond=0))
zones = st.sampled_from(ZONES).map(ZoneInfo)


@given(st.dates(date(1990, 1, 1), date(2036, 1, 1)), bedtimes, zones)
def test_every_bedtime_is_of_the_night_it_is_asked_of(night, bedtime, zone):
    """Whatever the clocks do: told from bedtime on, under that night's name and no other."""
    begin, noon = span(night, bedtime, zone)
    choices = Choices(bedtime, zone)
    held = [Held("a", "", "hoop", "on", begin - timedelta(hours=2))]
    if begin >= noon:  # the clocks skipped that night
        return
    last = min(noon, begin + LATE) - timedelta(seconds=1)
    for moment in (begin, last):
        (one,) = reminders(held, moment, choices)
        assert (one.night, one.at) == (night_of(begin, zone), begin)
        assert one.until == min(noon, begin + LATE)
    assert reminders(held, begin - timedelta(seconds=1), choices) in ([], reminders(held, begin, choices))


@given(moments, bedtimes, zones)
def test_the_next_bedtime_is_never_over_and_at_most_three_days_away(moment, bedtime, zone):
    night, begin = next_bedtime(moment, Choices(bedtime, zone))
    assert span(night, bedtime, zone)[0] == begin
    assert moment < span(night, bedtime, zone)[1]
    assert begin < moment + timedelta(days=3)
