"""What is taken away: CSV as RFC 4180 has it, and safe in a spreadsheet."""

import csv
import io
from uuid import uuid4

import pytest
from hypothesis import given
from hypothesis import strategies as st

from webapp.hours.sheets import as_csv

TEXT = st.text(st.characters(exclude_categories=["Cs"], exclude_characters="\r\n\0"))


def read(client, name):
    answer = client.get(f"/hours/{name}.csv")
    assert answer.status_code == 200
    assert answer.content_type.startswith("text/csv; charset=utf-8")
    assert f'filename="{name}.csv"' in answer.headers["Content-Disposition"]
    return list(csv.DictReader(io.StringIO(answer.text, newline="")))


@given(st.lists(st.lists(TEXT, min_size=2, max_size=2)))
def test_what_was_written_is_read_again_but_for_the_mark_that_holds_a_text(rows):
    text = as_csv(["a", "b"], rows)
    assert text.endswith("\r\n")
    found = list(csv.reader(io.StringIO(text, newline="")))
    assert found[0] == ["a", "b"]
    assert [[cell.removeprefix("'") for cell in row] for row in found[1:]] == [
        [cell.removeprefix("'") for cell in row] for row in rows
    ]


# RFC 4180, section 2, in its own examples: a field with a comma, a line break or a quote stands in quotes.
@pytest.mark.parametrize(
    ("cell", "written"),
    [("a,b", '"a,b"'), ('a"b', '"a""b"'), ("a\r\nb", '"a\r\nb"'), ("ab", "ab"), (None, ""), (7.5, "7.5")],
)
def test_a_field_is_quoted_as_rfc_4180_says(cell, written):
    assert as_csv(["x", "y"], [[cell, 1]]) == f"x,y\r\n{written},1\r\n"


# The wide forms, U+FF1D and the like: some spreadsheets take them for the narrow ones (from memory).
@pytest.mark.parametrize(
    "text", ["=1+1", "+1", "-1", "@SUM(A1)", "\t=1", "\r=1", "＝1+1", "＋1", "－1", "＠SUM(A1)"]
)
def test_nothing_is_taken_for_a_formula(text):
    (row,) = csv.reader(io.StringIO(as_csv([], [[text]]).split("\r\n", 1)[1], newline=""))
    assert row == [f"'{text}"]


def test_sittings_are_listed_by_her_clocks(alice, new_project, sit):
    lanterns = new_project(alice, title="=Lanterns, lit")
    sit(alice, lanterns, "2025-07-01T20:00", "2025-07-01T21:30", stitches=20)
    sit(alice, lanterns, "2026-02-13T21:00")
    first, second = read(alice, "sittings")
    assert (first["began"], first["ended"]) == ("2025-07-01T21:00:00+01:00", "2025-07-01T22:30:00+01:00")
    assert (float(first["seconds"]), first["project"], first["project_id"]) == (
        5400,
        "'=Lanterns, lit",
        str(lanterns),
    )
    assert (second["ended"], float(second["seconds"])) == ("", 3600)


def test_days_are_listed_by_project_and_add_up(alice, new_project, sit):
    lanterns, quince = new_project(alice), new_project(alice, title="Quince tree")
    sit(alice, lanterns, "2026-02-09T23:00", "2026-02-10T00:30", stitches=20)
    sit(alice, quince, "2026-02-10T20:00", "2026-02-10T20:30", stitches=9)
    found = [
        (row["date"], row["project"], float(row["seconds"]), row["stitches"]) for row in read(alice, "days")
    ]
    assert found == [
        ("2026-02-09", "Harbour lanterns", 3600, "0"),
        ("2026-02-10", "Harbour lanterns", 1800, "20"),
        ("2026-02-10", "Quince tree", 1800, "9"),
    ]


def test_stitches_without_a_sitting_have_their_day(alice, new_project, lay):
    lay(alice, new_project(alice), {"kind": "stitches", "row": 1, "by": 7, "at": "2026-02-01T10:00:00.000Z"})
    assert [(row["date"], row["stitches"]) for row in read(alice, "days")] == [("2026-02-01", "7")]


def test_a_phone_that_is_wrong_by_ages_hinders_nothing(alice, new_project, lay):
    lanterns = new_project(alice)
    for at in ("0001-01-01T00:00:00.000Z", "9999-12-31T23:59:59.999Z"):
        begin = {"id": str(uuid4()), "kind": "begin", "at": at}
        lay(alice, lanterns, begin, {"kind": "stitches", "row": 1, "by": 1, "at": at})
    for name in ("sittings", "days"):
        read(alice, name)


@pytest.mark.parametrize("zone", ["Pacific/Kiritimati", "Pacific/Honolulu"])
def test_where_there_is_nothing_but_the_end_of_time_her_days_are_none(sign_up, new_project, lay, zone):
    bob = sign_up("Bob", zone=zone)
    lanterns, at = new_project(bob), "9999-12-31T23:59:59.999Z"
    begin = {"id": str(uuid4()), "kind": "begin", "at": at}
    lay(bob, lanterns, begin, {"kind": "stitches", "row": 1, "by": 1, "at": at})
    assert read(bob, "days") == []
    for address in ("/hours", "/hours/year", "/hours/sittings.csv", f"/projects/{lanterns}/story"):
        assert bob.get(address).status_code == 200, address


def test_charlie_takes_nothing_of_alices_away_and_nobody_does_signed_out(
    alice, charlie, client, new_project, sit
):
    sit(alice, new_project(alice), "2026-02-09T20:00", "2026-02-09T21:30")
    for name in ("sittings", "days"):
        assert read(charlie, name) == []
        assert client.get(f"/hours/{name}.csv").status_code == 303
