"""The kinds' habits, and which part of a blend decides."""

from itertools import permutations

import pytest

from tests.threads.lines import KINDS, ON_14
from webapp.threads.estimate import Counts, estimate
from webapp.threads.kinds import deciding, kind_of, worked


def test_one_thread_is_worked_by_its_own_habits():
    [cotton] = worked(KINDS, [("cotton", 2)])
    assert (cotton.strands, cotton.together, cotton.method, cotton.loop) == (2, 2, "rows", True)
    assert cotton.working == 457.2  # 18 in, anniesattic.com (preparing thread)
    [dyed] = worked(KINDS, [("hand-dyed", 2)])
    assert (dyed.method, dyed.loop) == ("each", False)  # theartofstitch.com (variegated floss)


@pytest.mark.parametrize("strands", [1, 3])
def test_a_loop_begins_only_an_even_number(strands):
    """Common practice, no source."""
    assert not worked(KINDS, [("cotton", strands)])[0].loop


def test_a_blend_is_cut_to_its_most_delicate_part_and_begins_with_no_loop():
    for parts in permutations([("cotton", 1), ("filament", 1), ("silk", 2)]):
        found = worked(KINDS, parts)
        assert deciding(KINDS, [name for name, _strands in parts]) == "filament"
        assert {one.working for one in found} == {KINDS["filament"]["working_mm"]}
        assert {one.together for one in found} == {4}
        assert not any(one.loop for one in found)


def test_each_part_keeps_its_strands_and_takes_as_long_a_thread():
    parts = [("cotton", 2), ("filament", 1)]
    found = [
        estimate(ON_14, Counts(full=900), one, KINDS[name])
        for one, (name, _n) in zip(worked(KINDS, parts), parts, strict=True)
    ]
    needle = [
        found[n].sold.usual * KINDS[name]["strands"] / strands for n, (name, strands) in enumerate(parts)
    ]
    assert needle[0] == pytest.approx(needle[1])
    assert found[0].lengths == found[1].lengths


def test_what_she_says_goes_before_habit():
    [found] = worked(KINDS, [("cotton", 2)], "each", 381.0)
    assert (found.method, found.working) == ("each", 381.0)


def test_what_is_no_thread_is_refused():
    with pytest.raises(ValueError, match="one of the kinds"):
        kind_of(KINDS, "string")
    with pytest.raises(ValueError, match="what thread"):
        worked(KINDS, [])
    for strands in (0, 25):
        with pytest.raises(ValueError, match="1 to 24 strands"):
            worked(KINDS, [("cotton", strands)])


@pytest.mark.parametrize("name", list(KINDS))
def test_every_kind_can_be_worked_as_it_is_used(name):
    [found] = worked(KINDS, [(name, KINDS[name]["used"])])
    assert estimate(ON_14, Counts(full=100), found, KINDS[name]).units[0] >= 1
