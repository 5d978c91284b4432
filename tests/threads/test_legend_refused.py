"""What a legend and its lines refuse: what cannot be meant, what is no form, and what is another's."""

from uuid import uuid4

import pytest

from tests.threads.legend_forms import MADDER, keep, paste, rows, settle


@pytest.mark.parametrize(
    ("field", "typed", "sentence"),
    [
        ("thread", "", "Write what the thread is called"),
        ("thread", "\u200b", "Write what the thread is called"),
        ("thread", "x" * 101, "it has 101 characters, and 100 fit"),
        ("thread", "Walnut + Silver", "give each a place of its own"),
        ("symbol", "x" * 13, "Shorten the symbol"),
        ("colour", "red", "Pick a colour"),
        ("colour", 'url("x")', "Pick a colour"),
        ("kind", "hemp", "Choose one of the kinds of thread."),
        ("strands", "0", "from 1 to 24"),
        ("strands", "25", "from 1 to 24"),
        ("strands", "two", "from 1 to 24"),
        ("full", "-1", "Write full stitches in whole numbers, like 1,240."),
        ("full", "1e3", "Write full stitches in whole numbers, like 1,240."),
        ("full", "9" * 9, "Write 10,000,000 at most."),
        ("full", "٣", "Write full stitches in whole numbers, like 1,240."),
        ("back", "half", "Write backstitch as lengths of one stitch"),
        ("lots", ",".join("1234567"), "Write 6 lots at most."),
        ("method", "sideways", "Choose how it is worked"),
        ("scatter", "everywhere", "Choose how they lie"),
        ("working", "1 in", "A working length is from"),
        ("working", "long", "Write a length"),
        ("patches", "-", ""),
        ("note", "x" * 501, "it has 501 characters, and 500 fit"),
        ("note", "a\x00b", "without tabs or control characters"),
        ("id", "x", "This form was damaged on the way."),
        ("strands2", "24", "Write what the thread is called"),
    ],
)
def test_what_cannot_be_meant_is_a_sentence_and_nothing_is_kept(
    app, alice, new_project, field, typed, sentence
):
    project = new_project(alice)
    answer = alice.post(f"/projects/{project}/thread/lines", data={**MADDER, "strands": "2", field: typed})
    if not sentence:
        assert answer.status_code == 303
        return
    assert answer.status_code == 422
    assert sentence in answer.text
    assert rows(app, project) == []
    if field not in ("symbol", "id"):
        assert 'value="X"' in answer.text  # what was typed is there


@pytest.mark.parametrize("body", [b"thread=%ff%fe", b"\xff\xfe=\xff", b"", b"[1]", b"was=%00&thread=x%00"])
def test_what_is_no_form_keeps_nothing(app, alice, new_project, body):
    project = new_project(alice)
    form = {"data": body, "content_type": "application/x-www-form-urlencoded"}
    assert alice.post(f"/projects/{project}/thread/lines", **form).status_code in (400, 422)
    id = keep(alice, project)
    alice.post(f"/projects/{project}/thread/lines/{id}", **form)
    assert rows(app, project)[0].key == "Madder"


def test_markup_is_text(alice, new_project):
    project = new_project(alice)
    id = keep(alice, project, thread="<script>alert(1)</script>", symbol="<b>", note="</textarea><img src=x>")
    for address in ("", f"/lines/{id}", "/readings"):
        page = alice.get(f"/projects/{project}/thread{address}").text
        assert "<script>alert" not in page
        assert "<img" not in page
        assert "&lt;script&gt;" in page


def test_five_hundred_lines_are_a_legend_and_one_more_is_not(app, alice, new_project):
    project = new_project(alice)
    text = "symbol;thread;full\n" + "\n".join(f"{n};Shade {n};{n}" for n in range(500))
    assert settle(alice, project, paste(alice, project, text)).status_code == 303
    answer = alice.post(f"/projects/{project}/thread/lines", data={"thread": "One more"})
    assert answer.status_code == 422
    assert "The legend is full: 500 lines fit." in answer.text
    assert len(rows(app, project)) == 500


def test_charlie_finds_nothing_of_hers(app, alice, charlie, new_project):
    project = new_project(alice)
    id = keep(alice, project)
    address = f"/projects/{project}/thread"
    for path in ("", ".csv", ".json", "/paste", "/readings", "/lines/new", f"/lines/{id}"):
        answer = charlie.get(address + path)
        assert (answer.status_code, "Madder" in answer.text) == (404, False)
    for path in (
        "",
        "/paste",
        "/readings",
        "/lines",
        f"/lines/{id}",
        f"/lines/{id}/move",
        f"/lines/{id}/remove",
    ):
        assert charlie.post(address + path, data={**MADDER, "full": "1"}).status_code == 404
    own = new_project(charlie)
    assert charlie.get(f"/projects/{own}/thread/lines/{id}").status_code == 404
    assert rows(app, project)[0].full == 1240


def test_a_stranger_is_asked_to_sign_in_and_a_script_is_told(client, alice, new_project):
    address = f"/projects/{new_project(alice)}/thread"
    assert client.get(address).location.startswith("/sign-in?next=")
    assert client.get(f"{address}.json").status_code == 401


def test_a_line_that_is_not_there_is_not_found(alice, new_project):
    address = f"/projects/{new_project(alice)}/thread/lines/{uuid4()}"
    assert alice.get(address).status_code == alice.post(address).status_code == 404
    assert alice.post(f"{address}/remove").status_code == 404
