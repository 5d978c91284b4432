"""Lengths in words: what is cut as on a tape, the rest in decimals."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from webapp.cloth import lengths
from webapp.cloth.sizing import Cloth, finished


@pytest.mark.parametrize(
    ("mm", "said"),
    [(25.4, "1"), (6.35, "1/4"), (400.05, "15 3/4"), (317.5, "12 1/2"), (457.2, "18"), (0, "0")],
)
def test_a_cut_is_written_in_quarters(mm, said):
    assert lengths.quarters(mm) == said


# 42 stitches on 14, 16 and 18: 3, 2.63 and 2.33 in [stitchedmodern.com (fabric count)]
@pytest.mark.parametrize(("count", "said"), [(14, "3"), (16, "2.63"), (18, "2.33")])
def test_what_is_not_cut_is_written_to_a_hundredth(count, said):
    assert lengths.inches(42 * 25.4 / count) == said


def test_centimetres_are_written_to_a_tenth():
    assert [lengths.centimetres(mm) for mm in (222.25, 406.4, 400, 0.4)] == ["22.2", "40.6", "40", "0"]


def test_thousands_stand_apart():
    assert lengths.inches(1234.25 * 25.4) == "1,234.25"
    assert lengths.centimetres(12_345_678) == "1,234,567.8"
    assert lengths.quarters(1000.25 * 25.4) == "1,000 1/4"


def test_a_side_that_is_there_is_not_called_nothing():
    """One stitch on 100 to the inch is 0.254 mm; in inches that is a hundredth (by hand)."""
    assert lengths.both(0.254, 2540, "cm") == ("under 0.1 × 254 cm", "0.01 × 100 in")
    assert lengths.area(0.1, 25.4, "in") == "under 0.01 × 1 in"
    assert lengths.area(0, 25.4, "in") == "0 × 1 in"


def test_both_units_are_written_her_own_first():
    assert lengths.both(406.4, 457.2, "in", cut=True) == ("16 × 18 in", "40.6 × 45.7 cm")
    assert lengths.both(405, 455, "cm", cut=True) == ("40.5 × 45.5 cm", "15.94 × 17.91 in")
    assert lengths.both(222.25, 166.624, "in") == ("8.75 × 6.56 in", "22.2 × 16.7 cm")


@given(st.integers(0, 4000))
def test_every_quarter_is_read_back_as_it_was_written(quarters):
    whole, _, part = lengths.quarters(quarters * 6.35).replace(",", "").rpartition(" ")
    assert Fraction(part) + int(whole or 0) == Fraction(quarters, 4)


@given(st.integers(1, 100), st.integers(1, 100))
def test_a_design_of_whole_inches_is_said_to_be_whole_inches(inches, count):
    """So many times the count are so many inches, whatever arithmetic loses."""
    assert lengths.area(*finished(Cloth(count, count), inches * count, count), "in") == f"{inches} × 1 in"


@given(st.integers(1, 10_000), st.integers(1, 10_000), st.sampled_from([6.25, 8, 14, 32, 64, 80]))
def test_a_half_is_rounded_up(width, height, count):
    """Held against exact fractions, on counts on which a design often ends at half a hundredth."""
    exact = [Fraction(side) / Fraction(count) * 100 for side in (width, height)]
    said = [f"{int(side + Fraction(1, 2)) / 100:,.2f}".rstrip("0").rstrip(".") for side in exact]
    assert lengths.area(*finished(Cloth(count, count), width, height), "in") == f"{said[0]} × {said[1]} in"
