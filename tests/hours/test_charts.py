import re
from datetime import timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from webapp.hours import charts
from webapp.hours.bars import WIDTH, Float

spans = st.tuples(st.integers(0, 4), st.timedeltas(timedelta(minutes=1), timedelta(hours=5)))
shares = st.tuples(st.integers(0, 4), st.timedeltas(timedelta(minutes=1), timedelta(hours=2)))
days = st.none() | st.lists(shares, max_size=12)


def strokes(floats):
    """Read paths back to (begin, y, length)."""
    steps = re.findall(r"M([\d.]+) ([\d.]+)h([\d.]+)", "".join(one.path for one in floats))
    return [tuple(map(float, step)) for step in steps]


@pytest.mark.parametrize("grid", [charts.MONTH, charts.YEAR])
@given(data=st.data())
def test_every_thread_lies_in_its_own_days_column(grid, data):
    column = data.draw(st.integers(0, grid.across - 1))
    row = [None] * column + [data.draw(days)]
    cloth = charts.calendar([row], grid)
    left, right = grid.left + column * grid.column, grid.left + (column + 1) * grid.column
    for x, y, long in strokes(cloth.floats):
        assert left <= x + 0.05
        assert x + long <= right + 0.05
        assert grid.under <= y <= grid.foot(0)


def test_the_longest_day_fits_into_its_row():
    for grid in (charts.MONTH, charts.YEAR):
        for hours in (0.5, 3, 9, 24):
            cloth = charts.calendar([[[(0, timedelta(hours=hours))]]], grid)
            assert min(y for _, y, _ in strokes(cloth.floats)) >= grid.under


@pytest.mark.parametrize("grid", [charts.MONTH, charts.YEAR])
@pytest.mark.parametrize("projects", [7, 15, 90])
def test_a_day_of_many_projects_stays_in_its_row(grid, projects):
    day = [(n % 5, timedelta(minutes=7)) for n in range(projects)]
    cloth = charts.calendar([[[]], [day]], grid)
    heights = {y for _, y, _ in strokes(cloth.floats)}
    assert min(heights) >= grid.deep + grid.under
    assert len(heights) == round(projects * 7 / cloth.minutes)


def test_a_day_with_nothing_is_bare_warp_and_one_to_come_is_not_there():
    cloth = charts.calendar([[[], None, []]], charts.MONTH)
    assert cloth.warp.count("M") == 2
    assert cloth.floats == []


@pytest.mark.parametrize("grid", [charts.MONTH, charts.YEAR])
def test_a_mark_lies_beneath_its_own_day_and_above_the_next_row(grid):
    cloth = charts.calendar([[[], []], [[], []]], grid, [(0, 1), (1, 0)])
    (x, y, long), (second, lower, _) = strokes([Float(0, False, cloth.beneath)])
    assert x + long / 2 == pytest.approx(grid.middle(1), abs=0.1)
    assert second + long / 2 == pytest.approx(grid.middle(0), abs=0.1)
    assert grid.foot(0) + 3.2 / 2 < y < grid.deep + grid.under
    assert lower == pytest.approx(y + grid.deep)
    assert lower < cloth.height


def test_a_year_is_ten_paths_at_most():
    row = [[(n % 5, timedelta(hours=2))] for n in range(31)]
    assert len(charts.calendar([row] * 12, charts.YEAR).floats) == 10


def test_threads_that_are_gathered_are_all_there():
    floats = [Float(1, False, "A"), Float(0, True, "B"), Float(1, False, "C")]
    assert charts.gathered(floats) == [Float(0, True, "B"), Float(1, False, "AC")]


@given(st.lists(st.lists(spans, max_size=4), max_size=5))
def test_a_weeks_thread_is_as_long_as_its_time_and_the_longest_is_full(weeks):
    lengths = [sum(long for _, _, long in strokes(thread)) / 2 for thread in charts.plied(weeks)]
    times = [sum((time for _, time in week), timedelta()) for week in weeks]
    longest = max(times, default=timedelta())
    for time, long in zip(times, lengths, strict=True):
        assert long == pytest.approx(charts.LINE * (time / longest) if longest else 0, abs=0.3)
    assert all(x + long <= WIDTH for thread in charts.plied(weeks) for x, _, long in strokes(thread))
