from datetime import UTC, datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from webapp.hours.amends import before_change, latest_change, offered_end, usual_gap

EIGHT = datetime(2026, 2, 10, 20, tzinfo=UTC)
MINUTE = timedelta(minutes=1)


def entry(kind, id, at, dead=False, **more):
    return {"kind": kind, "id": id, "at": f"2026-02-10T{at}:00.000Z", **more}, dead


def amend(id, at, end="21:00", dead=False):
    return entry("amend", id, at, dead, begin="2026-02-10T20:00:00.000Z", end=f"2026-02-10T{end}:00.000Z")


BEGUN = [entry("begin", "b", "20:00"), entry("end", "e", "21:30")]
STRUCK = [entry("amend", "s", "22:05", struck=True), entry("amend", "t", "22:06", struck=True)]


@pytest.mark.parametrize(
    ("named", "ids", "end"),
    [
        (BEGUN, [], None),
        ([*BEGUN, amend("a", "22:00")], ["a"], "21:30"),
        ([*BEGUN, amend("a", "22:00"), amend("c", "22:01", "20:30")], ["c"], "21:00"),
        ([*BEGUN, amend("a", "22:00"), *STRUCK], ["t", "s"], "21:00"),
        ([*BEGUN, amend("a", "22:00"), amend("c", "22:01", "20:30", dead=True)], ["a"], "21:30"),
        ([amend("a", "22:00")], ["a"], None),  # added by hand: it was not there before
        ([amend("a", "22:00"), *STRUCK], ["t", "s"], "21:00"),
    ],
)
def test_what_was_put_right_last_and_what_it_was_before(named, ids, end):
    assert latest_change(named) == ids
    was = before_change(reversed(named))
    assert (was and was.end) == (end and f"2026-02-10T{end}:00.000Z")


def test_her_usual_gap_is_the_median_without_the_pauses_between_sittings():
    taps = [EIGHT + n * MINUTE for n in (0, 1, 2, 6, 8, 600, 602)]
    assert usual_gap(taps) == 2 * MINUTE
    assert usual_gap(taps[:1]) == usual_gap([]) == timedelta()


@given(st.lists(st.datetimes(datetime(2026, 1, 1), datetime(2026, 1, 3)), max_size=30))
def test_a_usual_gap_is_under_half_an_hour(taps):
    assert timedelta() <= usual_gap([tap.replace(tzinfo=UTC) for tap in taps]) < 30 * MINUTE


@pytest.mark.parametrize(
    ("last", "gap", "now", "offered"), [(50, 2, 200, 52), (50, 9, 55, 55), (-5, 1, 200, 0), (50, 0, 200, 50)]
)
def test_the_end_that_is_offered_lies_after_the_last_tap_and_not_to_come(last, gap, now, offered):
    found = offered_end(EIGHT, EIGHT + last * MINUTE, gap * MINUTE, EIGHT + now * MINUTE)
    assert found == EIGHT + offered * MINUTE
