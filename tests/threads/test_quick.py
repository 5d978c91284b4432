"""What quick thread comes to: blocks multiplied, printed skeins brought to other cloth."""

from fractions import Fraction
from math import ceil

import pytest
from hypothesis import given
from hypothesis import strategies as st

from webapp.threads.geometry import bundle, ground_of, stitch
from webapp.threads.quick import answer, ask
from webapp.threads.quick_views import tables

USUAL = {"count": "14", "printed_count": "14", "printed_strands": "2"}


def found(**typed):
    asked = ask({**USUAL, **{name: str(value) for name, value in typed.items()}}, tables())
    assert asked.errors == {}
    return answer(asked.values, tables())


@given(st.integers(1, 100), st.integers(1, 500))
def test_a_block_multiplied_is_so_many_stitches(block, blocks):
    assert found(by="block", block=block, blocks=blocks) == found(stitches=block * blocks)


@given(st.integers(1, 40))
def test_skeins_printed_for_this_very_cloth_stay_as_they_are(printed):
    """Two strands are usual on 14."""
    assert found(by="printed", printed=printed).units == (printed, printed)


@given(st.integers(1, 40), st.integers(8, 20), st.integers(1, 4), st.integers(8, 20), st.integers(1, 4))
def test_printed_skeins_go_by_thread_a_cross_and_by_strands(printed, count, strands, there, strands_there):
    """In one patch's way of thinking: the drawing's thread times the strands, ends and moves nearly alike."""
    told = {"printed_count": there, "printed_strands": strands_there}
    got = found(by="printed", printed=printed, count=count, strands=strands, scatter="together", **told)

    def drawn(on, by):
        return stitch("full", ground_of(on), "rows", bundle(by)) * by

    assert got.share == pytest.approx(drawn(count, strands) / drawn(there, strands_there), rel=0.2)
    exact = Fraction(got.share)
    assert got.units[1] == ceil(exact * printed - Fraction(1, 10**8))
    assert got.units[0] - 1 <= exact * (printed - 1) + Fraction(1, 10**8) < got.units[0] + Fraction(1, 10**8)
    assert got.units[0] <= got.units[1]


@pytest.mark.parametrize(
    ("count", "over", "kind", "strands"),
    [
        (14, 1, "cotton", 2),
        (28, 2, "cotton", 2),
        (18, 1, "silk", 1),
        (11, 1, "cotton", 3),
        (14, 1, "wool", 1),
    ],
)
def test_strands_that_are_not_written_are_the_usual_ones(count, over, kind, strands):
    """11 to 18: patchesofpink.com, goldencircledesigns.com/2012/12. Thread not split is used whole."""
    assert found(stitches=100, count=count, over=over, kind=kind).worked.strands == strands


def test_a_skein_of_her_own_length_is_bought_by_that_length():
    short, long = (found(stitches=5000, skein=skein, unit="cm") for skein in ("5", "10 m"))
    assert short.sold == long.sold
    assert short.units[1] == ceil(short.sold.high / 5000)
    assert long.units[1] == ceil(short.sold.high / 10_000)


@given(st.integers(1, 900_000), st.integers(1, 99_999))
def test_more_stitches_never_need_fewer_skeins(stitches, more):
    few, many = found(stitches=stitches), found(stitches=stitches + more)
    assert few.units[0] <= many.units[0]
    assert few.units[1] <= many.units[1]
