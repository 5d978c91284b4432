"""Size, cut and fit, against published examples and against exact fractions."""

from fractions import Fraction
from math import ceil

import pytest
from hypothesis import given
from hypothesis import strategies as st

from webapp.cloth.sizing import STEPS, Cloth, finished, fit, largest, round_up, size, which_fit

INCH = Fraction(254, 10)
FORGIVEN = Fraction(1, 10**6)  # mm
SLIP = Fraction(1, 10**7)  # mm: more than floating point loses on any cloth here


def inches(mm: float) -> float:
    return mm / 25.4


# Each with its source: width and height in stitches, count, over, finished, margin a side, exact cut; inches.
WORKED = [
    ("rosewoodxstitch.com/pages/fabric", 140, 168, 28, 2, (10, 12), 3, (16, 18)),
    ("lizzyb.ca", 140, 140, 14, 1, (10, 10), 2.5, (15, 15)),
    ("onceinabluemoon.ca", 98, 140, 14, 1, (7, 10), 2, (11, 14)),
    ("strawberrysampler.com/faqs.html", 140, 105, 14, 1, (10, 7.5), None, None),
    # printed 6.5, a slip of rounding: 105 × 2 / 32 is 6.5625
    ("strawberrysampler.com/faqs.html", 140, 105, 32, 2, (8.75, 6.5625), None, None),
    # in inches, whatever the cloth: 84 by 112 on 14 is 6 by 8 (derived)
    ("anniescatalog.com (getting started)", 84, 112, 14, 1, (6, 8), 3, (12, 14)),
    ("stitchedmodern.com (fabric count)", 42, 42, 14, 1, (3, 3), None, None),
    ("stitchedmodern.com (fabric count)", 42, 42, 16, 1, (2.625, 2.625), None, None),  # printed 2.63
    ("stitchedmodern.com (fabric count)", 42, 42, 18, 1, (7 / 3, 7 / 3), None, None),  # printed 2.33
    # printed with 35 over two taken as 17, not 17.5; here exact
    ("marybeale.com/school/lesson1/how_to_read_a_chart.html", 67, 85, 35, 2, (134 / 35, 170 / 35), 2, None),
    ("derived from the same", 67, 85, 35, 2, (3.83, 4.86), 2, (7.83, 8.86)),
]


@pytest.mark.parametrize(("source", "width", "height", "count", "over", "comes_to", "margin", "cut"), WORKED)
def test_a_worked_example_comes_out_as_published(source, width, height, count, over, comes_to, margin, cut):
    found = size(Cloth(count, count, over), width, height, (margin or 0) * 25.4, STEPS["in"])
    printed = 0.005 if "derived" in source else 1e-9  # to the second place, or exact
    assert (inches(found.finished_width), inches(found.finished_height)) == pytest.approx(
        comes_to, abs=printed
    )
    if cut:
        assert (inches(found.exact_width), inches(found.exact_height)) == pytest.approx(cut, abs=printed)


# Derived from textile-de.techinfus.com and crossover.fadenkreuz-shop.de: 14 at 54 per 10 cm is 13.72, and
# 140 stitches come out 25.9 cm, 2 % over.
def test_cloth_of_a_name_comes_out_by_its_own_count():
    across, _down = finished(Cloth(54 * 0.254, 54 * 0.254), 140, 140)
    assert across == pytest.approx(259, abs=0.5)
    assert across / finished(Cloth(14, 14), 140, 140)[0] == pytest.approx(1.02, abs=0.001)


# In whole squares or threads: 3 in on 28 is 84 threads, 2 1/2 in on 14 is 35 squares (derived).
@pytest.mark.parametrize(
    ("cloth", "margin", "threads"),
    [(Cloth(28, 28, 2), 3, 84), (Cloth(14, 14), 2.5, 35), (Cloth(18, 18), 2, 36)],
)
def test_she_begins_so_many_threads_in(cloth, margin, threads):
    found = size(cloth, 2 * 7 * 18, 4 * 7 * 18, margin * 25.4, STEPS["in"])
    assert (found.threads_in, found.threads_down) == (threads, threads)


def test_the_middle_is_in_a_stitch_or_between_two():
    assert size(Cloth(14, 14), 141, 140, 0, STEPS["in"]).middle == (70.5, 70.0)


def test_a_cut_is_never_less_than_what_holds_it_asks():
    found = size(Cloth(14, 14), 140, 28, 63.5, STEPS["in"], 12 * 25.4)
    assert [inches(found.cut_width), inches(found.cut_height)] == pytest.approx([15, 12])
    assert [inches(found.first_in), inches(found.first_down)] == pytest.approx([2.5, 5])


def test_a_piece_is_told_which_counts_fit_it_and_which_way():
    rows = which_fit(200, 100, 50.8, 12 * 25.4, 19 * 25.4, [(14, 1), (18, 1), (25, 1), (12, 1)])
    ways = [(row.straight is not None, row.turned is not None) for row in rows]
    assert ways == [(False, True), (False, True), (True, True), (False, False)]


# Exact fractions as the reference

counts = st.one_of(st.integers(6, 46), st.integers(400, 4600).map(lambda n: n / 100))
cloths = st.builds(Cloth, counts, counts, st.sampled_from([1, 2, 3]))
stitches = st.integers(1, 2000)
margins = st.one_of(st.integers(0, 16).map(lambda n: n * 6.35), st.integers(0, 1000).map(lambda n: n / 10))
pieces = st.one_of(st.integers(2, 240).map(lambda n: n * 6.35), st.integers(100, 15000).map(lambda n: n / 10))
steps = st.sampled_from(list(STEPS.values()))


def exactly(cloth: Cloth, width: int, height: int) -> tuple[Fraction, Fraction]:
    return (
        width * cloth.over * INCH / Fraction(cloth.across),
        height * cloth.over * INCH / Fraction(cloth.down),
    )


def near(one: float, other: Fraction) -> bool:
    return abs(Fraction(one) - other) < SLIP


@given(cloths, stitches, stitches)
def test_the_finished_size_is_exact(cloth, width, height):
    across, down = exactly(cloth, width, height)
    found = finished(cloth, width, height)
    assert near(found[0], across)
    assert near(found[1], down)
    assert near(width * cloth.pitch_across, across)
    assert near(height * cloth.pitch_down, down)


@given(st.one_of(st.floats(1, 5000), st.integers(1, 800).map(lambda n: n * 6.35)), steps)
def test_a_cut_is_rounded_up_by_less_than_a_step(length, step):
    found, exact = Fraction(round_up(length, step)), Fraction(str(step))
    steps_up = ceil((Fraction(length) - FORGIVEN) / exact)
    boundary = abs((Fraction(length) - FORGIVEN) / exact - round((Fraction(length) - FORGIVEN) / exact))
    assert boundary * exact < SLIP or near(round_up(length, step), steps_up * exact)
    assert -FORGIVEN - SLIP < found - Fraction(length) < exact
    assert round_up(float(found), step) == float(found)


@given(cloths, stitches, stitches, margins, steps)
def test_the_cut_holds_design_and_margins_exactly_placed(cloth, width, height, margin, step):
    found = size(cloth, width, height, margin, step)
    across, down = exactly(cloth, width, height)
    assert near(found.exact_width, across + 2 * Fraction(margin))
    assert near(found.exact_height, down + 2 * Fraction(margin))
    for cut, exact, first in (
        (found.cut_width, across, found.first_in),
        (found.cut_height, down, found.first_down),
    ):
        assert Fraction(cut) - 2 * Fraction(margin) >= exact - FORGIVEN - SLIP
        assert Fraction(cut) - 2 * Fraction(margin) - exact < Fraction(str(step))
        assert abs(Fraction(first) - (Fraction(cut) - exact) / 2) < SLIP + FORGIVEN
    assert (
        abs(Fraction(found.threads_in) - Fraction(found.first_in) * Fraction(cloth.across) / INCH)
        <= 0.5 + SLIP
    )
    assert (
        abs(Fraction(found.threads_down) - Fraction(found.first_down) * Fraction(cloth.down) / INCH)
        <= 0.5 + SLIP
    )


@given(cloths, pieces, pieces, margins)
def test_the_largest_design_fits_and_one_stitch_more_does_not(cloth, wide, high, margin):
    most = largest(cloth, wide, high, margin)
    one_more = exactly(cloth, most[0] + 1, most[1] + 1)
    for n, more, piece, held in zip(most, one_more, (wide, high), exactly(cloth, *most), strict=True):
        assert not n or held + 2 * Fraction(margin) <= Fraction(piece) + FORGIVEN + SLIP
        assert more + 2 * Fraction(margin) > Fraction(piece) - SLIP
    if all(most):
        assert fit(cloth, *most, margin, wide, high).fits
    assert not fit(cloth, most[0] + 1, max(1, most[1]), margin, wide, high).fits
    assert not fit(cloth, max(1, most[0]), most[1] + 1, margin, wide, high).fits


@given(cloths, stitches, stitches, margins, pieces, pieces)
def test_a_fit_is_exact(cloth, width, height, margin, wide, high):
    found = fit(cloth, width, height, margin, wide, high)
    across, down = exactly(cloth, width, height)
    spare = (Fraction(wide) - across - 2 * Fraction(margin), Fraction(high) - down - 2 * Fraction(margin))
    assert near(found.spare_across, spare[0])
    assert near(found.spare_down, spare[1])
    assert near(found.margin_across, (Fraction(wide) - across) / 2)
    assert near(found.margin_down, (Fraction(high) - down) / 2)
    if abs(min(spare) + FORGIVEN) > SLIP:
        assert found.fits == (min(spare) >= -FORGIVEN)


@given(cloths, stitches, stitches, margins, pieces, pieces)
def test_turning_twice_is_nothing(cloth, width, height, margin, wide, high):
    assert cloth.turned.turned == cloth
    straight = fit(cloth, width, height, margin, wide, high)
    twice = fit(cloth.turned, width, height, margin, high, wide, turned=True)
    assert twice.turned
    for name in ("fits", "spare_across", "spare_down", "margin_across", "margin_down"):
        assert getattr(straight, name) == getattr(twice, name)


@given(cloths, stitches, stitches, margins, pieces, pieces)
def test_turning_the_piece_is_turning_the_design(cloth, width, height, margin, wide, high):
    piece = fit(cloth, width, height, margin, wide, high, turned=True)
    design = fit(cloth, height, width, margin, wide, high)
    assert (piece.fits, piece.spare_across, piece.spare_down) == (
        design.fits,
        design.spare_down,
        design.spare_across,
    )


# What no cloth is


@pytest.mark.parametrize("count", [0, -14, 500, 0.5, float("nan"), float("inf")])
def test_a_count_that_no_cloth_has_is_refused(count):
    for counts in ((count, 14), (14, count)):
        with pytest.raises(ValueError, match="from 1 to 100 an inch"):
            Cloth(*counts)


@pytest.mark.parametrize("over", [0, -1, 1.5, 4])
def test_a_stitch_over_no_such_threads_is_refused(over):
    with pytest.raises(ValueError, match="over 1, 2 or 3"):
        Cloth(28, 28, over)


@pytest.mark.parametrize("side", [0, -1, 2.5, 10_001, float("nan")])
def test_a_design_of_no_such_size_is_refused(side):
    for sides in ((side, 10), (10, side)):
        with pytest.raises(ValueError, match="whole stitches"):
            size(Cloth(14, 14), *sides, 0, STEPS["cm"])


@pytest.mark.parametrize("margin", [-0.1, 1001, float("nan")])
def test_an_impossible_margin_is_refused(margin):
    asked = (lambda: size(Cloth(14, 14), 9, 9, margin, 5.0), lambda: largest(Cloth(14, 14), 99, 99, margin))
    for ask in asked:
        with pytest.raises(ValueError, match="margin"):
            ask()


@pytest.mark.parametrize("length", [0, -300, 9, 100_001, float("nan")])
def test_a_piece_that_is_none_is_refused(length):
    for piece in ((length, 300), (300, length)):
        with pytest.raises(ValueError, match="1 cm to 100 m"):
            largest(Cloth(14, 14), *piece, 0)
        with pytest.raises(ValueError, match="1 cm to 100 m"):
            fit(Cloth(14, 14), 9, 9, 0, *piece)
