"""What is typed into the gauge, and the vectors that bind both languages."""

import json

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.cloth.vectors import VECTORS, figures_of, named
from webapp.cloth import typed
from webapp.cloth.meant import as_reading, doubt, meant
from webapp.cloth.standards import table
from webapp.cloth.typed import PARTS, Mistyped, amount, read_back


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


@pytest.mark.parametrize("case", VECTORS["read_back"], ids=named)
def test_a_fraction_of_more_than_one_is_read_back(case):
    assert read_back(case["given"]["text"]) == case["expect"]


@pytest.mark.parametrize("case", VECTORS["meant"], ids=named)
def test_what_no_cloth_can_have_is_asked_back(case):
    line, choices, first = case["given"].values()
    try:
        mm, unit = typed.length(line["length"], line["part"], choices["unit"])
        counted = typed.counted(line["counted"], choices["kind"])
        question = doubt(as_reading(counted, mm, unit, choices, line["way"]), choices["kind"], table())
    except Mistyped as error:
        question = str(error)
    offers = [[o.change, o.count, o.sentence, o.fields] for o in meant(line, choices, table(), first)]
    assert {"question": question, "offers": offers} == case["expect"]


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


# Common practice, no source: the ways in which people write two and a quarter, or two and a half.
@pytest.mark.parametrize(
    "text", ["9/4", "2 1/4", "2-1/4", "2 - 1/4", "2\u20131/4", "2¼", "2 ¼", "2.25", "2,25", '9/4"']
)
def test_two_and_a_quarter_is_read_however_it_is_written(text):
    assert typed.length(text, "", "in") == (pytest.approx(57.15), "in")


@given(st.text(max_size=40))
def test_anything_typed_is_a_number_or_a_sentence(text):
    for read, rest in ((typed.counted, ("squares",)), (typed.length, ("", "in"))):
        said = tried(read, text, *rest)
        assert said.get("error", ".").endswith(".")
