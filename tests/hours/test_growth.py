from datetime import date, timedelta
from itertools import pairwise

from hypothesis import given
from hypothesis import strategies as st

from webapp.hours.growth import chosen, grown, places, weeks_from

MONDAY = date(2026, 2, 2)
days = st.integers(0, 200).map(lambda n: MONDAY + timedelta(days=n))
done = st.dictionaries(st.integers(1, 98).map(str) | st.just("3.2"), days, max_size=30)


HOUR = timedelta(hours=1)


def test_a_week_is_told_of_in_which_anything_was():
    weeks = weeks_from(MONDAY, date(2026, 3, 10))
    closed = {"1": date(2026, 2, 2), "2": date(2026, 2, 8), "3": date(2026, 2, 16)}
    laid = [(date(2026, 2, 3), 50), (date(2026, 2, 8), 40), (date(2026, 2, 23), 7)]
    times = {date(2026, 3, 2): HOUR}
    nothing = timedelta()
    assert grown(closed, laid, times, weeks) == [
        (MONDAY, date(2026, 2, 8), {"1", "2"}, 2, 90, nothing),
        (date(2026, 2, 16), date(2026, 2, 22), {"1", "2", "3"}, 1, 0, nothing),
        (date(2026, 2, 23), date(2026, 3, 1), {"1", "2", "3"}, 0, 7, nothing),
        (date(2026, 3, 2), date(2026, 3, 8), {"1", "2", "3"}, 0, 0, HOUR),
    ]


@given(done, st.lists(st.tuples(days, st.integers(1, 99)), max_size=30))
def test_the_weeks_add_up_to_all_of_it(closed, laid):
    weeks = grown(closed, laid, {}, weeks_from(MONDAY, MONDAY + timedelta(days=200)))
    assert sum(one.stitches for one in weeks) == sum(some for _, some in laid)
    assert sum(one.closed for one in weeks) == len(closed)


def test_weeks_are_those_from_the_first_to_the_one_that_holds_the_last():
    assert weeks_from(MONDAY, MONDAY) == [MONDAY]
    assert weeks_from(MONDAY, date(2026, 2, 8)) == [MONDAY]
    assert weeks_from(MONDAY, date(2026, 2, 9)) == [MONDAY, date(2026, 2, 9)]


@given(done)
def test_it_only_grows_and_ends_with_all_of_it(closed):
    stages = grown(closed, [], {}, weeks_from(MONDAY, MONDAY + timedelta(days=200)))
    for before, after in pairwise(stages):
        assert before.done < after.done
    assert (stages[-1].done if stages else frozenset()) == closed.keys()


@given(done, st.integers(1, 8))
def test_of_many_some_are_chosen_the_last_among_them(closed, most):
    stages = grown(closed, [], {}, weeks_from(MONDAY, MONDAY + timedelta(days=200)))
    some = chosen(stages, most)
    assert len(some) == min(most, len(stages))
    assert some == sorted(some, key=lambda one: one.first)
    assert some[-1:] == stages[-1:]


def test_rows_and_blocks_are_told_apart():
    done = {"stitches": 0, "done": True}
    assert places(["7", "3.2"]) == ({"7": done}, {"3.2": done})
