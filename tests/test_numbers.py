"""Thousands stand apart, in the same way wherever a number is read."""

import pytest

from webapp.numbers import counted, number


@pytest.mark.parametrize(
    ("value", "text"), [(0, "0"), (999, "999"), (1000, "1,000"), (-1000, "-1,000"), (2666.7, "2,667")]
)
def test_thousands_stand_apart(value, text):
    assert number(value) == text


def test_what_is_counted_follows_its_number():
    assert (counted(1, "row", "rows"), counted(4992, "row", "rows")) == ("1 row", "4,992 rows")


def test_a_large_project_is_said_in_such_numbers_everywhere(alice, new_project):
    plan = {"width": 4321, "height": 9876, "first_row": 1234, "start_column": 2345, "expected": 3456}
    page = alice.get(f"/projects/{new_project(alice, **plan)}").text
    for said in (
        "4,321 × 9,876 stitches",
        "of 9,876 rows",
        "row 1,234.",
        "column 2,345 ",
        "3,456 stitches in",
    ):
        assert said in page
    assert "4,321 × 9,876 stitches" in alice.get("/projects").text  # the first of a list is planned too
