"""A sitting left running ends where its own taps end, whatever is tapped later at that project."""

import re
from uuid import uuid4

import pytest

WEEK = "/hours/sittings?week=2026-W07"


@pytest.fixture
def begin(lay):
    """Begin a sitting with taps at the minutes given; gives its id."""

    def begin(client, project, day, *minutes, at="20:00"):
        first = {"id": str(uuid4()), "kind": "begin", "at": f"{day}T{at}:00.000Z"}
        return lay(client, project, first, *(tap(f"{day}T{minute}") for minute in minutes))[0]

    return begin


def tap(at):
    return {"kind": "stitches", "row": 1, "by": 10, "at": f"{at}:00.000Z"}


def by_day(week):
    return {one["date"]: one["seconds"] / 60 for one in week["days"] if one["seconds"]}


@pytest.fixture
def monday(alice, lanterns, begin):
    """A sitting begun on Monday at 20:00 and left running, with taps up to 20:55."""
    return begin(alice, lanterns, "2026-02-09", "20:20", "20:40", "20:55")


def test_what_is_offered_as_the_end_of_one_tapped_within_a_minute_comes_after_its_beginning(
    alice, lanterns, lay
):
    lay(
        alice,
        lanterns,
        {"kind": "begin", "at": "2026-02-13T18:00:20.000Z"},
        {"kind": "stitches", "row": 1, "by": 10, "at": "2026-02-13T18:00:40.000Z"},
    )
    page = alice.get(WEEK).text
    begin, end = (re.search(f'name="{name}"[^>]*value="([^"]+)"', page)[1] for name in ("begin", "end"))
    assert begin == "2026-02-13T18:00"
    assert begin < end <= "2026-02-13T22:00"


def test_left_on_monday_and_stitched_again_on_thursday_it_swallows_no_days(
    alice, lanterns, monday, begin, lay, figures
):
    thursday = begin(alice, lanterns, "2026-02-12", "20:10", "20:30")
    lay(alice, lanterns, {"kind": "end", "sitting": thursday, "at": "2026-02-12T21:00:00.000Z"})
    week = figures(alice)
    assert by_day(week) == {"2026-02-09": 175, "2026-02-12": 60}
    assert (week["sittings"], week["longest_sitting_seconds"]) == (2, 175 * 60)
    page = alice.get(WEEK).text
    assert "20:00, left running" in page
    assert 'value="2026-02-09T21:15"' in page  # 20:55, and twenty minutes from tap to tap
    assert 'value="2026-02-12T20:45"' not in page


def test_taps_without_a_sitting_of_their_own_do_not_lengthen_one_that_was_left(
    alice, lanterns, monday, lay, figures
):
    lay(alice, lanterns, tap("2026-02-12T20:10"), tap("2026-02-12T20:30"))
    assert by_day(figures(alice)) == {"2026-02-09": 175}


def test_a_stitch_dated_ahead_does_not_keep_it_counting(alice, lanterns, monday, lay, figures):
    lay(alice, lanterns, tap("2027-03-20T20:00"))
    assert by_day(figures(alice)) == {"2026-02-09": 175}
    assert "left running since 20:00 on Mon 9 February. It counts to 22:55" in alice.get("/hours").text


def test_taps_after_the_next_sitting_began_are_that_ones(alice, lanterns, monday, begin, lay, figures):
    later = begin(alice, lanterns, "2026-02-09", "22:00", "23:00", at="21:30")
    lay(alice, lanterns, {"kind": "end", "sitting": later, "at": "2026-02-09T23:10:00.000Z"})
    assert by_day(figures(alice)) == {"2026-02-09": 190}
    assert 'value="2026-02-09T21:12"' in alice.get(WEEK).text  # 20:55, and the middle of 15 and 20 minutes


def test_a_beginning_taken_back_bounds_nothing(alice, lanterns, monday, begin, lay, figures):
    later = begin(alice, lanterns, "2026-02-09", "22:00", at="21:30")
    lay(alice, lanterns, {"kind": "undo", "entry": later, "at": "2026-02-09T22:01:00.000Z"})
    assert by_day(figures(alice)) == {"2026-02-09": 240}


def test_a_long_evening_is_followed_from_tap_to_tap(alice, lanterns, begin, figures):
    taps = [f"{hour:02}:{minute}" for hour in range(8, 21) for minute in (10, 40)]
    begin(alice, lanterns, "2026-02-09", *taps, at="08:00")
    assert by_day(figures(alice)) == {"2026-02-09": 880}


def test_pauses_of_two_hours_and_no_more_are_bridged(alice, lanterns, begin, figures):
    begin(alice, lanterns, "2026-02-09", "12:00", "14:00", "16:01", at="10:00")
    assert by_day(figures(alice)) == {"2026-02-09": 360}


def test_what_was_tapped_at_another_project_lengthens_nothing(
    alice, new_project, lanterns, monday, lay, figures
):
    lay(alice, new_project(alice, title="Quince tree"), tap("2026-02-09T22:00"))
    assert by_day(figures(alice)) == {"2026-02-09": 175}


def test_once_its_end_is_put_right_it_says_how_far_it_counted_before(alice, lanterns, monday):
    times = {"begin": "2026-02-09T20:00", "end": "2026-02-09T21:00", "week": "2026-W07"}
    alice.post(f"/hours/sittings/{lanterns}/{monday}", data={"once": str(uuid4()), **times})
    assert "It was 20:00 to 22:55" in alice.get(WEEK).text


def test_one_left_running_in_another_year_says_which(alice, lanterns, begin):
    begin(alice, lanterns, "2025-01-02", "20:20")
    page = alice.get("/hours").text
    assert "left running since 20:00 on Thu 2 January 2025. It counts to 22:20 on Thu 2 January 2025" in page


def test_one_over_the_turn_of_the_year_names_the_year_it_ended_in(alice, lanterns, sit):
    sit(alice, lanterns, "2025-12-31T23:00", "2026-01-01T01:00")
    assert "23:00 to 01:00 on Thu 1 January 2026" in alice.get("/hours/sittings?week=2026-W01").text
