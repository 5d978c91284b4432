"""A project as a cloth that grows."""

from types import SimpleNamespace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from webapp.projects.woven import bands_of_blocks, bands_of_rows, fit, swatch, woven

PLAN = {"width": 140, "height": 98, "direction": "top", "start_way": "right", "expected": None}
DONE = {"stitches": 0, "done": True}


def plan(**fields):
    return SimpleNamespace(**PLAN | fields)


def area(bands):
    return sum(end - start for band in bands for start, end in band) / len(bands)


def test_rows_grow_from_the_top():
    bands = bands_of_rows(plan(), {str(row): DONE for row in range(1, 50)}, 98)
    assert bands == [[(0.0, 1.0)]] * 49 + [[]] * 49


def test_rows_numbered_from_the_bottom_grow_from_the_bottom():
    assert bands_of_rows(plan(direction="bottom"), {"1": DONE}, 98) == [[]] * 97 + [[(0.0, 1.0)]]


def test_a_row_begun_at_the_right_is_woven_from_the_right():
    begun = {"1": {"stitches": 35, "done": False}}
    assert bands_of_rows(plan(start_way="left"), begun, 98)[0] == [(0.75, 1.0)]
    assert bands_of_rows(plan(expected=70), begun, 98)[0] == [(0.0, 0.5)]


def test_a_block_lies_where_it_is_on_the_chart():
    bands = bands_of_blocks(plan(), {"14.10": DONE}, 98)
    assert bands[:90] == [[]] * 90  # the last block of 98 rows is 8 high
    assert bands[90:] == [[(pytest.approx(130 / 140), pytest.approx(1.0))]] * 8


def test_neighbouring_blocks_are_woven_in_one():
    bands = bands_of_blocks(plan(), {"1.1": DONE, "2.1": DONE, "3.1": {"stitches": 50, "done": False}}, 98)
    assert bands[4] == [(0.0, pytest.approx(30 / 140))]
    assert bands[5] == [(0.0, pytest.approx(20 / 140))]


def test_what_lies_outside_the_size_is_not_drawn():
    assert area(bands_of_rows(plan(), {"99": DONE, "10000": DONE}, 30)) == 0
    assert area(bands_of_blocks(plan(), {"15.1": DONE, "1.11": DONE}, 30)) == 0


@given(st.integers(1, 3000), st.integers(1, 40), st.data())
def test_the_part_woven_is_the_part_done(height, bands, data):
    done = data.draw(st.sets(st.integers(1, height), max_size=50))
    number = min(height, bands)
    drawn = bands_of_rows(plan(height=height), {str(row): DONE for row in done}, number)
    smallest, largest = height // number, -(-height // number)
    assert len(done) / largest / number <= area(drawn) + 1e-9
    assert area(drawn) <= len(done) / smallest / number + 1e-9


@given(st.integers(1, 2500), st.integers(1, 2500), st.integers(1, 36), st.data())
def test_all_blocks_done_are_the_whole_cloth(width, height, bands, data):
    wide, high = -(-width // 10), -(-height // 10)
    chart, number = plan(width=width, height=height), min(height, bands)
    everything = {f"{a}.{d}": DONE for a in range(1, wide + 1) for d in range(1, high + 1)}
    if len(everything) <= 900:
        assert area(bands_of_blocks(chart, everything, number)) == pytest.approx(1)
    one = data.draw(st.sampled_from(sorted(everything)[:50]))
    across, down = (int(part) for part in one.split("."))
    share = min(10, width - across * 10 + 10) * min(10, height - down * 10 + 10) / width / height
    assert area(bands_of_blocks(chart, {one: DONE}, number)) == pytest.approx(share)


@pytest.mark.parametrize(("width", "height"), [(1, 1), (1, 10_000), (10_000, 1), (10_000, 10_000), (140, 98)])
def test_the_drawing_stays_small_whatever_the_chart(width, height):
    everything = {f"{a}.{d}": DONE for a in range(1, 1001, 7) for d in range(1, 1001, 7)}
    cloth = woven(plan(width=width, height=height), {"1": DONE}, everything)
    assert 0 < cloth.width <= 160
    assert 0 < cloth.height <= 144
    assert len(cloth.weft[0] + cloth.weft[1]) < 40_000


def test_the_proportion_is_that_of_the_chart():
    assert fit(140, 98, (184, 144)) == (184, 129)


@pytest.mark.parametrize(
    ("direction", "woven_bands"),
    [("top", [0, 1, 2]), ("bottom", [8, 9, 10]), ("middle", [4, 5, 6])],
)
def test_a_small_cloth_grows_from_where_she_begins(direction, woven_bands):
    cloth = swatch(plan(width=100, height=100, direction=direction), 3 / 11)
    heights = sorted(float(part.split("H")[0].split(" ")[1]) for part in "".join(cloth.weft).split("M")[1:])
    assert [round(y / 4 - 0.5) for y in heights] == woven_bands
