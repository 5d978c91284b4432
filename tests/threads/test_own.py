"""Her own figure: readings against the drawing, weighed on the logarithm."""

from datetime import date
from itertools import permutations
from math import log, sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.threads.lines import COTTON, ON_14, TWO
from webapp.threads.estimate import Counts, Own, estimate
from webapp.threads.own import CHANGE, LENGTH, PRIOR, Reading, own, ratio

DAY = date(2026, 2, 3)
LINE = estimate(ON_14, Counts(full=3000), TWO, COTTON)


def length(stitches, mm=457.2, day=DAY, **more):
    return Reading("length", stitches, mm, 2, "rows", day, **more)


def skein(stitches, mm=8000.0, day=DAY, **more):
    return Reading("skein", stitches, mm, 2, "rows", day, **more)


def test_no_reading_is_no_figure():
    assert own([], ON_14) is None


def test_one_length_moves_the_estimate_toward_what_she_stitched():
    """The mean of what it says and of one, on the logarithm, each weighed by how much it may be off."""
    hers = own([length(30)], ON_14)
    off = LENGTH + 0.5 / 30
    weights = 1 / PRIOR**2, 1 / off**2
    assert log(hers.factor) == pytest.approx(log(ratio(length(30), ON_14)[0]) * weights[1] / sum(weights))
    assert hers.spread == pytest.approx(sqrt(1 / sum(weights) + CHANGE**2))
    assert 1 < hers.factor < ratio(length(30), ON_14)[0]
    found = estimate(ON_14, Counts(full=3000), TWO, COTTON, own=hers)
    assert found.sold.usual > LINE.sold.usual
    assert found.rests_on == "one length on 2026-02-03"
    assert LINE.rests_on == "the drawing"


@pytest.mark.parametrize("crosses", [25, 30, 40, 50])
def test_what_she_measured_lies_well_within_what_is_then_estimated(crosses):
    hers = own([length(crosses)], ON_14)
    each = estimate(ON_14, Counts(full=3000), TWO, COTTON, patches=1, own=hers).each
    assert each.low < 457.2 / crosses < each.high
    assert each.usual == pytest.approx(457.2 / crosses, rel=0.06)


def test_a_skein_that_gave_what_the_drawing_says_changes_nothing_but_the_range():
    told = estimate(ON_14, Counts(full=1500), TWO, COTTON)
    hers = own([skein(1500, told.sold.usual)], ON_14)
    assert hers.factor == pytest.approx(1)
    found = estimate(ON_14, Counts(full=3000), TWO, COTTON, own=hers)
    assert found.sold.usual == pytest.approx(LINE.sold.usual)
    assert found.sold.high < LINE.sold.high
    assert found.sold.low > LINE.sold.low


@given(st.integers(20, 60))
def test_what_a_length_gave_is_what_lengths_are_estimated_to_give(crosses):
    """Ends as they are taken: the reading alone, without what was believed before, gives its own crosses."""
    alone = Own(ratio(length(crosses), ON_14)[0], 0.05, "")
    found = estimate(ON_14, Counts(full=crosses * 1000), TWO, COTTON, patches=1, own=alone)
    assert found.lengths.usual == pytest.approx(1000, abs=1)


readings = st.one_of(
    st.builds(length, st.integers(20, 60), st.floats(400, 500)),
    st.builds(skein, st.integers(1000, 2500), st.floats(6000, 10_000)),
)


@given(st.lists(readings, min_size=1, max_size=3))
def test_every_reading_sharpens_and_their_order_changes_nothing(made):
    spreads = [own(made[:n], ON_14).spread for n in range(1, len(made) + 1)]
    assert spreads == sorted(spreads, reverse=True)
    assert CHANGE < spreads[-1] < sqrt(PRIOR**2 + CHANGE**2)
    factors = [own(order, ON_14).factor for order in permutations(made)]
    assert factors == pytest.approx([factors[0]] * len(factors))
    assert min(1, *(ratio(one, ON_14)[0] for one in made)) <= factors[0]
    assert factors[0] <= max(1, *(ratio(one, ON_14)[0] for one in made))


@given(readings, st.integers(1, 10))
def test_more_crosses_from_the_same_thread_are_less_thread_a_cross(reading, more):
    better = reading._replace(stitches=reading.stitches + more)
    assert ratio(better, ON_14)[0] < ratio(reading, ON_14)[0]


def test_a_skein_of_scattered_stitches_tells_less_of_her_hand():
    offs = [ratio(skein(1200, scatter=scatter), ON_14)[1] for scatter in ("together", "mixed", "scattered")]
    assert offs == sorted(offs)
    assert offs[2] > 3 * offs[0]


def test_a_loop_start_leaves_more_of_the_length_to_stitch_with():
    assert ratio(length(34, loop=True), ON_14)[0] > ratio(length(34), ON_14)[0]


@pytest.mark.parametrize(
    ("made", "said"),
    [
        ([length(34)], "one length on 2026-02-03"),
        ([length(34), length(35, day=date(2026, 2, 9))], "two lengths, the last on 2026-02-09"),
        (
            [skein(1700, day=date(2026, 3, 1)), length(34)],
            "one length and one skein, the last on 2026-03-01",
        ),
        ([length(34)] * 7, "7 lengths, the last on 2026-02-03"),
    ],
)
def test_it_says_what_it_rests_on(made, said):
    assert own(made, ON_14).rests_on == said


@pytest.mark.parametrize(
    ("reading", "sentence"),
    [
        (length(0), "how many whole crosses"),
        (length(2.5), "how many whole crosses"),
        (length(1), "so little or so much"),
        (length(5000), "so little or so much"),
        (length(34, 60.0), "working length"),
        (skein(1700, 0.0), "how much thread"),
        (skein(1700, float("nan")), "how much thread"),
        (length(34)._replace(what="weight"), "one working length"),
        (length(34)._replace(strands=0), "strands"),
        (length(34)._replace(method="x"), "rows out and back"),
    ],
)
def test_a_reading_that_cannot_be_meant_is_refused(reading, sentence):
    with pytest.raises(ValueError, match=sentence):
        own([reading], ON_14)
