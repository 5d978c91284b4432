"""Thread in the stash: kept, a dozen in a row, changed, counted again, put away."""

import re
from datetime import UTC, datetime, timedelta
from uuid import uuid4

import pytest
import time_machine

from tests.threads.stashed import legend, line
from webapp.db import db
from webapp.threads.models import KeptThread

MOSS = {
    "thread": "Moss 12",
    "kind": "cotton",
    "skeins": "1 1/2",
    "lengths": "2 m",
    "lot": "7A",
    "note": "From Bob.",
}
NOON = datetime(2026, 2, 3, 12, tzinfo=UTC)


def keep(client, **fields):
    id = uuid4()
    answer = client.post("/thread/stash", data={**MOSS, **fields, "id": str(id)})
    assert answer.status_code == 303, answer.text
    return id


def rows(app) -> list[KeptThread]:
    with app.app_context():
        return list(db.session.scalars(db.select(KeptThread).order_by(KeptThread.created)))


def test_a_thread_is_kept_as_it_was_said(app, alice):
    keep(alice, coloured="yes", colour="#556B2F")
    (row,) = rows(app)
    assert (row.thread, row.kind, row.skeins, row.lengths, row.lot) == ("Moss 12", "cotton", 1.5, 2000, "7A")
    assert (row.colour, row.note) == ("#556B2F", "From Bob.")
    page = alice.get("/thread/stash").text
    for said in ("Moss 12", "Lot <bdi>7A</bdi>", "1½ skeins and 2.2\N{NO-BREAK SPACE}yd", "#556B2F"):
        assert said in page


def test_a_name_is_enough_and_means_one_skein_of_cotton(app, alice):
    assert alice.post("/thread/stash", data={"thread": "Moss 12"}).status_code == 303
    (row,) = rows(app)
    assert (row.kind, row.skeins, row.lengths, row.colour, row.lot) == ("cotton", 1, 0, None, "")


def test_a_name_of_her_legend_is_of_its_kind_and_colour(app, alice, new_project):
    legend(app, new_project(alice), line("Plum", kind="silk", colour="#5b2a4a"))
    alice.post("/thread/stash", data={"thread": "PLUM"})
    (row,) = rows(app)
    assert (row.kind, row.colour) == ("silk", "#5b2a4a")


def test_a_dozen_skeins_are_kept_in_a_row_with_a_name_and_a_touch_each(app, alice):
    page = alice.get("/thread/stash/new?kind=silk")
    for n in range(12):
        id = re.search(r'name="id" value="([^"]+)"', page.text).group(1)
        kind = re.search(r'<option value="(\w*)" selected', page.text).group(1)
        answer = alice.post(
            "/thread/stash", data={"id": id, "thread": f"Silk {n}", "kind": kind, "next": "yes"}
        )
        assert answer.status_code == 303
        page = alice.get(answer.location)
        assert f"Silk {n}</bdi></a>, 1 skein." in page.text
    assert [(row.thread, row.kind) for row in rows(app)] == [(f"Silk {n}", "silk") for n in range(12)]


def test_the_names_of_her_legends_are_offered_and_what_she_uses_instead(app, alice, charlie, new_project):
    legend(app, new_project(alice), line("Moss 12"), line("Fern 3", instead="Fern green"))
    page = alice.get("/thread/stash/new").text
    assert re.findall(r'<option value="([^"]+)"></option>', page) == ["Fern 3", "Fern green", "Moss 12"]
    assert "Moss 12" not in charlie.get("/thread/stash/new").text


def test_a_form_sent_twice_keeps_one(app, alice):
    id = keep(alice)
    alice.post("/thread/stash", data={**MOSS, "id": str(id)})
    assert len(rows(app)) == 1


def test_it_is_counted_when_there_is_more_or_less_of_it_or_she_says_so(app, alice):
    with time_machine.travel(NOON, tick=False) as clock:
        id = keep(alice, lengths="1 yd")
        clock.shift(timedelta(days=1))
        form = {"thread": "Moss 12", "skeins": "1.5", "lengths": "1 yd", "note": "Washed."}
        alice.post(f"/thread/stash/{id}", data=form)
        assert rows(app)[0].counted == NOON, "nothing was counted"
        alice.post(f"/thread/stash/{id}", data=form | {"again": "yes"})
        assert rows(app)[0].counted == NOON + timedelta(days=1)
        clock.shift(timedelta(days=1))
        alice.post(f"/thread/stash/{id}", data=form | {"skeins": "1"})
    (row,) = rows(app)
    assert (row.counted, row.skeins) == (NOON + timedelta(days=2), 1)


def test_what_is_not_sent_stays_and_what_is_sent_empty_is_emptied(app, alice):
    id = keep(alice, coloured="yes", colour="#556b2f")
    assert alice.post(f"/thread/stash/{id}", data={"lot": "", "lengths": ""}).status_code == 303
    (row,) = rows(app)
    assert (row.thread, row.skeins, row.lengths, row.lot, row.colour) == ("Moss 12", 1.5, 0, "", "#556b2f")


def test_the_form_gives_back_what_was_kept(app, alice):
    id = keep(alice, lengths="3.3 yd")
    page = alice.get(f"/thread/stash/{id}").text
    fields = dict(re.findall(r'name="(\w+)" type="text" value="([^"]*)"', page))
    assert fields == {"thread": "Moss 12", "skeins": "1.5", "lot": "7A", "lengths": "3.3 yd"}
    before = rows(app)[0]
    alice.post(f"/thread/stash/{id}", data=fields | {"kind": "cotton"})
    assert (rows(app)[0].lengths, rows(app)[0].counted) == (before.lengths, before.counted)


def test_it_is_put_away_and_taken_out_and_never_deleted(alice):
    id = keep(alice)
    alice.post(f"/thread/stash/{id}/away", data={"away": "yes"})
    assert "Moss 12" not in alice.get("/thread/stash").text
    assert "Put away (1)" in alice.get("/thread/stash").text
    assert "Moss 12" in alice.get("/thread/stash/put-away").text
    alice.post(f"/thread/stash/{id}/away", data={"away": "no"})
    assert "Moss 12" in alice.get("/thread/stash").text


@pytest.mark.parametrize(
    ("field", "typed", "sentence"),
    [
        ("thread", "", "Write what the thread is called, as on its band."),
        ("thread", "a\tb", "Keep the name to one line"),
        ("thread", "\u200b", "Give it a name that can be seen."),
        ("thread", "x" * 101, "Shorten the name: it has 101 characters, and 100 fit."),
        ("kind", "string", "Choose one of those shown."),
        ("skeins", "lots", "Write how many, like 2, 1/2 or 1 1/2."),
        ("skeins", "-1", "Write how many, like 2, 1/2 or 1 1/2."),
        ("skeins", "5000", "Write 999 at most."),
        ("lengths", "some", "Write a length, like 2.5 m, 3 yards or 4 x 45 cm."),
        ("lengths", "9" * 9999, "Write a length, like 2.5 m, 3 yards or 4 x 45 cm."),
        ("lengths", "99999", "Lengths are from nothing to 10 km."),
        ("lot", "x" * 41, "Shorten the lot: 40 characters fit."),
        ("lot", "a\nb", "Keep the lot to one line."),
        ("colour", "red", "Pick a colour."),
        ("note", "x" * 501, "Shorten the note: it has 501 characters"),
        ("id", "x", "This form was damaged on the way. Begin once more."),
    ],
)
def test_what_cannot_be_meant_is_a_sentence_and_nothing_is_kept(app, alice, field, typed, sentence):
    page = alice.post("/thread/stash", data={**MOSS, "coloured": "yes", "colour": "#556b2f", field: typed})
    assert page.status_code == 422
    assert sentence in page.text
    assert 'value="7A"' in page.text or field == "lot"  # what was typed is kept
    assert rows(app) == []


def test_beads_are_counted_and_have_no_length(app, alice):
    keep(alice, thread="Pearl beads", kind="beads", skeins="60", lengths="")
    assert "60 beads" in alice.get("/thread/stash").text
    page = alice.post("/thread/stash", data={**MOSS, "kind": "beads", "skeins": "60"})
    assert (page.status_code, len(rows(app))) == (422, 1)
    assert "Beads are counted: write their number, and no length." in page.text


@pytest.mark.parametrize("body", [b"thread=%ff%fe", b"\xff\xfe=\xff", b"", b"thread", b"[1]"])
def test_what_is_no_form_keeps_nothing(app, alice, body):
    answer = alice.post("/thread/stash", data=body, content_type="application/x-www-form-urlencoded")
    assert answer.status_code in (400, 422)
    assert rows(app) == []


def test_markup_is_text(alice):
    keep(alice, thread="<script>alert(1)</script>", note="<img src=x>", lot="<b>")
    page = alice.get("/thread/stash").text
    assert "<script>alert" not in page
    assert "<b></bdi>" not in page
    assert "&lt;script&gt;" in page


def test_another_stitchers_thread_is_not_there(app, alice, charlie):
    id = keep(alice)
    for ask in (
        charlie.get(f"/thread/stash/{id}"),
        charlie.post(f"/thread/stash/{id}", data={"thread": "Mine"}),
        charlie.post(f"/thread/stash/{id}/away"),
    ):
        assert ask.status_code == 404
    for address in ("/thread/stash", "/thread/stash/put-away", f"/thread/stash/new?kept={id}"):
        assert "Moss 12" not in charlie.get(address).text
    assert [row.thread for row in rows(app)] == ["Moss 12"]


@pytest.mark.parametrize("query", ["kept=x", "kind=<b>", "thread=%ff", "lot=" + "x" * 999])
def test_an_address_that_says_nonsense_asks_all_the_same(alice, query):
    page = alice.get(f"/thread/stash/new?{query}")
    assert page.status_code == 200
    assert "<b>" not in page.text.split("<datalist")[0].split("<main")[1]


def test_a_change_that_is_not_text_changes_nothing(app, alice):
    id = keep(alice)
    form = {"data": b"thread=%ff%fe", "content_type": "application/x-www-form-urlencoded"}
    assert alice.post(f"/thread/stash/{id}", **form).status_code == 400
    assert rows(app)[0].thread == "Moss 12"
