"""A story's photographs: kept for her alone, deleted for good, and what cannot be kept."""

import io
from uuid import uuid4

import pytest

from tests.hours.test_pictures import picture
from tests.hours.test_story import story


@pytest.fixture
def lanterns(alice, new_project):
    return new_project(alice, width=50, height=20)


@pytest.fixture
def add(alice, lanterns, send_photograph):
    """Add a photograph to a project of Alice's."""

    def add(client=alice, **given):
        return send_photograph(client, f"/projects/{lanterns}/photographs", **given)

    return add


def test_a_photograph_is_kept_and_shown_to_her_alone(config, alice, charlie, client, lanterns, add):
    assert add(line="the lamp, half done").status_code == 303
    page = story(alice, lanterns)
    assert "the lamp, half done" in page
    address = page.split('<img src="')[1].split('"')[0]
    with alice.get(address) as answer:
        assert (answer.status_code, answer.content_type) == (200, "image/jpeg")
        assert answer.data[:2] == b"\xff\xd8"
        assert answer.headers["Cache-Control"].startswith("private")
    assert charlie.get(address).status_code == 404
    assert client.get(address).status_code == 303
    (file,) = (config.data / "photographs").iterdir()
    assert (file.stat().st_mode & 0o777, file.parent.stat().st_mode & 0o777) == (0o600, 0o700)


def test_the_same_form_sent_twice_keeps_one(config, alice, lanterns, add):
    once = str(uuid4())
    for _ in range(2):
        assert add(once=once).status_code == 303
    assert len(list((config.data / "photographs").iterdir())) == 1


def test_a_photograph_is_deleted_for_good(config, alice, charlie, lanterns, add):
    add()
    address = story(alice, lanterns).split('<img src="')[1].split('"')[0]
    away = address.replace(".jpg", "/away")
    assert charlie.post(away).status_code == 404
    assert alice.post(away).status_code == 303
    assert alice.get(address).status_code == 404
    assert list((config.data / "photographs").iterdir()) == []


@pytest.mark.parametrize(
    ("given", "sentence"),
    [
        ({"data": b"<svg/>"}, "That is no picture that can be read."),
        ({"data": b""}, "That is no picture that can be read."),
        ({"line": "x" * 201}, "Keep it to 200 characters."),
        ({"line": "a\tb"}, "Keep it to one line."),
        ({"once": "7"}, "This form is not ours any more."),
    ],
)
def test_what_cannot_be_kept_is_answered_by_a_sentence(config, add, given, sentence):
    answer = add(**given)
    assert answer.status_code == 422
    assert sentence in answer.text
    assert not (config.data / "photographs").exists()


def test_nothing_chosen_is_said(alice, lanterns):
    form = {"once": str(uuid4()), "photograph": (io.BytesIO(b""), "")}
    answer = alice.post(f"/projects/{lanterns}/photographs", data=form)
    assert (answer.status_code, "Choose a picture." in answer.text) == (422, True)


def test_several_megabytes_are_taken_and_what_is_too_much_is_not(alice, lanterns, add):
    noise = picture(kind="PNG") + bytes(3_000_000)  # what follows a picture's end is no part of it
    assert add(data=noise).status_code == 303
    assert add(data=bytes(25_100_000)).status_code == 413


def test_what_is_too_much_brings_her_back_to_the_story_with_her_line(config, add):
    answer = add(data=bytes(31_000_000), line="at the <lamp>")
    assert answer.status_code == 413
    assert "That picture has 31 MB, and 25 MB can be taken at most. Choose a smaller size" in answer.text
    assert 'value="at the &lt;lamp&gt;"' in answer.text
    assert "Add a photograph" in answer.text
    assert not (config.data / "photographs").exists()


def test_what_is_far_too_much_to_be_read_at_all_still_brings_her_back_to_the_story(alice, lanterns):
    answer = alice.post(
        f"/projects/{lanterns}/photographs",
        content_type="multipart/form-data; boundary=b",
        environ_overrides={"CONTENT_LENGTH": "900000000"},
    )
    assert answer.status_code == 413
    assert "25 MB can be taken at most. Choose a smaller size" in answer.text
    assert "Add a photograph" in answer.text
    assert "Harbour lanterns" in answer.text


def test_charlie_neither_reads_nor_adds_to_alices_story(alice, charlie, lanterns, add):
    assert charlie.get(f"/projects/{lanterns}/story").status_code == 404
    assert add(client=charlie).status_code == 404
