"""Sizing, margins, packing and advice in JavaScript, in a real browser, against the vectors and Python."""

import pytest

from tests.cloth.languages import folder_of
from tests.cloth.sized import ASKED, VECTORS, disagreements, here, there


@pytest.fixture
def folder(page, server):
    page.goto(f"{server.url}/health")
    return folder_of(server.url)


@pytest.mark.parametrize("case", VECTORS, ids=lambda case: case["description"])
def test_the_answer_is_as_the_vector_says(case):
    assert here(case["ask"], case["given"]) == case["expect"]


def test_the_vectors_ask_everything():
    assert {case["ask"] for case in VECTORS} == set(ASKED)


def test_the_answers_are_as_the_vectors_say_in_a_browser(page, folder):
    found = there(page, folder, [(case["ask"], case["given"]) for case in VECTORS])
    for case, answer in zip(VECTORS, found, strict=True):
        assert answer == case["expect"], case["description"]


def test_both_languages_size_alike_to_the_last_digit(page, folder):
    assert disagreements(page, folder, cases=200, seed=11) == []
