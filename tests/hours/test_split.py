from datetime import UTC, date, datetime, timedelta
from itertools import pairwise
from uuid import UUID
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st

from webapp.hours.split import Stretch, cut, joins, laid_out, length, stretch
from webapp.hours.week import week_from
from webapp.journal.moments import EARLIEST, LATEST

LANTERNS, QUINCE = UUID(int=1), UUID(int=2)
LONDON = ZoneInfo("Europe/London")
WEEK = week_from(date(2026, 3, 23), LONDON)  # the clocks go forward on its Sunday


def at(text: str) -> datetime:
    return datetime.fromisoformat(text).replace(tzinfo=UTC)


def hm(hours: int, minutes: int = 0) -> timedelta:
    return timedelta(hours=hours, minutes=minutes)


def by_day(*stretches: Stretch) -> dict[int, timedelta]:
    sums: dict[int, timedelta] = {}
    for which, _, time in cut(laid_out(stretches), WEEK.days):
        sums[which] = sums.get(which, timedelta()) + time
    return sums


def test_a_sitting_over_midnight_belongs_to_both_days():
    assert by_day(Stretch(LANTERNS, at("2026-03-24T22:40"), at("2026-03-25T00:25"))) == {
        1: hm(1, 20),
        2: hm(0, 25),
    }


def test_a_sitting_through_the_lost_hour_is_as_long_as_it_was():
    # 23:30 to 03:30 by the wall is three hours, as 01:00 to 02:00 was skipped
    night = Stretch(LANTERNS, at("2026-03-28T23:30"), at("2026-03-29T02:30"))
    assert by_day(night) == {5: hm(0, 30), 6: hm(2, 30)}


def test_the_week_ends_at_her_midnight_not_at_utc():
    late = Stretch(LANTERNS, at("2026-03-29T22:00"), at("2026-03-29T23:30"))  # 23:00 to 00:30 summer time
    assert by_day(late) == {6: hm(1)}


def test_two_phones_at_once_are_one_stitcher():
    phone = Stretch(LANTERNS, at("2026-03-24T19:00"), at("2026-03-24T20:00"))
    tablet = Stretch(LANTERNS, at("2026-03-24T19:30"), at("2026-03-24T20:15"))
    assert by_day(phone, tablet, phone) == {1: hm(1, 15)}


def test_a_moment_at_two_projects_is_at_the_one_she_turned_to():
    long = Stretch(LANTERNS, at("2026-03-24T19:00"), at("2026-03-24T22:00"))
    short = Stretch(QUINCE, at("2026-03-24T20:00"), at("2026-03-24T21:00"))
    pieces = laid_out([short, long])
    assert [(p.project, p.begin.hour, p.end.hour) for p in pieces] == [
        (LANTERNS, 19, 20),
        (QUINCE, 20, 21),
        (LANTERNS, 21, 22),
    ]


def test_one_still_open_counts_up_to_now():
    open_one = stretch(LANTERNS, at("2026-03-24T19:00"), None, at("2026-03-24T20:10"), at("2026-03-24T20:12"))
    assert open_one.length == hm(1, 12)


def test_one_left_running_stops_two_hours_after_its_last_stitch():
    begin, now = at("2026-03-24T19:00"), at("2026-03-26T08:00")
    assert stretch(LANTERNS, begin, None, at("2026-03-24T20:10"), now).length == hm(3, 10)
    assert stretch(LANTERNS, begin, None, None, now).length == hm(2)


def test_one_whose_last_stitch_lies_at_the_end_of_time_counts_up_to_now():
    now = at("2026-03-25T08:00")
    for begin in (EARLIEST, at("2026-03-24T19:00")):
        assert stretch(LANTERNS, begin, None, LATEST, now).end == now
    assert stretch(LANTERNS, LATEST, None, None, now).length == timedelta()


@pytest.mark.parametrize("end", ["2026-03-24T18:00", None])
def test_one_that_ends_before_it_begins_counts_nothing(end):
    now = at("2026-03-24T18:30")
    assert stretch(LANTERNS, at("2026-03-24T19:00"), end and at(end), None, now).length == timedelta()


@pytest.mark.parametrize(("minutes", "joined"), [(0, True), (29, True), (30, False), (-10, True)])
def test_a_pause_under_half_an_hour_is_part_of_the_sitting(minutes, joined):
    first = Stretch(LANTERNS, at("2026-03-24T19:00"), at("2026-03-24T20:00"))
    begin = first.end + timedelta(minutes=minutes)
    assert joins(first, Stretch(LANTERNS, begin, begin + hm(1))) == joined
    assert not joins(first, Stretch(QUINCE, begin, begin + hm(1)))


moments = st.datetimes(datetime(2026, 3, 20), datetime(2026, 4, 2)).map(lambda m: m.replace(tzinfo=UTC))
stretches = st.builds(
    lambda project, begin, span: Stretch(project, begin, begin + span),
    st.sampled_from([LANTERNS, QUINCE, UUID(int=3)]),
    moments,
    st.timedeltas(timedelta(), timedelta(days=2)),
)


def union(some: list[Stretch]) -> timedelta:
    """Measure a union the plain way: walk the sorted intervals, remembering how far it is covered."""
    covered, total = None, timedelta()
    for begin, end in sorted((s.begin, s.end) for s in some):
        begin = begin if covered is None else max(begin, covered)
        total += max(end - begin, timedelta())
        covered = end if covered is None else max(covered, end)
    return total


@given(st.lists(stretches, max_size=12))
def test_no_second_is_lost_or_counted_twice(some):
    pieces = laid_out(some)
    assert sum((p.length for p in pieces), timedelta()) == union(some)
    assert all(a.end <= b.begin for a, b in pairwise(pieces))


@given(st.lists(stretches, max_size=12))
def test_the_days_add_up_to_the_week(some):
    clipped = [
        Stretch(s.project, max(s.begin, WEEK.begin), min(s.end, WEEK.end))
        for s in some
        if s.begin < WEEK.end and s.end > WEEK.begin
    ]
    assert sum(by_day(*some).values(), timedelta()) == union(clipped)
    assert length(laid_out(some), WEEK.begin, WEEK.end) == union(clipped)


@given(st.lists(stretches, max_size=12), st.randoms())
def test_the_order_they_come_in_changes_nothing(some, random):
    shuffled = random.sample(some, len(some))
    assert list(cut(laid_out(some), WEEK.days)) == list(cut(laid_out(shuffled), WEEK.days))


@given(st.lists(stretches, max_size=12))
def test_no_day_is_longer_than_itself(some):
    assert all(time <= WEEK.days[which].end - WEEK.days[which].begin for which, time in by_day(*some).items())


@given(st.lists(stretches, max_size=8), moments)
def test_each_moment_is_at_the_sitting_begun_latest(some, moment):
    at_it = [s for s in some if s.begin <= moment < s.end]
    here = [p.project for p in laid_out(some) if p.begin <= moment < p.end]
    latest = max((s.begin for s in at_it), default=None)
    assert len(here) == bool(at_it)
    assert not here or here[0] in {s.project for s in at_it if s.begin == latest}
