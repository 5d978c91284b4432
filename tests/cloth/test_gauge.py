"""The measurement and its error, against the guide it follows and the facts of the trade."""

from math import gamma, pi, sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from webapp.cloth.gauge import INCH, STUDENT, Reading, combine, measure

SIXTEENTH = INCH / 16


def of(counted: float, length: float, division: float = 1.0, **how) -> Reading:
    return Reading(counted, length, division, **how)


# JCGM 100:2008, H.1.2 to H.1.6 (the end gauge), its figures recalled, not seen: components in nm with
# their degrees of freedom combine to 32 nm (31.7 unrounded) at 16.7 degrees.
def test_uncertainties_combine_as_in_the_guides_end_gauge():
    u, freedom = combine([(25.0, 18.0), (9.7, 25.6), (2.9, 50.0), (16.6, 2.0)])
    assert u == pytest.approx(31.7, abs=0.05)
    assert freedom == pytest.approx(16.7, abs=0.1)


# JCGM 100:2008, 4.3.7 and 5.1.2, by hand: thirty-seconds of an inch at both ends, and of squares half of one
# either way at both ends (3 in 4), or up to one left out at the far end (1 in 4), half a square in the mean.
def test_one_reading_has_the_guides_uncertainty():
    measured = measure([of(28, 2 * INCH, SIXTEENTH)])
    part = sqrt(3 / 4 * 2 * 0.5**2 / 3 + 1 / 4 * 0.5**2 / 3 + 3 / 16 * 0.5**2) / 2
    tape = 14 / 2 * (1 / 32) / sqrt(3) * sqrt(2)
    assert measured.count == pytest.approx(14)
    assert (measured.part, measured.tape) == (pytest.approx(part), pytest.approx(tape))
    assert measured.uncertainty == pytest.approx(sqrt(part**2 + tape**2))
    assert measured.short == pytest.approx(0.5 / 4 / 2)
    assert measured.high - measured.count - measured.short == pytest.approx(1.96 * measured.uncertainty)
    assert measured.count + measured.short - measured.low == pytest.approx(1.96 * measured.uncertainty)


# JCGM 100:2008, 4.2.3: the standard deviation of the mean, of five counts in 10 cm.
def test_the_spread_of_places_is_the_deviation_of_their_mean():
    counts = (54, 55, 56, 55, 57)
    mean = sum(counts) / 5
    deviation = sqrt(sum((n - mean) ** 2 for n in counts) / 4)
    measured = measure([of(n, 100) for n in counts])
    assert measured.spread == pytest.approx(deviation / sqrt(5) * 0.254)
    assert measured.places == 5


def density(t: float, freedom: float) -> float:
    return (
        gamma((freedom + 1) / 2)
        / (sqrt(freedom * pi) * gamma(freedom / 2))
        * (1 + t * t / freedom) ** (-(freedom + 1) / 2)
    )


# Student's distribution by its definition (JCGM 100:2008, G.3), integrated here by Simpson's rule.
@pytest.mark.parametrize(("freedom", "factor", "sure"), STUDENT[1:-1])
def test_the_factors_are_students(freedom, factor, sure):
    for t, share in ((factor, 0.95), (sure, 0.999)):
        step = t / 2000
        heights = [density(i * step, freedom) for i in range(2001)]
        within = (
            2 * step / 3 * (heights[0] + heights[-1] + 4 * sum(heights[1:-1:2]) + 2 * sum(heights[2:-1:2]))
        )
        assert within == pytest.approx(share, abs=2e-4)


# Derived: half a square of error on 14 count is 3.6 % in one inch and 0.9 % in 10 cm.
@pytest.mark.parametrize(("length", "percent"), [(INCH, 3.6), (100, 0.9)])
def test_half_a_square_weighs_less_the_further_she_counts(length, percent):
    squares = 14 * length / INCH
    right, wrong = measure([of(squares, length)]), measure([of(squares + 0.5, length)])
    assert (wrong.count / right.count - 1) * 100 == pytest.approx(percent, abs=0.05)


def test_no_place_is_counted_on_for_more_than_it_shows():
    alone, thrice = measure([of(28, 2 * INCH, SIXTEENTH)]), measure([of(28, 2 * INCH, SIXTEENTH)] * 3)
    assert thrice.uncertainty < alone.uncertainty
    assert thrice.uncertainty > alone.uncertainty / sqrt(3)  # counts begun alike err alike


def test_pins_and_halves_leave_less_of_a_square_unsure():
    whole, half, pinned = (
        measure([of(n, 100, pins=pins)]) for n, pins in ((55, False), (54.5, False), (55, True))
    )
    assert whole.part > 2 * half.part == pytest.approx(4 * pinned.part)
    assert whole.short > half.short == pinned.short == 0  # who gives halves, or sets pins, leaves nothing out


def test_places_alike_to_the_last_square_have_no_spread():
    for counted, length in ((28, 2 * INCH), (55, 100.0), (33, 1.3 * INCH)):
        measured = measure([of(counted, length, SIXTEENTH)] * 3)
        assert (measured.spread, measured.freedom, measured.factor) == (0, None, 1.96)


lengths = st.floats(13, 1000)
counts = st.integers(4, 2000)


@given(counts, lengths, st.sampled_from([SIXTEENTH, INCH / 8, 1.0]))
def test_the_interval_holds_its_count_and_lies_in_the_surer_one(counted, length, division):
    measured = measure([of(counted, length, division)])
    assert measured.surely_low < measured.low < measured.count < measured.high < measured.surely_high


@given(counts, lengths, st.floats(1.01, 4))
def test_further_is_never_less_sure(counted, length, times):
    near, far = measure([of(counted, length)]), measure([of(counted * times, length * times)])
    assert far.uncertainty < near.uncertainty


@given(st.lists(st.tuples(counts, lengths), min_size=1, max_size=6), st.randoms())
def test_the_order_of_places_does_not_matter(places, random):
    shuffled = random.sample(places, len(places))
    one, other = (measure([of(*place) for place in some]) for some in (places, shuffled))
    assert one.count == pytest.approx(other.count)
    assert one.uncertainty == pytest.approx(other.uncertainty)
