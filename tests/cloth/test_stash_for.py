"""What a project or a piece finds in the stash."""

import re

from tests.accounts.conftest import PASSPHRASE
from tests.cloth.test_stash import keep
from tests.conftest import browser_of


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
