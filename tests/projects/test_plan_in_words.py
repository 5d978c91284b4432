"""The way of working, in words."""

from types import SimpleNamespace

import pytest

from webapp.projects import words

PLAN = {
    "count": 14.0, "across": None, "over": 1, "working": "rows", "direction": "top", "first_row": 1,
    "start_column": 1, "start_way": "right", "expected": None, "block_from": "top-left",
    "block_way": "across", "step": "1",
}  # fmt: skip


def plan(**fields):
    return SimpleNamespace(**PLAN | fields)


@pytest.mark.parametrize(
    ("fields", "said"),
    [
        ({}, "Rows, down from row 1. Each begins at column 1 and goes right."),
        (
            {"direction": "bottom", "first_row": 3, "expected": 1},
            "Rows, up from the bottom, from row 3. Each begins at column 1 and goes right. 1 stitch in each.",
        ),
        (
            {
                "direction": "middle",
                "first_row": 49,
                "start_way": "left",
                "start_column": 140,
                "expected": 140,
            },
            "Rows, both ways from row 49. Each begins at column 140 and goes left. 140 stitches in each.",
        ),
        ({"working": "blocks"}, "Blocks of ten, from the top left, across first."),
        (
            {"working": "blocks", "block_from": "bottom-right", "block_way": "down"},
            "Blocks of ten, from the bottom right, down first.",
        ),
        ({"working": "blocks", "block_from": "middle"}, "Blocks of ten, from the middle, across first."),
    ],
)
def test_the_way_of_working_is_said(fields, said):
    assert " ".join(words.way_of_working(plan(**fields))) == said


@pytest.mark.parametrize(
    ("step", "said"),
    [
        ("1", "1 stitch"),
        ("5", "5 stitches"),
        ("ten", "up to the ten-line"),
        ("row", "the rest of the row"),
    ],
)
def test_what_a_tap_lays_is_said(step, said):
    assert words.what_a_tap_lays(plan(step=step)) == said


@pytest.mark.parametrize(
    ("count", "over", "said"),
    [(14.0, 1, "14 count, over one"), (28.0, 2, "28 count, over two"), (13.72, 1, "13.72 count, over one")],
)
def test_the_cloth_is_said(count, over, said):
    assert words.cloth_in_words(plan(count=count, over=over)) == said


def test_cloth_that_is_not_square_is_said_both_ways():
    assert (
        words.cloth_in_words(plan(count=28.0, across=26.5, over=2)) == "28 count across, 26.5 down, over two"
    )
