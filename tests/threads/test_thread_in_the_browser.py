"""Thread in JavaScript, in a real browser, against the vectors and Python."""

import pytest

from tests.threads.asked import ASKED, VECTORS, disagreements, folder_of, here, same, there


@pytest.fixture
def folder(page, server):
    page.goto(f"{server.url}/health")
    return folder_of(server.url)


@pytest.mark.parametrize("case", VECTORS, ids=lambda case: case["description"])
def test_the_answer_is_as_the_vector_says(case):
    assert same(case["ask"], here(case["ask"], case["given"]), case["expect"])


def test_the_vectors_ask_everything():
    assert {case["ask"] for case in VECTORS} == set(ASKED)


def test_the_answers_are_as_the_vectors_say_in_a_browser(page, folder):
    found = there(page, folder, [(case["ask"], case["given"]) for case in VECTORS])
    for case, answer in zip(VECTORS, found, strict=True):
        assert same(case["ask"], case["expect"], answer), (case["description"], case["expect"], answer)


def test_both_languages_reckon_alike_to_the_last_digit(page, folder):
    assert disagreements(page, folder, cases=400, seed=11) == []
