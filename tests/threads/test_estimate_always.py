"""What must always hold of an estimate, whatever the line, the cloth and her own figure."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.threads import lines
from tests.threads.lines import COTTON
from webapp.threads.estimate import Counts, Worked, estimate, reach

more = st.tuples(st.integers(0, 6), st.integers(0, 500))
lines_of = (lines.grounds, lines.counts, lines.workeds, lines.kinds, lines.scatters, lines.owns)


@given(*lines_of, more)
def test_more_stitches_never_need_less_thread(ground, counts, worked, kind, scatter, own, more):
    which, many = more
    further = counts._replace(**{counts._fields[which]: counts[which] + many})
    few, lot = (estimate(ground, of, worked, kind, None, scatter, own) for of in (counts, further))
    for name in ("laid", "lengths", "sold", "units"):
        for one, other in zip(getattr(few, name), getattr(lot, name), strict=True):
            assert one <= other * (1 + 1e-12) + 1e-9, name


@given(*lines_of)
def test_ranges_are_in_order(ground, counts, worked, kind, scatter, own):
    found = estimate(ground, counts, worked, kind, None, scatter, own)
    for name in ("each", "laid", "lengths", "sold"):
        low, usual, high = getattr(found, name)
        assert 0 <= low <= usual <= high, name
    assert 0 <= found.units[0] <= found.units[1]
    assert bool(found.units[0]) == bool(sum(counts))


@given(*lines_of, st.integers(1, 3000))
def test_patches_that_are_counted_never_make_less_with_each_more(
    ground, counts, worked, kind, scatter, own, patches
):
    few, lot = (estimate(ground, counts, worked, kind, n, scatter, own).sold for n in (patches, patches + 1))
    assert all(one <= other + 1e-9 for one, other in zip(few, lot, strict=True))


@given(lines.grounds, st.lists(st.tuples(lines.counts, lines.workeds), min_size=1, max_size=6), st.randoms())
def test_the_order_of_legend_lines_changes_nothing(ground, legend, rng):
    def total(of):
        found = {line: estimate(ground, *line, COTTON) for line in of}
        units = [sum(found[line].units[end] for line in of) for end in (0, 1)]
        mm = [sum(Fraction(found[line].sold[end]) for line in of) for end in range(3)]
        return units, mm

    assert total(legend) == total(rng.sample(legend, len(legend)))


@given(lines.grounds, lines.counts, lines.strands, lines.strands, lines.scatters, lines.owns)
def test_a_blend_s_strands_are_conserved(ground, counts, one, other, scatter, own):
    """Two parts of one kind take together what so many strands of one thread take."""
    whole = Worked(one + other, one + other, "rows", 457.2)
    parts = [whole._replace(strands=n) for n in (one, other)]
    found = [estimate(ground, counts, part, COTTON, None, scatter, own) for part in parts]
    alone = estimate(ground, counts, whole, COTTON, None, scatter, own)
    for end in range(3):
        assert sum(part.sold[end] for part in found) == pytest.approx(alone.sold[end])
    assert {part.lengths for part in found} == {alone.lengths}


@given(lines.grounds, lines.workeds, lines.kinds, lines.scatters, lines.owns, st.floats(0, 200_000))
def test_thread_surely_reaches_to_what_it_is_enough_for_at_worst(ground, worked, kind, scatter, own, had):
    sure, perhaps = reach(had, ground, worked, kind, scatter, own)
    assert 0 <= sure <= perhaps
    for many, end in ((sure, 2), (perhaps, 0)):
        takes = [
            estimate(ground, Counts(full=n), worked, kind, None, scatter, own).sold[end]
            for n in (many, many + 1)
        ]
        assert takes[0] <= had < takes[1]
