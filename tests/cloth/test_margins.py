"""How much cloth is left round a design."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from webapp.cloth.margins import margin
from webapp.cloth.tables import read

INCH = 25.4
MARGINS = read("margins")


# rosewoodxstitch.com/pages/fabric and anniescatalog.com (getting started): 3 in, framed and laced; lizzyb.ca:
# 2 1/2; onceinabluemoon.ca and marybeale.com/school/lesson1/how_to_read_a_chart.html: 2.
@pytest.mark.parametrize(
    ("finish", "published"), [("framed", {"RW": 3, "AN1": 3}), ("usual", {"LB": 2.5, "OB": 2, "MB": 2})]
)
def test_a_finish_has_the_largest_margin_published_for_it(finish, published):
    found = margin(finish, "hand", False, None, MARGINS)
    assert found.mm == pytest.approx(max(published.values()) * INCH)
    assert {source: inches for inches, source in MARGINS["finishes"][finish]["published"]} == published
    assert set(found.sources) == set(published)


# Common practice, no source: what the frame grips, and half an inch for what frays.
def test_the_larger_of_finish_and_frame_counts_and_what_frays_is_on_top():
    found = margin("ornament", "hoop", True, None, MARGINS)
    assert [(part.what, part.mm) for part in found.parts] == [
        ("finish", pytest.approx(25.4)),
        ("frame", pytest.approx(50.8)),
        ("frays", pytest.approx(12.7)),
    ]
    assert (found.mm, found.decided) == (pytest.approx(63.5), "frame")
    assert found.sources == ["common practice"]


def test_her_own_margin_overrules_the_finish_only():
    assert margin("framed", "hand", False, 30.0, MARGINS).mm == 30
    assert margin("framed", "hoop", False, 30.0, MARGINS).mm == pytest.approx(50.8)
    assert margin("framed", "hand", True, 0.0, MARGINS).mm == pytest.approx(12.7)


finishes, frames = st.sampled_from(list(MARGINS["finishes"])), st.sampled_from(list(MARGINS["frames"]))


@given(finishes, frames, st.booleans(), st.one_of(st.none(), st.floats(0, 1000)))
def test_a_margin_is_never_less_than_anything_that_asks(finish, frame, frays, own):
    found = margin(finish, frame, frays, own, MARGINS)
    assert found.mm >= max(part.mm for part in found.parts)
    assert found.mm <= sum(part.mm for part in found.parts)
    assert found.decided in [part.what for part in found.parts]


@pytest.mark.parametrize("own", [-1, 1001, float("nan")])
def test_an_impossible_margin_of_her_own_is_refused(own):
    with pytest.raises(ValueError, match="margin"):
        margin("framed", "hand", False, own, MARGINS)


@pytest.mark.parametrize(("finish", "frame"), [("", "hand"), ("framed", "vice")])
def test_a_finish_or_frame_that_is_not_in_the_table_is_an_error(finish, frame):
    with pytest.raises(KeyError):
        margin(finish, frame, False, None, MARGINS)
