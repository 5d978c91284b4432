"""The thread of a stitch, against plain geometry and against a needle that goes hole by hole."""

from math import hypot, pi, sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.threads.walker import (
    backstitches,
    finished_at_once,
    halves,
    laid_crosses,
    near,
    quarters,
    row,
    three_quarters,
    walk,
)
from webapp.threads.geometry import METHODS, NEEDLE, STITCHES, Ground, bundle, ground_of, stitch

FLAT = Ground(1.0, 1.0, 0.0)

pitches = st.floats(0.5, 6)
grounds = st.builds(Ground, pitches, pitches, st.floats(0, 1.5))
threads = st.floats(0, 1)


# On flat cloth, p = 1, thread of no thickness (derived, TRADE.md: thread)
@pytest.mark.parametrize(
    ("what", "method", "takes"),
    [
        ("full", "rows", 2 * sqrt(2) + 2),  # 4.83 p
        ("full", "each", 2 * sqrt(2) + 1 + sqrt(2)),  # 5.24 p
        ("half", "rows", sqrt(2) + 1),
        ("half", "each", sqrt(2) + 1),
        ("quarter", "rows", sqrt(2)),
        ("three_quarter", "rows", 2 * sqrt(2) + 1),
        ("back", "rows", 3),
        ("beads", "each", sqrt(2) + 1),
    ],
)
def test_a_stitch_takes_what_its_drawing_says(what, method, takes):
    assert stitch(what, FLAT, method, 0.0) == pytest.approx(takes)


def test_a_cross_takes_the_figures_of_the_trade():
    assert round(stitch("full", FLAT, "rows", 0.0), 2) == 4.83
    assert round(stitch("full", FLAT, "each", 0.0), 2) == 5.24


def test_a_knot_goes_round_its_needle():
    once, twice = (stitch("knots", FLAT, "rows", 0.0, wraps) for wraps in (1, 2))
    assert twice - once == pytest.approx(pi * NEEDLE)
    assert stitch("knots", FLAT, "rows", 0.3, 3) > stitch("knots", FLAT, "rows", 0.0, 3)


# A path is walked from its first hole to its last: the closed form adds the step to where the next begins.
@given(grounds, threads, st.integers(1, 60))
def test_rows_out_and_back_come_to_the_walk(ground, thread, length):
    path = row(length)
    assert laid_crosses(path) == length
    whole = walk([*path, (path[-1][0], path[-1][1] - 1)], ground, thread)
    assert near(length * stitch("full", ground, "rows", thread), whole)


@given(grounds, threads, st.integers(1, 60))
def test_crosses_finished_at_once_come_to_the_walk(ground, thread, length):
    path = finished_at_once(length)
    assert laid_crosses(path) == length
    assert near(length * stitch("full", ground, "each", thread), walk([*path, (length, 0)], ground, thread))


@pytest.mark.parametrize(
    ("what", "path", "next_hole"),
    [
        ("half", halves, lambda n: (n, 0)),
        ("quarter", quarters, lambda n: (n, 0)),
        ("three_quarter", three_quarters, lambda n: (n, 0)),
        ("back", backstitches, lambda n: (n + 1, 0)),
    ],
)
@given(pitches, st.floats(0, 1.5), threads, st.integers(1, 60))
def test_other_stitches_come_to_the_walk(what, path, next_hole, pitch, thick, thread, length):
    ground = Ground(pitch, pitch, thick)
    whole = walk([*path(length), next_hole(length)], ground, thread)
    assert near(length * stitch(what, ground, "rows", thread), whole)


@given(grounds, threads)
def test_uneven_cloth_is_taken_as_it_lies(ground, thread):
    turned = Ground(ground.down, ground.across, ground.thick)
    leg = hypot(ground.across, ground.down)
    flat = ground._replace(thick=0.0)
    assert stitch("full", flat, "rows", 0.0) == pytest.approx(2 * leg + 2 * ground.down)
    assert stitch("full", flat, "each", 0.0) == pytest.approx(3 * leg + ground.down)
    assert near(stitch("back", ground, "rows", thread), stitch("back", turned, "rows", thread))


@given(grounds, threads, st.sampled_from(STITCHES), st.sampled_from(METHODS))
def test_thicker_cloth_and_thicker_thread_take_more(ground, thread, what, method):
    more = ground._replace(thick=ground.thick + 0.2)
    assert stitch(what, more, method, thread) > stitch(what, ground, method, thread)
    assert stitch(what, ground, method, thread + 0.2) > stitch(what, ground, method, thread)


def test_over_two_is_as_over_one_of_half_the_count():
    assert ground_of(28, 2) == ground_of(14)
    assert ground_of(28, 2, 30) == Ground(2 * 25.4 / 28, 2 * 25.4 / 30)


@given(st.integers(1, 24), st.floats(0.05, 1))
def test_strands_lie_together_as_one_thread_of_the_same_area(strands, diameter):
    assert bundle(strands, diameter) ** 2 == pytest.approx(strands * diameter**2)


@pytest.mark.parametrize("count", [0, -14, 500, 0.5, float("nan"), float("inf")])
def test_a_count_that_no_cloth_has_is_refused(count):
    for counts in ((count, 1, None), (14, 1, count)):
        with pytest.raises(ValueError, match="from 1 to 100 an inch"):
            ground_of(*counts)


@pytest.mark.parametrize(
    ("given", "sentence"),
    [
        (("full", FLAT, "zigzag", 0.0), "rows out and back"),
        (("loop", FLAT, "rows", 0.0), "no such stitch"),
        (("knots", FLAT, "rows", 0.0, 0), "wrapped 1 to 9"),
        (("full", Ground(0.0, 1.0), "rows", 0.0), "mm apart"),
        (("full", Ground(1.0, float("nan")), "rows", 0.0), "mm apart"),
        (("full", Ground(1.0, 1.0, -1.0), "rows", 0.0), "mm thick"),
    ],
)
def test_what_no_stitch_is_is_refused(given, sentence):
    with pytest.raises(ValueError, match=sentence):
        stitch(*given)


@pytest.mark.parametrize("over", [0, 4, 1.5])
def test_a_stitch_over_no_such_threads_is_refused(over):
    with pytest.raises(ValueError, match="over 1, 2 or 3"):
        ground_of(28, over)
