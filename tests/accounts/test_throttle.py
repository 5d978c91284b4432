"""A bound on tries."""

from concurrent.futures import ThreadPoolExecutor
from datetime import UTC, datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from webapp.accounts.throttle import Bound, Throttle, neighbourhood

NOON = datetime(2026, 2, 3, 12, tzinfo=UTC)
MINUTE = timedelta(minutes=1)
NONE = timedelta()


def test_it_works():
    throttle, three = Throttle(15 * MINUTE), [Bound("a", 3)]
    waits = [throttle.take(three, NOON + n * MINUTE) for n in range(4)]
    assert waits == [NONE, NONE, NONE, 12 * MINUTE]
    assert throttle.take(three, NOON + 15 * MINUTE) == NONE
    assert throttle.take(three, NOON + 15 * MINUTE) == MINUTE


def test_the_tightest_bound_holds_and_the_others_are_not_used_up():
    throttle = Throttle(15 * MINUTE)
    both = [Bound("a", 1), Bound("b", 2)]
    throttle.take(both, NOON)
    assert throttle.take(both, NOON) == 15 * MINUTE
    assert throttle.take([Bound("b", 2)], NOON) == NONE
    assert throttle.take([Bound("b", 2)], NOON) == 15 * MINUTE


def test_a_try_given_back_was_none():
    throttle, one = Throttle(15 * MINUTE), [Bound("a", 1)]
    throttle.take(one, NOON)
    throttle.give_back(one)
    throttle.give_back(one)
    assert throttle.take(one, NOON) == NONE


def test_many_at_once_get_no_more_than_one_after_the_other():
    throttle, ten = Throttle(15 * MINUTE), [Bound("a", 10)]
    with ThreadPoolExecutor(8) as pool:
        waits = list(pool.map(lambda _: throttle.take(ten, NOON), range(200)))
    assert waits.count(NONE) == 10


def test_it_does_not_grow_without_end():
    throttle = Throttle(15 * MINUTE, most_keys=100)
    for n in range(1000):
        throttle.take([Bound(str(n), 1)], NOON)
    assert len(throttle._taken) == 100
    assert throttle.take([Bound("999", 1)], NOON) == 15 * MINUTE


@given(st.lists(st.integers(0, 60), max_size=60).map(sorted), st.integers(1, 5))
def test_no_stretch_ever_holds_more_than_the_bound(minutes, tries):
    throttle = Throttle(15 * MINUTE)
    taken = [m for m in minutes if throttle.take([Bound("a", tries)], NOON + m * MINUTE) == NONE]
    assert all(sum(first <= m < first + 15 for m in taken) <= tries for first in taken)


@pytest.mark.parametrize(
    ("address", "taken_as"),
    [
        ("192.0.2.7", "192.0.2.7"),
        ("2001:db8:1:2:3:4:5:6", "2001:db8:1:2::"),
        ("2001:db8:1:2::1", "2001:db8:1:2::"),
        ("::ffff:192.0.2.7", "192.0.2.7"),
        ("", "unknown"),
        (None, "unknown"),
        ("@", "unknown"),
    ],
)
def test_a_household_is_one(address, taken_as):
    assert neighbourhood(address) == taken_as
