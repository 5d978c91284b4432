"""Where she stopped: said as a project is put to rest, and what helps her back in."""

import io
from uuid import uuid4

import pytest
from PIL import Image

from tests.hours.test_pictures import picture
from webapp.journal.audit import differences


@pytest.fixture
def lanterns(alice, new_project):
    return new_project(alice, width=50, height=20)


@pytest.fixture
def stop(alice, lanterns, send_photograph):
    """Say where Alice stopped."""

    def stop(client=alice, data=None, **given):
        return send_photograph(client, f"/projects/{lanterns}/stopped", data=data, **given)

    return stop


def snapshot(client, project):
    return client.get(f"/projects/{project}/snapshot").json


def helps(client, project):
    return client.get(f"/projects/{project}/stopped.json").json


def test_put_to_rest_a_project_offers_to_say_it(alice, lanterns):
    state, link = f"/projects/{lanterns}/state", f'href="/projects/{lanterns}/stopped"'
    assert link not in alice.post(state, data={"state": "in hand"}).text
    assert link in alice.post(state, data={"state": "resting"}).text
    assert link in alice.get(f"/projects/{lanterns}").text
    page = alice.get(f"/projects/{lanterns}/stopped").text
    assert 'type="file"' in page
    assert 'capture="environment"' in page


def test_a_line_is_kept_without_a_photograph(app, alice, lanterns, stop):
    answer = stop(line="lamp next")
    assert (answer.status_code, answer.location) == (303, f"/projects/{lanterns}")
    assert snapshot(alice, lanterns)["note"] == {"text": "lamp next", "at": "2026-02-13T22:00:00.000Z"}
    assert "lamp next" in alice.get(f"/projects/{lanterns}/story").text
    with app.app_context():
        assert list(differences()) == []


def test_a_form_sent_to_another_project_is_answered_by_a_sentence(alice, new_project, stop, send_photograph):
    once = str(uuid4())
    assert stop(line="lamp next", once=once).status_code == 303
    other = new_project(alice, title="Quince tree")
    answer = send_photograph(alice, f"/projects/{other}/stopped", data=None, line="leaves left", once=once)
    assert (answer.status_code, "This form is not ours any more." in answer.text) == (422, True)
    assert "leaves left" in answer.text


def test_it_ends_no_sitting_and_takes_no_time(alice, lanterns, lay, sit, figures, stop):
    sit(alice, lanterns, "2026-02-10T20:00", "2026-02-10T21:00")
    lay(alice, lanterns, {"kind": "begin", "at": "2026-02-13T21:50:00.000Z"})
    before = figures(alice)
    stop(line="lamp next")
    assert snapshot(alice, lanterns)["sitting"] is not None
    assert figures(alice) == before


def test_a_photograph_is_kept_with_its_line_or_alone(alice, lanterns, stop):
    assert stop(data=picture()).status_code == 303
    assert snapshot(alice, lanterns)["note"] is None
    assert stop(data=picture(), line="lamp next").status_code == 303
    assert snapshot(alice, lanterns)["note"]["text"] == "lamp next"
    page = alice.get(f"/projects/{lanterns}/story").text
    assert page.count("Delete this photograph for good") == 2
    assert (
        page.count("lamp next") == 1 + 1 + 1
    )  # her line, not again under the picture; its alt; its place in the list


def test_the_same_form_sent_twice_is_one_line(alice, lanterns, stop):
    once = str(uuid4())
    for _ in range(2):
        assert stop(line="lamp next", data=picture(), once=once).status_code == 303
    assert snapshot(alice, lanterns)["revision"] == 1
    assert alice.get(f"/projects/{lanterns}/story").text.count("Delete this photograph for good") == 1


@pytest.mark.parametrize(
    ("given", "sentence"),
    [
        ({}, "Write a line, or take a photograph."),
        ({"line": "x" * 201}, "Keep it to 200 characters."),
        ({"line": "lamp", "data": b"no picture"}, "That is no picture that can be read."),
        ({"line": "lamp", "once": "7"}, "This form is not ours any more."),
    ],
)
def test_what_cannot_be_kept_is_answered_by_a_sentence_and_nothing_is(alice, lanterns, stop, given, sentence):
    answer = stop(**given)
    assert (answer.status_code, sentence in answer.text) == (422, True)
    assert given.get("line", "") in answer.text
    assert snapshot(alice, lanterns)["revision"] == 0


def test_a_plain_form_without_a_file_will_do(alice, lanterns):
    answer = alice.post(f"/projects/{lanterns}/stopped", data={"once": str(uuid4()), "line": "lamp next"})
    assert answer.status_code == 303


def test_it_gives_the_needle_and_strands_of_its_cloth(alice, new_project):
    fine = helps(alice, new_project(alice, count=28, over=2))
    assert (fine["needle"]["usual"], fine["strands"], fine["photograph"]) == (
        24,
        2,
        None,
    )  # TRADE: as on 14 count
    coarse = helps(alice, new_project(alice, count=8, over=1))
    assert coarse["needle"]["usual"] < 24
    assert coarse["strands"] > 2


def test_it_gives_the_last_photograph(alice, lanterns, stop, friday_evening):
    stop(data=picture(), line="one")
    friday_evening.shift(60)
    stop(data=picture(), line="two")
    found = helps(alice, lanterns)["photograph"]
    assert (found["line"], found["at"]) == ("two", "2026-02-13T22:01:00.000Z")
    with alice.get(found["href"]) as answer:
        assert answer.content_type == "image/jpeg"
        size = Image.open(io.BytesIO(answer.data)).size
    assert (found["width"], found["height"]) == size


def test_charlie_neither_reads_nor_says_anything_of_alices(app, alice, charlie, client, lanterns, stop):
    assert stop(client=charlie, line="mine").status_code == 404
    for path in ("stopped", "stopped.json"):
        assert charlie.get(f"/projects/{lanterns}/{path}").status_code == 404
    assert client.get(f"/projects/{lanterns}/stopped.json").status_code == 401
    assert snapshot(alice, lanterns)["note"] is None
