"""Cloth in the stash: kept, changed, put away, and found for a project."""

import re
from uuid import uuid4

import pytest

from webapp.cloth.models import KeptCloth
from webapp.db import db

LINEN = {
    "name": "Undyed linen",
    "kind": "threads",
    "along": "28.1",
    "along_error": "0.4",
    "across": "27,4",
    "across_error": "0.5",
    "width": "17 1/2",
    "length": "66 cm",
    "note": "Selvedge on the left.",
}


def keep(client, **fields):
    """Keep a cloth; gives its id."""
    id = uuid4()
    answer = client.post("/cloth/stash", data={**LINEN, **fields, "id": str(id)})
    assert answer.status_code == 303, answer.text
    return id


def rows(app) -> list[KeptCloth]:
    with app.app_context():
        return list(db.session.scalars(db.select(KeptCloth)))


def test_a_cloth_is_kept_as_it_was_measured(app, alice):
    keep(alice)
    (row,) = rows(app)
    assert (row.along, row.along_error, row.across, row.across_error) == (28.1, 0.4, 27.4, 0.5)
    assert (row.width, row.length) == pytest.approx((444.5, 660))
    page = alice.get("/cloth/stash").text
    for said in ("Undyed linen", "28.1 ± 0.4 threads an inch along, 27.4 ± 0.5 across", "17½ × 26 in"):
        assert said in page


def test_a_count_is_enough(app, alice):
    assert alice.post("/cloth/stash", data={"along": "14"}).status_code == 303
    (row,) = rows(app)
    assert (row.name, row.kind, row.across, row.width, row.note) == ("14 count", "squares", None, None, "")
    assert "14 squares an inch, as sold" in alice.get("/cloth/stash").text


def test_a_form_sent_twice_keeps_one(app, alice):
    id = keep(alice)
    alice.post("/cloth/stash", data={**LINEN, "id": str(id)})
    assert len(rows(app)) == 1


def test_it_is_changed_and_what_is_not_sent_stays(app, alice):
    id = keep(alice)
    assert alice.post(f"/cloth/stash/{id}", data={"name": "Linen, washed", "across": ""}).status_code == 303
    (row,) = rows(app)
    assert (row.name, row.along, row.across, row.across_error) == ("Linen, washed", 28.1, None, None)
    assert row.width == pytest.approx(444.5, abs=0.002)


def test_the_form_gives_back_what_was_kept(app, alice):
    id = keep(alice, width="17 1/8")
    page = alice.get(f"/cloth/stash/{id}").text
    fields = dict(re.findall(r'name="(\w+)" type="text" value="([^"]*)"', page))
    assert (fields["width"], fields["along"], fields["along_error"]) == ("17.125", "28.1", "0.4")
    alice.post(f"/cloth/stash/{id}", data=fields)
    assert rows(app)[0].length == pytest.approx(660, abs=0.002)


def test_it_is_put_away_and_taken_out_and_never_deleted(app, alice):
    id = keep(alice)
    alice.post(f"/cloth/stash/{id}/away", data={"away": "yes"})
    assert "Undyed linen" not in alice.get("/cloth/stash").text
    assert "Put away (1)" in alice.get("/cloth/stash").text
    assert "Undyed linen" in alice.get("/cloth/stash/put-away").text
    alice.post(f"/cloth/stash/{id}/away", data={"away": "no"})
    assert "Undyed linen" in alice.get("/cloth/stash").text


@pytest.mark.parametrize(
    ("field", "typed", "sentence"),
    [
        ("name", "a\tb", "Keep the name to one line"),
        ("name", "\u200b", "Give it a name that can be seen."),
        ("name", "x" * 121, "Shorten the name: it has 121 characters"),
        ("kind", "holes", "Choose one of those shown."),
        ("along", "", "Write a count from 1 to 100, like 14 or 27.5."),
        ("along", "500", "Write a count from 1 to 100, like 14 or 27.5."),
        ("along", "1e1", "Write a count from 1 to 100, like 14 or 27.5."),
        ("across", "nan", "Write a count from 1 to 100, like 14 or 27.5."),
        ("along_error", "-1", "Write how far the count may be off, like 0.4."),
        ("along_error", "inf", "Write how far the count may be off, like 0.4."),
        ("width", "wide", "Write a length, like 18, 17 1/2 or 45 cm."),
        ("length", "9" * 6, "Cloth is measured from half an inch to 109 yards."),
        ("length", "9" * 9999, "Write a length, like 18, 17 1/2 or 45 cm."),
        ("note", "x" * 501, "Shorten the note: it has 501 characters"),
        ("note", "a\x00b", "Write the note without tabs or control characters."),
        ("id", "x", "This form was damaged on the way. Begin once more."),
    ],
)
def test_what_cannot_be_meant_is_a_sentence_and_nothing_is_kept(app, alice, field, typed, sentence):
    page = alice.post("/cloth/stash", data={**LINEN, field: typed})
    assert page.status_code == 422
    assert sentence in page.text
    assert 'value="28.1"' in page.text or field == "along"  # what was typed is kept
    assert rows(app) == []


@pytest.mark.parametrize("body", [b"along=14&name=%ff%fe", b"\xff\xfe=\xff", b"", b"along", b"[1]"])
def test_what_is_no_form_keeps_nothing(app, alice, body):
    answer = alice.post("/cloth/stash", data=body, content_type="application/x-www-form-urlencoded")
    assert answer.status_code in (400, 422)
    assert rows(app) == []


def test_ten_megabytes_are_refused(app, alice):
    assert alice.post("/cloth/stash", data={**LINEN, "note": "x" * 10_000_000}).status_code == 413
    assert rows(app) == []


def test_markup_is_text(alice):
    keep(alice, name="<script>alert(1)</script>", note="<img src=x>")
    page = alice.get("/cloth/stash").text
    assert "<script>alert" not in page
    assert "<img" not in page
    assert "&lt;script&gt;" in page


def test_another_stitchers_cloth_is_not_there(app, alice, charlie):
    id = keep(alice)
    for ask in (
        charlie.get(f"/cloth/stash/{id}"),
        charlie.post(f"/cloth/stash/{id}", data={"name": "Mine"}),
        charlie.post(f"/cloth/stash/{id}/away"),
    ):
        assert ask.status_code == 404
    for address in ("/cloth/stash", "/cloth/stash/put-away"):
        assert "Undyed linen" not in charlie.get(address).text
    assert charlie.post("/cloth/stash", data={"along": "14", "id": str(id)}).status_code == 303  # her own
    assert {row.name for row in rows(app)} == {"Undyed linen", "14 count"}
    assert alice.get(f"/cloth/stash/{id}").status_code == 200


def test_the_gauge_hands_over_what_it_measured(alice, client):
    query = "kind=threads&counted=112&length=4&way=along&counted=108&length=4&way=across"
    assert "Keep this cloth" in alice.get(f"/cloth/gauge?{query}").text
    assert "Keep this cloth" not in client.get(f"/cloth/gauge?{query}").text
    page = alice.get(f"/cloth/stash/new?{query}").text
    fields = dict(re.findall(r'name="(\w+)" type="text" value="([^"]*)"', page))
    figures = client.get(f"/cloth/gauge.json?{query.replace('counted', 'threads')}").json
    for way in ("along", "across"):
        assert float(fields[way]) == pytest.approx(figures[way]["count_per_inch"], abs=0.005)
        count, high = figures[way]["count_per_inch"], figures[way]["high_per_inch"]
        assert high - count <= float(fields[f"{way}_error"]) <= high - count + 0.01  # the longer side
    assert 'value="threads" checked' in page


@pytest.mark.parametrize("query", ["counted=x&length=2", "counted=28", "along=<b>", "id=1", "%ff=%ff"])
def test_an_address_that_says_nonsense_asks_all_the_same(alice, query):
    page = alice.get(f"/cloth/stash/new?{query}")
    assert page.status_code == 200
    assert "<b>" not in page.text.split("<main")[1].split("</nav>")[0].replace("<bdi>", "")


def test_a_change_that_is_not_text_changes_nothing(app, alice):
    id = keep(alice)
    form = {"data": b"name=%ff%fe", "content_type": "application/x-www-form-urlencoded"}
    assert alice.post(f"/cloth/stash/{id}", **form).status_code == 400
    assert rows(app)[0].name == "Undyed linen"
