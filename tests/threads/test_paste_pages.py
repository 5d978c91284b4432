"""A legend pasted or uploaded: looked over, put right, taken in at once, and nothing lost on the way."""

import io
import re

import pytest
from werkzeug.datastructures import FileStorage
from werkzeug.test import encode_multipart

from tests.threads.legend_forms import keep, load, paste, previewed, rows, settle

TEXT = "X  Madder  2 strands  1,240\no  Weld  2 strands  30"


def upload(client, project, data, name="legend.csv"):
    file = FileStorage(io.BytesIO(data), name, "file")
    boundary, body = encode_multipart({"text": "", "file": file})  # in memory: no file is left open
    kind = f"multipart/form-data; boundary={boundary}"
    return client.post(f"/projects/{project}/thread/paste", data=body, content_type=kind)


def test_nothing_is_kept_before_it_is_accepted_and_then_all_of_it(app, alice, new_project):
    project = new_project(alice)
    page = paste(alice, project, TEXT)
    assert page.status_code == 200
    assert "Keep 2 lines" in page.text
    assert rows(app, project) == []
    assert settle(alice, project, page).status_code == 303
    assert [(row.key, row.full) for row in rows(app, project)] == [("Madder", 1240), ("Weld", 30)]


def test_a_preview_sent_twice_takes_it_in_once(app, alice, new_project):
    project = new_project(alice)
    page = paste(alice, project, TEXT)
    settle(alice, project, page)
    assert settle(alice, project, page).status_code == 303
    assert len(rows(app, project)) == 2


def test_a_legend_pasted_again_changes_its_lines_and_adds_the_others(app, alice, new_project):
    project = new_project(alice)
    keep(alice, project, full="5", note="mine")
    page = paste(alice, project, TEXT)
    assert "changes yours" in page.text
    settle(alice, project, page)
    assert [(row.key, row.full) for row in rows(app, project)] == [("Madder", 1240), ("Weld", 30)]
    assert "there already" in paste(alice, project, TEXT).text


def test_a_legend_pasted_again_keeps_what_she_added_to_its_lines(app, alice, new_project):
    project = new_project(alice)
    hers = {"symbol": "X", "thread": "Madder", "strands": "2", "full": "1240", "colour": "#9b3527"}
    keep(alice, project, **hers, instead="Rust", lots="7", note="for the sails", patches="12")
    settle(alice, project, paste(alice, project, TEXT.replace("1,240", "1,300")))
    line = rows(app, project)[0]
    assert (line.full, line.colour, line.note, line.patches) == (1300, "#9b3527", "for the sails", 12)
    assert [(part["instead"], part["lots"]) for part in line.parts] == [("Rust", ["7"])]


def test_what_is_not_understood_is_said_beside_its_field_with_what_was_typed(app, alice, new_project):
    project = new_project(alice)
    page = paste(alice, project, "symbol;thread;strands;full\nX;Madder;two;1,24O;?!\no;Weld;2;30")
    for said in (
        *("1 line is understood. 1 line wants a look:", 'name="strands-0" value="two"'),
        *('name="full-0" value="1,24O"', "in whole numbers", 'name="rest-0" value="?!"'),
    ):
        assert said in page.text
    wrong = settle(alice, project, page, **{"strands-0": "2", "full-0": "12x4", "rest-0": ""})
    assert wrong.status_code == 422
    assert 'name="full-0" value="12x4"' in wrong.text
    assert rows(app, project) == []
    assert settle(alice, project, wrong, **{"full-0": "1.240"}).status_code == 303
    assert [(row.key, row.full) for row in rows(app, project)] == [("Madder", 1240), ("Weld", 30)]


def test_a_line_is_left_out(app, alice, new_project):
    project = new_project(alice)
    page = paste(alice, project, TEXT + "\n:  Odd  2 strands  ?")
    assert settle(alice, project, page, leave="2").status_code == 303
    assert [row.key for row in rows(app, project)] == ["Madder", "Weld"]


def test_what_is_left_out_by_itself_is_said(alice, new_project):
    page = paste(alice, new_project(alice), "Symbol;Thread;Page;Full\nX;Madder;3;120\nTotal;;;120")
    for said in ("Titles: Symbol Thread Page Full", "Column: Page", "Total: Total 120"):
        assert said in page.text


@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "latin-1", "utf-16"])
@pytest.mark.parametrize("mark", [",", ";", "\t"])
def test_a_file_is_read_in_its_encoding_and_with_its_separator(app, alice, new_project, encoding, mark):
    project = new_project(alice)
    text = (
        mark.join(["symbol", "thread", "full"]) + "\r\n" + mark.join(["×", "Garance fumée", "120"]) + "\r\n"
    )
    assert settle(alice, project, upload(alice, project, text.encode(encoding))).status_code == 303
    assert [(row.symbol, row.key) for row in rows(app, project)] == [("×", "Garance fumée")]


def test_a_formula_comes_in_as_text_and_goes_out_so_that_nothing_runs_it(app, alice, new_project):
    project = new_project(alice)
    text = 'symbol,thread,note,full\n=,"=HYPERLINK(""http://x"")",@SUM(A1),12\n+,-2+3,,7'
    settle(alice, project, paste(alice, project, text))
    assert [row.key for row in rows(app, project)] == ['=HYPERLINK("http://x")', "-2+3"]
    table = alice.get(f"/projects/{project}/thread.csv")
    assert table.mimetype == "text/csv"
    assert "'=,\"'=HYPERLINK(" in table.text
    assert "'@SUM(A1)" in table.text


def test_what_went_out_comes_in_to_another_project_and_goes_out_again_to_the_byte(alice, new_project):
    one, other = new_project(alice), new_project(alice)
    keep(alice, one, symbol="=", thread="Walnut", thread2="Silver filament", lots="1, 2", note="a\nb; c")
    keep(alice, one, symbol="+", thread="'Rust", instead="@home", working="12", method="each")
    table = alice.get(f"/projects/{one}/thread.csv").data
    assert settle(alice, other, upload(alice, other, table)).status_code == 303
    assert alice.get(f"/projects/{other}/thread.csv").data == table


def test_a_hundred_thousand_lines_are_refused_in_a_sentence_and_are_all_still_there(alice, new_project):
    project = new_project(alice)
    text = "\n".join(f"X  Shade {n}  2 strands  1,240" for n in range(100_000))
    answer = paste(alice, project, text)
    assert answer.status_code == 422
    assert "A legend takes at most 500 lines; this has 100,000." in answer.text
    assert "Shade 99999  2 strands" in answer.text
    assert upload(alice, project, text.encode()).status_code == 422


@pytest.mark.parametrize(
    ("data", "sentence"),
    [
        (b"", "Paste the legend, or choose a file"),
        (b"PK\x03\x04\x00\x00", "cannot be read as text"),
        (b"\xff\xfe\x00", "cannot be read as text"),
        (b"x" * 3_000, "Line 1 has 3,000 characters"),
        (b",,,\n", "No thread was found"),
    ],
)
def test_what_is_no_legend_is_said_to_be_none(app, alice, new_project, data, sentence):
    project = new_project(alice)
    answer = upload(alice, project, data)
    assert (answer.status_code, sentence in answer.text) == (422, True)
    assert rows(app, project) == []


def test_what_is_larger_than_any_legend_is_too_large(alice, new_project):
    assert upload(alice, new_project(alice), b"x\n" * 12_000_000).status_code == 413


@pytest.mark.parametrize(
    "sent",
    [
        {"row": "thread=Madder"},
        {"row": "thread=Madder", "batch": "x"},
        {"row": "", "batch": "019c3c00-0000-7000-8000-000000000000"},
        {"row": "=&&;%00%ff", "batch": "019c3c00-0000-7000-8000-000000000000"},
        {"row": "&".join(["thread=x"] * 500), "batch": "019c3c00-0000-7000-8000-000000000000"},
        {"row": "thread=Madder", "batch": "019c3c00-0000-7000-8000-000000000000", "open": "many"},
        {"row": "thread=Madder&full=many", "batch": "019c3c00-0000-7000-8000-000000000000"},
    ],
)
def test_a_preview_that_was_tampered_with_keeps_nothing(app, alice, new_project, sent):
    project = new_project(alice)
    answer = alice.post(f"/projects/{project}/thread/paste", data=sent)
    assert answer.status_code in (200, 422)
    assert rows(app, project) == []


def test_more_than_fit_are_not_taken_in_by_half(app, alice, new_project):
    project = new_project(alice)
    keep(alice, project)
    text = "symbol;thread;full\n" + "\n".join(f"{n};Shade {n};{n}" for n in range(500))
    answer = settle(alice, project, paste(alice, project, text))
    assert (answer.status_code, "The legend is full" in answer.text) == (422, True)
    assert len(rows(app, project)) == 1


def test_markup_in_a_paste_is_text(alice, new_project):
    page = paste(alice, new_project(alice), 'X  <script>alert(1)</script>  2  5\no  "><img src=x>  2  ?')
    assert "<script>alert" not in page.text
    assert "<img" not in page.text


def test_the_phone_carries_what_was_taken_in(app, alice, new_project):
    project = new_project(alice)
    settle(alice, project, paste(alice, project, TEXT + "\n*  Walnut + Silver filament  1+1  9"))
    now = load(app, project)
    assert [one["name"] for one in now.legend] == ["Madder", "Weld", "Walnut + Silver filament"]
    assert now.plan_revision == 2
    assert alice.get(f"/projects/{project}/snapshot").json["plan"]["legend"] == now.legend
    assert re.fullmatch("[0-9a-f-]{36}", previewed(paste(alice, project, TEXT).text)["batch"])
