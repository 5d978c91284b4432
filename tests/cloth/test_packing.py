"""Cuts from a piece and off the bolt: they lie apart, inside, and nothing of the kind is shorter."""

from functools import cache
from itertools import combinations
from math import ceil

import pytest
from hypothesis import given
from hypothesis import strategies as st

from webapp.cloth.packing import Cutting, class_cuts, many, off_the_bolt

LOST = 1e-5  # mm

cuts = st.one_of(st.integers(40, 500), st.integers(8, 100).map(lambda n: n * 6.35))
pieces = st.one_of(st.integers(40, 1600), st.integers(8, 250).map(lambda n: n * 6.35))
numbers = st.integers(1, 14)


def apart(one, other) -> bool:
    (x, y, width, height), (x2, y2, width2, height2) = one, other
    return (
        x + width <= x2 + LOST
        or x2 + width2 <= x + LOST
        or y + height <= y2 + LOST
        or y2 + height2 <= y + LOST
    )


def covers(found: Cutting, wide: float, high: float) -> None:
    """Hold that cuts and strips lie inside, apart, and make up the whole piece."""
    strips = [*found.cuts, *found.left]
    assert all(x >= 0 and y >= 0 and x + w <= wide + LOST and y + h <= high + LOST for x, y, w, h in strips)
    assert all(apart(one, other) for one, other in combinations(strips, 2))
    assert sum(w * h for _x, _y, w, h in strips) == pytest.approx(wide * high, rel=1e-6)


@given(numbers, cuts, cuts, pieces, pieces, st.booleans())
def test_the_cuts_of_a_class_lie_apart_and_inside_and_are_all_there(n, width, height, wide, high, turn):
    found = class_cuts(n, width, height, wide, high, turn)
    if found is None:
        return
    assert len(found.cuts) == n <= found.most
    assert {tuple(sorted((w, h))) for _x, _y, w, h in found.cuts} == {tuple(sorted((width, height)))}
    assert turn or all((w, h) == (width, height) for _x, _y, w, h in found.cuts)
    assert found.length <= high + LOST
    assert max(y + h for _x, y, _w, h in found.cuts) == pytest.approx(found.length)
    covers(found, wide, high)


@given(numbers, cuts, cuts, pieces, pieces)
def test_a_piece_gives_what_one_way_gives_and_no_more_than_its_area(n, width, height, wide, high):
    one_way = many(wide, width) * many(high, height)
    other_way = many(wide, height) * many(high, width)
    found = class_cuts(n, width, height, wide, high)
    if found is None:
        assert max(one_way, other_way) < n
    else:
        assert max(one_way, other_way) <= found.most <= (wide + LOST) * (high + LOST) / width / height


@given(numbers, cuts, cuts, st.integers(636, 1600), st.booleans())
def test_a_length_off_the_bolt_is_never_longer_than_one_way(n, width, height, bolt, turn):
    found = off_the_bolt(n, width, height, bolt, turn)
    assert len(found.cuts) == n <= found.most
    assert found.length <= ceil(n / many(bolt, width)) * height + LOST if many(bolt, width) else True
    if turn and many(bolt, height):
        assert found.length <= ceil(n / many(bolt, height)) * width + LOST
    assert found.length * bolt >= n * width * height - LOST * bolt
    covers(found, bolt, found.length)


@given(numbers, cuts, cuts, pieces, pieces, st.booleans())
def test_the_piece_gives_as_many_as_it_says_and_not_one_more(n, width, height, wide, high, turn):
    found = class_cuts(n, width, height, wide, high, turn)
    if found is not None and found.most < 200:
        assert class_cuts(found.most, width, height, wide, high, turn) is not None
        assert class_cuts(found.most + 1, width, height, wide, high, turn) is None


# Brute force: every sequence of strips, tried one after the other. In centimetres, so that mm are whole.


@cache
def stripped(ways: frozenset[tuple[int, int]], across: int, down: int) -> int:
    """Give the most cuts that rows laid one after the other, each way of lying, can hold."""
    most = 0
    for w, h in ways:
        if h <= down and w <= across:
            most = max(most, across // w + stripped(ways, across, down - h))
    return most


def brute(cut: tuple[int, int], turned: tuple[int, int] | None, across: int, down: int) -> int:
    ways = frozenset({cut, turned or cut})
    return max(stripped(ways, across, down), stripped(frozenset((h, w) for w, h in ways), down, across))


small = st.integers(1, 7)


@given(small, small, st.integers(1, 20), st.integers(1, 20), st.booleans(), st.integers(1, 12))
def test_no_other_strips_hold_more_nor_do_with_less(width, height, across, down, turn, n):
    turned = (height, width) if turn else None
    most = brute((width, height), turned, across, down)
    found = class_cuts(n, width * 10, height * 10, across * 10, down * 10, turn)
    assert (found is None) == (most < n)
    if found is not None:
        assert found.most == most
        lengths = range(1, down + 1)
        shortest = next(each for each in lengths if brute((width, height), turned, across, each) >= n)
        assert found.length == shortest * 10


@given(st.tuples(small, small), st.tuples(small, small), st.integers(1, 20), st.integers(1, 20), numbers)
def test_turned_cuts_of_another_size_are_laid_in_theirs(cut, turned, across, down, n):
    """Cloth that is not square asks another cut of a turned design: held against every sequence of strips."""
    most = brute(cut, turned, across, down)
    mm = [side * 10 for side in cut], [side * 10 for side in turned]
    found = class_cuts(n, *mm[0], across * 10, down * 10, True, tuple(mm[1]))
    assert (found is None) == (most < n)
    if found is not None:
        assert found.most == most
        shortest = next(each for each in range(1, down + 1) if brute(cut, turned, across, each) >= n)
        assert found.length == shortest * 10
        lying = [list(strip[2:]) for strip in found.cuts]
        assert lying == [mm[0]] * (n - found.turned) + [mm[1]] * found.turned or cut == turned
        covers(found, across * 10, down * 10)


@pytest.mark.parametrize("n", [0, -1, 201, 2.5])
def test_a_class_of_no_such_number_is_refused(n):
    with pytest.raises(ValueError, match="from 1 to 200"):
        class_cuts(n, 100, 100, 300, 300)


@pytest.mark.parametrize("length", [0, -1, 9.9, 100_001, float("nan")])
def test_cloth_that_is_none_is_refused(length):
    for given_lengths in ((length, 100, 300), (100, length, 300), (100, 100, length)):
        with pytest.raises(ValueError, match="1 cm to 100 m"):
            off_the_bolt(3, *given_lengths)
    with pytest.raises(ValueError, match="1 cm to 100 m"):
        class_cuts(3, 100, 100, 300, length)


def test_a_bolt_narrower_than_a_cut_is_refused():
    with pytest.raises(ValueError, match="narrower"):
        off_the_bolt(3, 500, 400, 300)
    with pytest.raises(ValueError, match="narrower"):
        off_the_bolt(3, 500, 200, 300, turn=False)


def test_the_largest_class_on_the_longest_cloth_is_soon_laid():
    assert len(off_the_bolt(200, 10, 11, 100_000).cuts) == 200
    found = class_cuts(200, 10, 11, 100_000, 100_000)
    assert found is not None
    assert found.most >= 10_000 * 9090
