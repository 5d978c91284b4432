"""Her projects against the cloth that was measured: on such a one, or of the same size on it."""

import pytest

from tests.cloth.gauged import ask


def test_those_on_such_a_cloth_or_of_the_same_size_are_said(alice, new_project):
    on_it = new_project(alice, title="Harbour lanterns", count=28, over=2)
    same = new_project(alice, title="Quince tree", count=14, over=1)
    new_project(alice, title="Winter barn", count=18, over=1)
    said = alice.get("/cloth/gauge/projects?count=28&low=27.5&high=28.5").text
    assert f'href="/projects/{on_it}"' in said
    assert f'href="/projects/{same}"' in said
    assert "on such a cloth" in said
    assert "the same size over two" in said
    assert "Winter barn" not in said


def test_the_page_itself_says_them_too(alice, new_project):
    new_project(alice, title="Harbour lanterns", count=14)
    assert "Harbour lanterns" in ask(alice, "28", "2").text


def test_none_is_said_so(alice, new_project):
    new_project(alice, title="Winter barn", count=18)
    assert "None of your projects" in alice.get("/cloth/gauge/projects?count=28").text


def test_charlie_sees_nothing_of_alices(alice, charlie, client, new_project):
    new_project(alice, title="Harbour lanterns", count=14)
    for other in (charlie, client):
        assert "Harbour lanterns" not in other.get("/cloth/gauge/projects?count=14").text
        assert "Harbour lanterns" not in ask(other, "28", "2").text


@pytest.mark.parametrize(
    "query", ["", "count=nan", "count=500", "count=x", "count=14&low=15", "count=14&high=inf"]
)
def test_a_count_that_cannot_be_is_refused(alice, query):
    assert alice.get(f"/cloth/gauge/projects?{query}").status_code == 422
