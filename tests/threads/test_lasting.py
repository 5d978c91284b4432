"""How far the thread at hand reaches: cautious where it must be sure, hopeful where it may be."""

from datetime import UTC, datetime, timedelta

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from tests.threads.lines import COTTON, KINDS, ON_14, TWO
from webapp.threads import lasting
from webapp.threads.estimate import Counts, Range, estimate
from webapp.threads.lasting import Kept, Lasting, Said, User

BEGIN = datetime(2026, 2, 3, 20, tzinfo=UTC)


def day(n):
    return BEGIN + timedelta(days=n)


def user(who="a", each=(3, 4, 5), left=1000.0, others=0.0, spent=0, since=(0.0,)):
    return User(who, Range(*each), left, others, spent, since)


def test_a_later_reading_holds_over_what_was_counted_before_it():
    kept = [Kept(day(0), day(0), 8000), Kept(day(1), day(1), 4000)]
    assert lasting.said(kept, [Said(day(2), 2500)]) == [Said(day(2), 2500)]


def test_what_was_kept_after_a_reading_comes_to_it():
    kept = [Kept(day(0), day(0), 8000), Kept(day(3), day(3), 4000)]
    assert lasting.said(kept, [Said(day(2), 2500)]) == [Said(day(2), 2500), Said(day(3), 4000)]


def test_a_stash_counted_again_holds_over_an_earlier_reading():
    kept = [Kept(day(0), day(3), 8000)]
    assert lasting.said(kept, [Said(day(2), 2500)]) == [Said(day(3), 8000)]


def test_of_readings_the_latest_holds():
    assert lasting.said([], [Said(day(2), 2500), Said(day(1), 9000)]) == [Said(day(2), 2500)]


def test_what_was_spent_since_is_taken_off_at_the_most_and_at_the_least_it_can_be():
    amounts = [Said(day(0), 1000)]
    assert lasting.at_hand(amounts, [user(since=(100.0,))]) == (1000 - 500, 1000 - 300)


def test_more_than_there_was_cannot_have_been_spent_of_it():
    """What came later is not eaten by a count that was too low."""
    amounts = [Said(day(0), 100), Said(day(5), 1000)]
    assert lasting.at_hand(amounts, [user(since=(80.0, 10.0))]) == (1000 - 50, 1000 - 30)


def test_it_reaches_as_many_crosses_as_a_cross_takes_of_it():
    found = lasting.lasting((1000, 1000), user(spent=400))
    assert found.crosses == (400 + 1000 // 5, 400 + 1000 // 3)
    assert found.needs == (3000, 5000)
    assert found.verdict == "not"


def test_other_stitches_of_a_line_have_their_thread_set_aside():
    """200 crosses' worth of backstitch is still to come of the same thread."""
    assert lasting.lasting((2000, 2000), user(left=1200, others=200)).crosses == (400 - 200, 666 - 200)


@pytest.mark.parametrize(
    ("has", "verdict"), [(5000, "surely"), (4999, "perhaps"), (3000, "perhaps"), (2999, "not")]
)
def test_it_is_sure_perhaps_or_not(has, verdict):
    assert lasting.lasting((has, has), user()).verdict == verdict


def test_a_blend_reaches_as_far_as_its_shortest_part():
    long = Lasting((9, 9), (1, 2), (900, 950), "surely")
    short = Lasting((1, 2), (3, 4), (300, 980), "not")
    found = lasting.shortest([long, short])
    assert (found.verdict, found.crosses) == ("not", (300, 950))
    assert lasting.shortest([long, None]) is None, "of a part nothing is known of"


def test_a_thread_of_several_lines_is_shared_by_what_each_may_need():
    shares = lasting.shared((4000, 4000), [user("a", left=600), user("b", left=200)])
    assert shares["a"].has == pytest.approx((3000, 3000))
    assert shares["b"].has == pytest.approx((1000, 1000))
    assert {one.verdict for one in shares.values()} == {"surely"}


def test_a_line_with_no_claim_leaves_the_thread_to_the_rest():
    shares = lasting.shared((5000, 5000), [user("a"), user("b", left=0.0)])
    assert shares["a"].has == (5000, 5000)


def test_what_is_short_is_bought_whole_and_for_all_that_share():
    users = [user("a", left=2000), user("b", left=2000)]
    assert lasting.short((11_000, 12_000), users) == 2 * 2000 * 5 - 11_000
    assert lasting.units(9000, COTTON) == 2
    assert lasting.units(60, KINDS["beads"]) == 60


def test_stitches_are_worth_the_crosses_their_thread_comes_to():
    """A half cross is half a cross, and two quarters with their way behind it are no more than one."""
    found = lasting.worth(Counts(full=100, half=100), ON_14, TWO)
    assert found["cross"] == 100
    assert found["part"] == pytest.approx(50, rel=0.15)
    assert lasting.worth(Counts(beads=120, back=9), ON_14, TWO, "bead") == {
        "cross": 0,
        "part": 0,
        "back": 0,
        "knot": 120,
    }


def test_what_is_laid_is_not_still_to_come():
    found = lasting.still(Counts(full=200, half=10, quarter=10), {"cross": 150, "part": 30})
    assert found == {"cross": 0.25, "part": 0.0, "back": 0.0, "knot": 0.0}


ranges = st.tuples(st.floats(0.5, 20), st.floats(0, 5), st.floats(0, 5)).map(
    lambda t: Range(t[0], t[0] + t[1], t[0] + t[1] + t[2])
)
lefts = st.floats(0, 20_000)
users = st.lists(
    st.builds(lambda each, left, part: (each, left, left * part), ranges, lefts, st.floats(0, 1)),
    min_size=1,
    max_size=5,
).map(lambda some: [User(n, each, left, others, 0, (0.0,)) for n, (each, left, others) in enumerate(some)])


@given(users, st.floats(0, 1e6), st.floats(0, 1e6))
def test_shares_are_no_more_than_there_is_and_all_are_sure_or_none(all_users, sure, more):
    shares = lasting.shared((sure, sure + more), all_users)
    assert sum(one.has[0] for one in shares.values()) <= sure * (1 + 1e-9)
    whole = sum(u.left * u.each.high for u in all_users)
    assume(abs(whole - sure) > 1e-3)
    claiming = [shares[u.who] for u in all_users if u.left * u.each.high > 1e-3]
    assert {one.verdict == "surely" for one in claiming} <= {whole <= sure}


@given(users, st.floats(0, 1e6), st.floats(0, 1e6), st.floats(0, 1e5))
def test_more_thread_never_reaches_less_far(all_users, sure, more, added):
    few = lasting.shared((sure, sure + more), all_users)
    many = lasting.shared((sure + added, sure + more + added), all_users)
    for who, one in few.items():
        assert many[who].crosses[0] >= one.crosses[0]
        assert many[who].crosses[1] >= one.crosses[1]
        assert one.crosses[0] <= one.crosses[1]


@given(st.integers(1, 3000), st.floats(0, 30_000), st.data())
def test_stitching_on_does_not_move_how_far_it_surely_reaches(full, had, data):
    """One line alone: what was spent is taken off its thread as it is off its crosses."""
    takes = estimate(ON_14, Counts(full=full), TWO, COTTON).each
    each = Range(*(mm * 2 / 6 for mm in takes))
    at_first = lasting.lasting((had, had), User("a", each, float(full), 0.0, 0, (0.0,)))
    assume(at_first.crosses[0] > 0)
    laid = data.draw(st.integers(0, min(full, at_first.crosses[0])))
    now = User("a", each, float(full - laid), 0.0, laid, (float(laid),))
    later = lasting.lasting(lasting.at_hand([Said(day(0), had)], [now]), now)
    assert abs(later.crosses[0] - at_first.crosses[0]) <= 1
