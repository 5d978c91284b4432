"""Lengths in words: what is laid out on cloth as on a tape, what a design comes out at in decimals."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from webapp.cloth import lengths
from webapp.cloth.sizing import Cloth, finished


@pytest.mark.parametrize(
    ("inches", "said"),
    [
        *((1, "1"), (0.25, "¼"), (15.75, "15¾"), (12.5, "12½"), (18, "18"), (0, "0"), (7.875, "7⅞")),
        *((3 / 16, "3/16"), (2.1875, "2 3/16"), (1000.25, "1,000¼")),
    ],
)
def test_what_is_laid_out_is_written_as_a_tape_has_it(inches, said):
    for way in ("near", "up", "down"):
        assert lengths.tape(inches * 25.4, way) == said


def test_between_two_eighths_a_length_is_rounded_the_way_that_is_safe():
    assert [lengths.tape(30, way) for way in ("near", "up", "down")] == ["1⅛", "1¼", "1⅛"]  # 1.181 in
    assert [lengths.centimetres(425.45, way) for way in ("near", "up", "down")] == ["42.5", "42.6", "42.5"]
    assert lengths.laid_area(0.254, 25.4, "in", "up") == "⅛ × 1 in"


def test_a_cut_is_never_short_in_the_other_unit():
    """16 3/4 in is 42.545 cm, and 35 cm is 13.78 in (by hand)."""
    assert lengths.to_cut(16.75 * 25.4, 457.2, "in") == ("16¾ × 18 in", "42.6 × 45.8 cm")
    assert lengths.to_cut(350, 295, "cm") == ("35 × 29.5 cm", "13⅞ × 11⅝ in")


# 42 stitches on 14, 16 and 18: 3, 2.63 and 2.33 in [stitchedmodern.com (fabric count)]
@pytest.mark.parametrize(("count", "said"), [(14, "3"), (16, "2.63"), (18, "2.33")])
def test_what_is_not_cut_is_written_to_a_hundredth(count, said):
    assert lengths.inches(42 * 25.4 / count) == said


def test_centimetres_are_written_to_a_tenth():
    assert [lengths.centimetres(mm) for mm in (222.25, 406.4, 400, 0.4)] == ["22.2", "40.6", "40", "0"]


def test_thousands_stand_apart():
    assert lengths.inches(1234.25 * 25.4) == "1,234.25"
    assert lengths.centimetres(12_345_678) == "1,234,567.8"


def test_a_side_that_is_there_is_not_called_nothing():
    """One stitch on 100 to the inch is 0.254 mm; in inches that is a hundredth (by hand)."""
    assert lengths.both(0.254, 2540, "cm") == ("under 0.1 × 254 cm", "0.01 × 100 in")
    assert lengths.area(0.1, 25.4, "in") == "under 0.01 × 1 in"
    assert lengths.area(0, 25.4, "in") == "0 × 1 in"


def test_both_units_are_written_her_own_first():
    assert lengths.both(222.25, 166.624, "in") == ("8.75 × 6.56 in", "22.2 × 16.7 cm")


READ = {sign: part for part, sign in lengths.SIGNS.items()}


def read(text):
    """Read what a tape shows, exactly."""
    for sign, part in READ.items():
        text = text.replace(sign, f" {part}")
    whole, _, part = text.replace(",", "").strip().rpartition(" ")
    return Fraction(part) + int(whole or 0)


@given(st.integers(0, 16_000))
def test_every_sixteenth_is_read_back_as_it_was_written(sixteenths):
    assert read(lengths.tape(sixteenths * 25.4 / 16)) == Fraction(sixteenths, 16)


@given(st.integers(0, 10_000_000))
def test_what_is_to_be_cut_is_never_written_shorter_nor_what_is_left_longer(microns):
    mm, least = Fraction(microns, 1000), Fraction(1, 10**5)
    up, down = (read(lengths.tape(float(mm), way)) * Fraction(254, 10) for way in ("up", "down"))
    assert down - least <= mm <= up + least
    assert up - down <= Fraction(254, 80) + least


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
