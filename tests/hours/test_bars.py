from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from webapp.hours import bars, words

times = st.timedeltas(timedelta(), timedelta(hours=25))


def minutes(n):
    return timedelta(minutes=n)


@pytest.mark.parametrize(
    ("longest", "each"), [(0, 3), (72, 3), (73, 5), (140, 6), (241, 15), (1440, 60), (1500, 90)]
)
def test_a_thread_stands_for_so_much_that_the_tallest_band_fits(longest, each):
    assert bars.thread_minutes(minutes(longest)) == each


@given(st.lists(times, max_size=20), st.sampled_from(bars.MINUTES))
def test_a_day_has_as_many_threads_as_its_time_and_each_share_its_part(shares, each):
    counts = bars.thread_counts(shares, minutes(each))
    there = [share for share in shares if share]
    total = max(round(sum(shares, timedelta()) / minutes(each)), bool(there))
    assert sum(counts) == total
    assert sum(count > 0 for count in counts) == min(total, len(there))
    assert all(share for share, count in zip(shares, counts, strict=True) if count)
    for one, few in zip(shares, counts, strict=True):
        assert all(few <= more for other, more in zip(shares, counts, strict=True) if other > one)


def test_where_there_are_more_projects_than_threads_the_longest_are_seen():
    assert bars.thread_counts([minutes(n) for n in (4, 9, 0, 5, 12)], minutes(15)) == [0, 1, 0, 0, 1]
    assert bars.thread_counts([minutes(1), minutes(2)], minutes(15)) == [0, 1]
    assert bars.thread_counts([minutes(n) for n in (60, 15, 1)], minutes(15)) == [3, 1, 1]


@given(st.lists(st.tuples(st.integers(0, 4), st.timedeltas(minutes(0), minutes(150))), max_size=4))
def test_a_band_stands_on_the_foot_inside_its_column(shares):
    for day in (0, 6):
        band = bars.band(day, shares, minutes(30))
        xs, ys = [], []
        for one in band.floats:
            for step in one.path.split("M")[1:]:
                begin, rest = step.split(" ")
                y, run = rest.split("h")
                xs += [float(begin), float(begin) + float(run)]
                ys.append(float(y))
        assert all(day * bars.COLUMN <= x <= (day + 1) * bars.COLUMN for x in xs)
        assert all(band.top <= y <= bars.FOOT for y in ys)


def test_a_project_keeps_its_weave_from_week_to_week():
    hers = list("abcdefgh")
    assert bars.weaves_of("ca", hers) == {"a": 0, "c": 2}
    assert bars.weaves_of("c", hers) == {"c": 2}


def test_two_in_a_week_share_a_weave_only_when_all_are_taken():
    hers = list("abcdefgh")
    assert bars.weaves_of("af", hers) == {"a": 0, "f": 1}
    assert sorted(bars.weaves_of("abcdef", hers).values()) == [0, 0, 1, 2, 3, 4]


@pytest.mark.parametrize(
    ("seconds", "clock", "spoken"),
    [
        (0, "0:00", "0 min"),
        (1, "0:01", "1 min"),
        (89, "0:01", "1 min"),
        (91, "0:02", "2 min"),
        (3599, "1:00", "1 h"),
        (24600, "6:50", "6 h 50"),
        (363900, "101:05", "101 h 05"),
    ],
)
def test_time_is_said_to_the_minute(seconds, clock, spoken):
    time = timedelta(seconds=seconds)
    assert (words.clock(time), words.spoken(time)) == (clock, spoken)


@pytest.mark.parametrize(
    ("hours", "usual", "running", "said"),
    [
        (6, None, False, ""),
        (6, 5, False, "1 h more than usual"),
        (5, 6, True, "1 h less than usual by now"),
        (5.05, 5, False, "as usual"),
        (4.95, 5, True, "as usual by now"),
    ],
)
def test_a_week_is_compared_in_a_few_words(hours, usual, running, said):
    usual = None if usual is None else timedelta(hours=usual)
    assert " ".join(words.against(timedelta(hours=hours), usual, running)) == said


@pytest.mark.parametrize(
    ("first", "last", "said"),
    [
        ("2026-02-02", "2026-02-08", "2 to 8 February"),
        ("2026-01-26", "2026-02-01", "26 January to 1 February"),
        ("2025-12-29", "2026-01-04", "29 December to 4 January"),
        ("2025-02-03", "2025-02-09", "3 to 9 February 2025"),
    ],
)
def test_a_week_is_said_by_its_dates(first, last, said):
    assert words.span(date.fromisoformat(first), date.fromisoformat(last), date(2026, 2, 13)) == said
