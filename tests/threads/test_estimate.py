"""How much thread a line takes: the trade's figures, exact sums along patches, and what to buy."""

from fractions import Fraction
from math import ceil
from random import Random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.threads import lines
from tests.threads.lines import COTTON, EACH, FLAT_14, KINDS, ON_14, THIN, TWO
from tests.threads.walker import finished_at_once, row, walk
from webapp.threads.estimate import CARRIED, TRAVEL, Counts, Worked, estimate, patches_of, reach, wasted
from webapp.threads.geometry import bundle, ground_of, stitch

SKEIN = 8000  # mm of six strands (pressreader.com/australia/cross-stitcher/20240123)


def crosses_a_skein(ground, worked, waste=True) -> float:
    """Give the crosses a skein yields at the estimate's usual, in one patch."""
    found = estimate(ground, Counts(full=100_000), worked, COTTON, patches=1)
    mm = found.sold if waste else found.laid._replace(usual=found.laid.usual * worked.strands / 6)
    return 100_000 / mm.usual * SKEIN


# Published yields (TRADE.md: thread)


def test_flat_cloth_gives_the_trade_s_crosses_a_skein():
    """2,740 at 14 per inch with two strands; less ends of 4 in in each 18 in about 1,960-2,130 (derived)."""
    flat, each = TWO._replace(diameter=THIN), EACH._replace(diameter=THIN)
    assert crosses_a_skein(FLAT_14, flat, waste=False) == pytest.approx(2740, abs=2)
    assert crosses_a_skein(FLAT_14, flat) == pytest.approx(2130, abs=2)
    assert crosses_a_skein(FLAT_14, each) == pytest.approx(1964, abs=2)


def test_cloth_and_thread_as_thick_as_they_are_stay_among_the_published_yields():
    assert 1960 <= crosses_a_skein(ON_14, TWO) <= 2130
    for many in (1960, 2130):
        found = estimate(ON_14, Counts(full=many), TWO, COTTON, patches=1)
        assert found.sold.low < SKEIN < found.sold.high


def test_a_yield_of_404_crosses_a_metre_lies_between_coarse_cloth_with_its_ends_and_fine_without():
    """Published for six strands, cloth unstated (bkkquilt.com): at two strands between 14 and 18 an inch."""
    least = crosses_a_skein(ON_14, TWO) / 8
    most = crosses_a_skein(ground_of(18, thick=0.0), TWO._replace(diameter=THIN), waste=False) / 8
    assert least < 404 < most


def test_what_is_allowed_for_plain_stitching_is_as_published():
    """10 % (quailrunneedlework.com) to 20 % (nuts-about-needlepoint.com) above the usual."""
    for worked in (TWO, EACH, TWO._replace(strands=3, together=3)):
        found = estimate(ON_14, Counts(full=4000), worked, COTTON, patches=1)
        assert 1.1 <= found.sold.high / found.sold.usual <= 1.2


def test_scattered_colours_are_allowed_more():
    """As quailrunneedlework.com asks."""
    found = [
        estimate(ON_14, Counts(full=600), TWO, COTTON, None, s) for s in ("together", "mixed", "scattered")
    ]
    assert found[0].sold.usual < found[1].sold.usual < found[2].sold.usual
    assert found[1].sold.high / found[1].sold.usual < found[2].sold.high / found[2].sold.usual


# Exact sums along what is drawn


@given(st.integers(0, 2**32), lines.grounds, st.integers(2, 30), st.sampled_from(["rows", "each"]))
def test_what_stays_in_the_cloth_comes_to_the_walk_along_patches(seed, ground, patches, method):
    """The needle is carried to the next patch; the closed form may count a step at a patch's end too."""
    rng = Random(seed)
    worked = TWO._replace(method=method)
    thread = bundle(2)
    draw = row if method == "rows" else finished_at_once
    path, carried, many, x = [], 0.0, 0, 0
    for patch in range(patches):
        length = rng.randint(1, 12)
        holes = draw(length, (x, 0))
        if patch:
            carried += walk([path[-1], holes[0]], ground, thread)
        path += holes
        many += length
        x += length + rng.randint(1, 12)
    cross = stitch("full", ground, method, thread)
    exact = walk(path, ground, thread)
    steps = patches * cross / 2
    assert many * cross + carried - steps <= exact <= many * cross + carried + 1e-6
    found = estimate(ground, Counts(full=many), worked, COTTON, patches=patches)
    moved = (patches - 1) * CARRIED * TRAVEL * (ground.across + ground.down) / 2
    assert found.laid.usual == pytest.approx(many * cross + min(moved, (many - 1) * moved / (patches - 1)))


@given(st.integers(2, 2000), st.sampled_from([True, False]))
def test_lengths_cut_one_by_one_come_to_the_closed_form(many, loop):
    """Cut a length, lose its ends, stitch until it is used up, cut the next: by whole fractions."""
    worked = TWO._replace(loop=loop)
    cross = Fraction(stitch("full", ON_14, "rows", bundle(2)))
    left = lost = cut = Fraction(0)
    for _ in range(many):
        need = cross
        while need > left:
            need -= left
            cut += 1
            lost += Fraction(wasted(loop))
            left = Fraction(worked.working) - Fraction(wasted(loop))
        left -= need
    found = estimate(ON_14, Counts(full=many), worked, COTTON, patches=1)
    needle = Fraction(found.sold.usual) * 6 / 2
    exact = many * cross + lost
    assert abs(needle - exact) <= Fraction(wasted(loop)) + Fraction(1, 1000)
    assert abs(found.lengths.usual - int(cut)) <= 1


# What to buy, by fractions


@given(st.integers(1, 6), st.integers(1, 60), st.integers(1, 20))
def test_whole_skeins_hold_what_is_needed_and_one_less_does_not(strands, hundreds, metres):
    kind = {**COTTON, "length_mm": metres * 1000}
    worked = Worked(strands, strands, "rows", 457.2)
    found = estimate(ON_14, Counts(full=100 * hundreds), worked, kind)
    for units, mm in zip(found.units, (found.sold.low, found.sold.high), strict=True):
        exact = Fraction(mm) / (metres * 1000)
        assert units == ceil(exact) or abs(exact - round(exact)) < Fraction(1, 10**8)
        assert isinstance(units, int)


def test_thread_that_fills_a_skein_to_the_last_millimetre_needs_no_second():
    found = estimate(ON_14, Counts(full=500), TWO, COTTON)
    exact = {**COTTON, "length_mm": found.sold.high}
    assert estimate(ON_14, Counts(full=500), TWO, exact).units[1] == 1


@pytest.mark.parametrize(("beads", "spare"), [(0, 0), (1, 5), (100, 5), (101, 6), (2000, 100)])
def test_beads_are_bought_by_their_number_and_a_spare(beads, spare):
    """One in twenty, and five at least (common practice, no source)."""
    worked = Worked(1, 1, "each", 457.2)
    assert estimate(ON_14, Counts(beads=beads), worked, KINDS["beads"]).units == (beads, beads + spare)


def test_nothing_to_stitch_needs_nothing():
    found = estimate(ON_14, Counts(), TWO, COTTON)
    assert (found.sold, found.laid, found.lengths, found.units) == ((0, 0, 0), (0, 0, 0), (0, 0, 0), (0, 0))
    assert found.each.usual > 0


def test_a_few_stitches_still_take_a_length_s_ends():
    found = estimate(ON_14, Counts(full=1), TWO, COTTON)
    assert found.sold.usual * 3 == pytest.approx(stitch("full", ON_14, "rows", bundle(2)) + wasted(False))


@pytest.mark.parametrize(("scatter", "patches"), [("together", 5), ("mixed", 26), ("scattered", 172)])
def test_patches_follow_from_how_the_stitches_lie(scatter, patches):
    assert patches_of(Counts(full=1000, quarter=30), scatter) == patches
    assert patches_of(Counts(), scatter) == 0


@pytest.mark.parametrize(
    ("changed", "sentence"),
    [
        ({"counts": Counts(full=-1)}, "whole numbers from 0"),
        ({"counts": Counts(back=1.5)}, "whole numbers from 0"),
        ({"counts": Counts(full=10**9)}, "whole numbers from 0"),
        ({"worked": TWO._replace(together=0)}, "1 to 24 strands"),
        ({"worked": TWO._replace(strands=3)}, "at least one of the strands"),
        ({"worked": TWO._replace(strands=0)}, "at least one of the strands"),
        ({"worked": TWO._replace(working=100.0)}, "working length"),
        ({"worked": TWO._replace(working=float("nan"))}, "working length"),
        ({"worked": TWO._replace(method="both")}, "rows out and back"),
        ({"worked": TWO._replace(diameter=0.0)}, "mm thick"),
        ({"worked": Worked(1, 1, "rows", 457.2, loop=True)}, "even number"),
        ({"patches": 0}, "counted from 1"),
        ({"scatter": "here and there"}, "together, mixed or scattered"),
        ({"ground": FLAT_14._replace(across=-1.0)}, "mm apart"),
    ],
)
def test_what_cannot_be_meant_is_refused_with_a_sentence(changed, sentence):
    asked = {"ground": ON_14, "counts": Counts(full=9), "worked": TWO, "kind": COTTON} | changed
    with pytest.raises(ValueError, match=sentence) as refused:
        estimate(**asked)
    assert str(refused.value).endswith(".")


@pytest.mark.parametrize("had", [-1, float("nan"), float("inf")])
def test_thread_that_nobody_has_is_refused(had):
    with pytest.raises(ValueError, match="Thread that is had"):
        reach(had, ON_14, TWO, COTTON)
