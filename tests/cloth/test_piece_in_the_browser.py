"""A piece of cloth and cloth for a class in JavaScript, in a real browser, against the vectors and Python."""

import pytest

from tests.cloth.languages import folder_of
from tests.cloth.pieces import VECTORS, disagreements, here, there


@pytest.mark.parametrize("case", VECTORS, ids=lambda case: case["description"])
def test_the_answer_is_as_the_vector_says(case):
    assert here(case["ask"], case["given"]) == case["expect"]


def test_both_languages_say_the_same_to_the_last_digit(page, server):
    page.goto(f"{server.url}/health")
    folder = folder_of(server.url)
    found = there(page, folder, [(case["ask"], case["given"]) for case in VECTORS])
    for case, answer in zip(VECTORS, found, strict=True):
        assert answer == case["expect"], case["description"]
    assert disagreements(page, folder, cases=300, seed=23) == []
