"""The finished size of a design on its cloth."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from webapp.projects.size import finished_size, size_in_words

# Worked examples in inches as published, each with its source; a tolerance stands where the print is rounded.
PUBLISHED = [
    (140, 168, 28, 2, 10, 12, 0),  # rosewoodxstitch.com/pages/fabric
    (140, 140, 14, 1, 10, 10, 0),  # lizzyb.ca
    (98, 140, 14, 1, 7, 10, 0),  # onceinabluemoon.ca
    (140, 105, 14, 1, 10, 7.5, 0),  # strawberrysampler.com/faqs.html
    (140, 105, 32, 2, 8.75, 6.5, 0.0626),  # the same; it prints 6.5 for 6.5625
    (42, 42, 14, 1, 3, 3, 0),  # stitchedmodern.com, fabric count
    (42, 42, 16, 1, 2.63, 2.63, 0.0051),  # the same
    (42, 42, 18, 1, 2.33, 2.33, 0.0051),  # the same
    (67, 85, 35, 2, 3.83, 4.86, 0.0051),  # marybeale.com/school/lesson1/how_to_read_a_chart.html
]


@pytest.mark.parametrize(("width", "height", "count", "over", "across", "down", "slack"), PUBLISHED)
def test_published_examples_come_out(width, height, count, over, across, down, slack):
    size = finished_size(width, height, count, over)
    assert size.width / 25.4 == pytest.approx(across, abs=slack or 1e-12)
    assert size.height / 25.4 == pytest.approx(down, abs=slack or 1e-12)


def test_a_cloth_sold_by_the_metre_makes_a_fourteen_come_out_larger():
    """140 stitches at 54 per 10 cm are 25.9 cm, 2 % over what 14 to the inch gives (arithmetic)."""
    size = finished_size(140, 140, 13.716)
    assert size.width == pytest.approx(140 / 54 * 100)
    assert size_in_words(size, "cm") == "25.9 × 25.9 cm"


@given(
    st.integers(1, 10_000),
    st.integers(1, 100_000_000).map(lambda n: 1 + n / 1_010_102),
    st.sampled_from([1, 2]),
)
def test_over_two_is_half_the_count(width, count, over):
    assert finished_size(width, 1, count * 2, 2).width == pytest.approx(finished_size(width, 1, count).width)
    assert finished_size(width, 1, count, over).width == pytest.approx(width * over * 25.4 / count, rel=1e-12)


@given(st.integers(1, 10_000), st.integers(1, 100))
def test_nothing_is_lost_by_rounding(stitches, count):
    """A whole number of inches is a whole number of inches, to the last bit."""
    assert finished_size(stitches * count, 1, float(count)).width == stitches * 127 / 5


@pytest.mark.parametrize(
    ("unit", "said"), [("in", "8.75 × 6.56 in"), ("cm", "22.2 × 16.7 cm")], ids=["inches", "centimetres"]
)
def test_it_is_said_in_her_unit(unit, said):
    assert size_in_words(finished_size(140, 105, 32, 2), unit) == said


def test_a_single_stitch_is_not_called_nothing():
    assert size_in_words(finished_size(1, 10_000, 100), "cm") == "under 0.1 × 254 cm"
