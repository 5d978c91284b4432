"""Amounts of thread, as she types them and as they are shown."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.threads.lines import COTTON, KINDS
from tests.threads.stashed import plain
from webapp.cloth.typed import Mistyped
from webapp.threads import amounts

YARD = Fraction(9144, 10)  # mm, by definition: 3 feet of 304.8 mm


@pytest.mark.parametrize(
    ("text", "number"), [("2", 2), ("1/2", 0.5), ("1 1/2", 1.5), ("½", 0.5), ("0,25", 0.25), ("0", 0)]
)
def test_skeins_are_read_whole_and_part(text, number):
    assert amounts.skeins(text, COTTON) == number


@pytest.mark.parametrize("text", ["-1", "some", "2 in", "1000", "1e3", "nan"])
def test_skeins_that_cannot_be_meant_are_refused_with_a_sentence(text):
    with pytest.raises(Mistyped, match=r"^Write "):
        amounts.skeins(text, COTTON)


def test_beads_are_counted_whole():
    assert amounts.skeins("120", KINDS["beads"]) == 120
    with pytest.raises(Mistyped, match="Write how many beads in digits"):
        amounts.skeins("1 1/2", KINDS["beads"])


@pytest.mark.parametrize(
    ("text", "unit", "mm"),
    [
        ("2.5 m", "in", 2500),
        ("2.5", "cm", 2500),
        ("3", "in", 3 * YARD),
        ("3 yards", "cm", 3 * YARD),
        ("1 yd + 2 x 18 in", "cm", YARD + 2 * Fraction(4572, 10)),
        ("4 x 45 cm", "in", 1800),
        ("3×40cm", "cm", 1200),
        ("1 1/2 yd", "in", YARD * 3 / 2),
        ("0", "in", 0),
    ],
)
def test_lengths_are_read_as_she_writes_them(text, unit, mm):
    assert amounts.lengths(text, unit) == pytest.approx(float(mm), abs=1e-6)


@pytest.mark.parametrize("text", ["", "a piece", "-2 m", "2 cm m", "3 x", "9999 km", "99999 m", "x 2 m"])
def test_lengths_that_cannot_be_meant_are_refused(text):
    with pytest.raises(Mistyped):
        amounts.lengths(text, "cm")


@pytest.mark.parametrize(
    ("skeins", "lengths", "said"),
    [
        (1, 0, "1 skein"),
        (1.5, 2000, "1½ skeins and 2 m"),
        (0, 450, "0.5 m"),
        (0, 0, "nothing left"),
        (0.3, 0, "0.3 skein"),
    ],
)
def test_what_there_is_is_said_in_few_words(skeins, lengths, said):
    assert plain(amounts.of_kept(skeins, lengths, COTTON, "cm")) == said


@given(st.floats(0, 999), st.floats(0, 1e6), st.sampled_from(["in", "cm"]))
def test_what_a_field_shows_is_read_back_as_it_was(skeins, mm, unit):
    assert amounts.skeins(amounts.typed_skeins(skeins), COTTON) == pytest.approx(skeins, abs=5e-5)
    assert amounts.lengths(amounts.typed_length(mm, unit) or "0", unit) == pytest.approx(mm, abs=0.51)


def test_a_range_of_lengths_is_rounded_outward():
    assert plain(amounts.between((6120, 8930), "cm")) == "6.1 to 9 m"
    assert plain(amounts.between((6100, 6100), "cm")) == "6.1 m"


def test_skeins_and_lengths_come_to_thread_as_it_is_sold():
    assert amounts.as_sold(1.5, 500, COTTON) == 1.5 * 8000 + 500  # a skein of 8 m: TRADE [M1]
    assert amounts.as_sold(60, 0, KINDS["beads"]) == 60
