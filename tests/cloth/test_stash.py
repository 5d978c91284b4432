"""Cloth in the stash: kept, changed, put away, and found for a project."""

import re
from uuid import uuid4

import pytest

from tests.accounts.conftest import PASSPHRASE
from tests.conftest import browser_of
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


def found(client, project):
    page = client.get(f"/projects/{project}/cloth").text
    return re.findall(r"<bdi>([^<]*)</bdi></a>\s*<span[^>]*>([^<]*)</span>\s*<span[^>]*>([^<]*)</span>", page)


def test_a_project_finds_the_cloth_that_takes_it_as_planned_first(alice, new_project):
    project = new_project(alice, width=140, height=98, count=14, over=1, frame="hand")
    sold = {"kind": "squares", "along_error": "", "across": ""}
    keep(alice, name="Sixteen", along="16", width="20", length="20", **sold)
    keep(alice, name="Linen", along="28", along_error="0.3", across="", width="16", length="13")
    keep(alice, name="Too small", along="14", width="14 7/8", length="11 7/8", **sold)
    keep(alice, name="Not measured", along="14", width="", length="", **sold)
    names = [(name, size) for name, size, _said in found(alice, project)]
    assert names == [("Linen", "10 × 7 in"), ("Sixteen", "8.75 × 6.13 in")]
    said = [words for _name, _size, words in found(alice, project)]
    assert said == [
        "the same size over two, 3 in a side",
        "5⅝ in a side, another size than planned",
    ]
    assert "2 pieces in your stash take it" in alice.get(f"/projects/{project}").text


def test_cloth_is_as_planned_only_where_both_its_counts_are(alice, new_project):
    """28 along and 26 across gives 10.77 × 7 in for 140 × 98 over two, not 10 × 7 (by hand)."""
    even = new_project(alice, title="Quince tree", width=140, height=98, count=28, over=2, frame="hand")
    uneven = new_project(
        alice, width=140, height=98, count=26, across=28, over=2, frame="hand", title="Harbour lanterns"
    )
    counted = {"along": "28", "along_error": "0.3", "across": "26", "across_error": "0.3"}
    keep(alice, width="20", length="20", **counted)
    ((_name, size, said),) = found(alice, even)
    assert size == "10.77 × 7 in"
    assert said.endswith("another size than planned")
    ((_name, size, said),) = found(alice, uneven)
    assert size == "10.77 × 7 in"
    assert "another size" not in said


def test_a_project_looks_for_cloth_with_the_margin_of_its_slip(alice):
    asked = {"title": "Quince tree", "width": "140", "height": "140", "count": "14", "over": "1"}
    asked |= {"finish": "framed", "held": "hand", "unit": "in"}
    page = alice.get("/cloth/slip", query_string=asked, follow_redirects=True).text
    project = alice.post(
        "/cloth/slip", data={"s": re.search('name="s" value="([^"]*)"', page).group(1)}
    ).location
    keep(alice, name="Just", kind="squares", along="14", across="", width="16", length="16")
    keep(alice, name="Short", kind="squares", along="14", across="", width="15 1/2", length="16")
    page = alice.get(f"{project}/cloth").text
    assert "3 in a side" in page.split("<ul")[0]
    assert "Just" in page
    assert "Short" not in page


def test_where_the_count_might_be_too_coarse_it_is_said(alice, new_project):
    project = new_project(alice, width=140, height=98, count=14, frame="hand")
    counted = {"kind": "squares", "along": "14", "along_error": "0.3", "across": ""}
    keep(alice, name="Only just", width="15", length="12", **counted)
    assert found(alice, project)[0][2].endswith("Only just: count it further to be sure")


def test_it_is_found_turned(alice, new_project):
    project = new_project(alice, width=140, height=98, count=14, frame="hand")
    keep(alice, name="Upright", kind="squares", along="14", across="", width="12", length="16")
    assert "turned" in found(alice, project)[0][2]


def test_cloth_put_away_is_not_looked_at(alice, new_project):
    project = new_project(alice, width=20, height=20)
    alice.post(f"/cloth/stash/{keep(alice)}/away")
    assert found(alice, project) == []
    assert "Look in your stash" in alice.get(f"/projects/{project}").text


def test_the_stash_is_searched_from_a_piece_too(alice, charlie):
    keep(alice)
    asked = {"piece_width": "30", "piece_height": "30", "count": "14", "width": "100", "height": "100"}
    assert "Undyed linen" in alice.get("/cloth/piece/hers", query_string=asked).text
    assert "Undyed linen" not in charlie.get("/cloth/piece/hers", query_string=asked).text


def test_what_was_begun_without_a_name_brings_its_cloth_along(app, alice):
    begun = browser_of(app)
    begun.post("/accounts/unclaimed", data={"zone": "Europe/London"})
    keep(begun)
    assert 'name="bring"' in begun.get("/sign-in").text  # cloth alone is work too
    begun.post("/sign-in", data={"name": "Alice", "passphrase": PASSPHRASE, "bring": "yes"})
    assert "Undyed linen" in alice.get("/cloth/stash").text
