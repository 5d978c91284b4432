"""What is typed into the gauge, and the vectors that bind both languages."""

import json

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.cloth.vectors import VECTORS, figures_of, named
from webapp.cloth import typed
from webapp.cloth.typed import PARTS, Mistyped, amount


def tried(read, *given):
    try:
        return {"read": json.loads(json.dumps(read(*given)))}
    except Mistyped as error:
        return {"error": str(error)}


@pytest.mark.parametrize("case", VECTORS["counted"], ids=named)
def test_a_count_as_typed(case):
    assert tried(typed.counted, *case["given"].values()) == case["expect"]


@pytest.mark.parametrize("case", VECTORS["length"], ids=named)
def test_a_length_as_typed(case):
    assert tried(typed.length, *case["given"].values()) == case["expect"]


@pytest.mark.parametrize("case", VECTORS["answers"], ids=named)
def test_an_answer_as_the_vectors_say(case):
    shown = figures_of(case["given"])
    for key, expected in case["expect"].items():
        if isinstance(expected, float):
            assert shown[key] == pytest.approx(expected, rel=1e-9), key
        else:
            assert shown[key] == expected, key


@given(
    st.integers(0, 40),
    st.sampled_from(PARTS),
    st.sampled_from([" ", "  ", "\u00a0"]),
    st.sampled_from(["", " in", '"']),
)
def test_an_eighth_or_sixteenth_is_read_as_one(whole, part, space, unit):
    top, bottom = map(int, part.split("/"))
    assert amount(f"{whole}{space}{part}{unit}", "2")[0] == whole + top / bottom


@given(st.decimals(0, 999, places=2), st.sampled_from([".", ","]))
def test_a_comma_is_a_decimal_point(number, point):
    assert amount(str(number).replace(".", point), "2")[0] == float(number)


@given(st.text(max_size=40))
def test_anything_typed_is_a_number_or_a_sentence(text):
    for read, rest in ((typed.counted, ("squares",)), (typed.length, ("", "in"))):
        said = tried(read, text, *rest)
        assert said.get("error", ".").endswith(".")
