"""Cloth that was dyed, stretched or sold by another figure, and what it may be taken for."""

import pytest

from tests.cloth.test_naming import asked, ruled_out
from webapp.cloth.saying import sentences


# kittenstitcher.com: a dyed 32 may shrink to 34 or 35.
def test_a_shrunken_32_is_not_called_32():
    assert 32 in ruled_out(asked(138, 4, "threads"))


# lordlibidan.com: a 14 stretched on a frame read about 12.
def test_a_stretched_14_is_not_called_14():
    assert 14 in ruled_out(asked(48, 4))


def changes(found):
    return dict(sentences(found)).get("changed", ""), dict(sentences(found))["verdict"]


# kittenstitcher.com: a dyed 32 may shrink to 34 or 35, which is a count that is sold too, but seldom.
@pytest.mark.parametrize("counted", [138, 139])
def test_a_35_may_be_a_32_that_shrank_and_is_sure_only_as_measured(counted):
    said, verdict = changes(asked(counted, 4, "threads"))
    assert "a 32 that shrank in dyeing" in said
    assert verdict != "Sure."


# lordlibidan.com: a 14 stretched on a frame read about 12.
def test_a_12_may_be_a_14_that_was_stretched_and_is_sure_only_as_measured():
    said, verdict = changes(asked(48, 4))
    assert said.endswith("or a 14 stretched on a frame.")
    assert verdict == "Sure, as measured."


# angolostefania.it/main/?p=148: 120 threads per 10 cm are sold as 28 as well.
@pytest.mark.parametrize("how", [{}, {"pins": True}])
def test_120_in_10_cm_may_be_sold_as_28(how):
    assert "a 28 (120 per 10 cm is sold as 28)" in changes(asked(120, 10, "threads", "cm", **how))[0]


@pytest.mark.parametrize(
    ("counted", "kind"), [(56, "squares"), (64, "squares"), (112, "threads"), (128, "threads")]
)
def test_a_usual_count_is_not_put_in_doubt_by_what_might_have_been(counted, kind):
    assert changes(asked(counted, 4, kind))[0] == ""


def test_what_may_have_shrunk_to_it_is_not_called_ruled_out_beside_it():
    assert dict(sentences(asked(138, 4, "threads")))["rest"] == "36 is ruled out."
