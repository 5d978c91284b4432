import json

import pytest
from hypothesis import given
from hypothesis import strategies as st

from webapp.places import SHARED
from webapp.stitching.place import block_size, scene

VECTORS = json.loads((SHARED / "vectors" / "place.json").read_text())
PLAN = {"width": 140, "height": 98, "direction": "top", "first_row": 1, "expected": 140}


@pytest.mark.parametrize("case", VECTORS, ids=lambda case: case["description"])
def test_the_place_on_the_chart(case):
    # Counted by hand on squared paper; the same cases bind place.js (test_place_in_the_browser.py).
    assert scene(**case["given"]) == case["expect"]


@st.composite
def rows_begun(draw):
    width = draw(st.integers(1, 700))
    column = draw(st.integers(1, width))
    way = draw(st.sampled_from(["right", "left"]))
    plan = PLAN | {"width": width, "expected": draw(st.none() | st.integers(1, width))}
    return plan, {"column": column, "way": way}, draw(st.integers(-20, 800)), draw(st.integers(-20, 100))


@given(rows_begun())
def test_going_on_by_what_is_ahead_leads_to_a_ten_line_or_the_edge(row):
    plan, start, stitches, bare = row
    here = scene(plan, 1, max(0, stitches), max(0, bare), start)
    there = scene(plan, 1, here["count"] + here["ahead"], max(0, bare), start)
    assert there["whole"]


@given(rows_begun())
def test_the_cross_never_holds_more_than_was_moved(row):
    plan, start, stitches, bare = row
    shown = scene(plan, 1, stitches, bare, start)
    laid = sum(to - of for of, to in shown["legs"])
    assert 0 <= laid <= min(10, max(0, shown["count"] + bare))


@given(rows_begun())
def test_the_band_stays_on_the_chart_and_within_sight(row):
    plan, start, stitches, bare = row
    band = scene(plan, 1, stitches, bare, start)["band"]
    assert 0 <= band["low"] <= band["from"] <= band["to"] <= band["high"] <= plan["width"]
    assert band["high"] - band["low"] <= 300


@given(st.integers(1, 300), st.integers(1, 300))
def test_the_blocks_of_a_chart_are_all_its_cells(width, height):
    blocks = [(a, d) for a in range(1, -(-width // 10) + 1) for d in range(1, -(-height // 10) + 1)]
    sizes = [block_size(width, height, block) for block in blocks]
    assert sum(across * down for across, down in sizes) == width * height
