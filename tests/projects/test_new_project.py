"""A new project, from title and size on."""

import threading
from uuid import UUID, uuid4

import pytest
from markupsafe import escape

from webapp.db import db
from webapp.projects.models import Project

SENT = {"title": "Harbour lanterns", "width": "140", "height": "98"}


def projects(app):
    with app.app_context():
        return list(db.session.scalars(db.select(Project)))


def made(app, browser, **fields):
    answer = browser.post("/projects", data=SENT | fields)
    assert answer.status_code == 303, answer.text
    return next(p for p in projects(app) if answer.location == f"/projects/{p.id}")


def test_title_and_size_are_enough(app, alice):
    project = made(app, alice)
    assert (project.title, project.width, project.height) == ("Harbour lanterns", 140, 98)
    assert (project.count, project.over, project.state, project.working) == (14.0, 1, "planned", "rows")
    assert (project.direction, project.first_row, project.start_column, project.start_way) == (
        "top", 1, 1, "right",
    )  # fmt: skip
    assert (project.expected, project.step, project.frame, project.plan_revision) == (None, "1", "hoop", 1)


def test_the_form_offers_title_and_size_first(alice):
    page = alice.get("/projects/new").text
    assert page.index('name="title"') < page.index('name="width"') < page.index("<details")
    assert page.index("<details") < page.index('name="count"')
    assert '<details class="more">' in page


def test_sent_empty_it_is_told_of_title_and_size_and_the_rest_stays_closed(alice):
    answer = alice.post("/projects", data={})
    assert answer.status_code == 422
    assert answer.text.count('class="error"') == 3
    assert '<details class="more">' in answer.text


@pytest.mark.parametrize("wrong", [{"count": "0"}, {"first_row": "99"}, {"frame": "vice"}])
def test_the_rest_is_opened_where_something_in_it_is_wrong(alice, wrong):
    answer = alice.post("/projects", data=SENT | wrong)
    assert answer.status_code == 422
    assert '<details class="more" open>' in answer.text


def test_everything_said_is_kept(app, alice):
    said = {
        "count": "28", "over": "2", "working": "blocks", "block_from": "middle", "block_way": "down",
        "step": "ten", "frame": "scroll", "direction": "bottom", "first_row": "3", "start_column": "7",
        "start_way": "left", "expected": "139",
    }  # fmt: skip
    project = made(app, alice, **said)
    assert {name: str(getattr(project, name)).removesuffix(".0") for name in said} == said


def test_going_left_starts_at_the_right_edge(app, alice):
    assert made(app, alice, start_way="left").start_column == 140
    assert made(app, alice, start_way="left", start_column="70").start_column == 70


@pytest.mark.parametrize(("height", "middle"), [("1", 1), ("98", 49), ("99", 50), ("10000", 5000)])
def test_both_ways_start_in_the_middle(app, alice, height, middle):
    assert made(app, alice, direction="middle", height=height).first_row == middle


@pytest.mark.parametrize(
    ("typed", "count"), [("13.72", 13.72), ("13,72", 13.72), (" 14 ", 14.0), ("1", 1.0), ("100", 100.0)]
)
def test_a_count_may_have_decimals(app, alice, typed, count):
    assert made(app, alice, count=typed).count == count


# Unicode's explicit formatting characters (UAX 9, 2.1 to 2.5), which reach over what stands beside the title.
@pytest.mark.parametrize("turn", "\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069")
def test_a_title_turns_no_letters_round(app, alice, turn):
    assert made(app, alice, title=f"{turn}Harbour {turn}lanterns").title == "Harbour lanterns"
    assert made(app, alice, title=f" {turn} פנסים ").title == "פנסים"


def test_spaces_around_a_number_are_nothing(app, alice):
    assert made(app, alice, width=" 140 ", height="\t98\n").width == 140


NOT_WHOLE = [
    "", "true", "1.0", "1e3", "NaN", "१२", "１２", "0", "-1", "+1", "10001", "1 000", "1,000", "0x10", "九",
    "1_0", "²", "9" * 5000, "\x00",
]  # fmt: skip
NO_COUNT = [
    "0", "0.99", "100.1", "101", "NaN", "inf", "1e1", "१४", "14.", ".5", "14,5,5", "true", "-14",
]  # fmt: skip
BAD = [
    ("width", NOT_WHOLE, "in digits only"),
    ("height", NOT_WHOLE, "in digits only"),
    ("first_row", [typed for typed in NOT_WHOLE if typed], "in digits only"),
    ("start_column", ["1.0", "0", "10001"], "in digits only"),
    ("expected", ["2.5", "0", "१२"], "in digits only"),
    ("first_row", ["99"], "98 rows"),
    ("start_column", ["141"], "140 columns"),
    ("expected", ["141"], "140 columns"),
    ("count", NO_COUNT, "from 1 to 100"),
    ("across", NO_COUNT, "from 1 to 100"),
    ("title", ["", "  "], "Give the project a title."),
    ("title", ["\u200b\u200d", "\u2066\u2069"], "that can be seen"),
    ("title", ["two\nlines", "nothing\x00", "line\u2028line", "tab\tbed"], "one line"),
    ("title", ["x" * 121, "🧵" * 121], "121 characters"),
    *[
        (name, ["3", "true", "Rows", "<b>"], "Choose one of those shown.")
        for name in ("over", "working", "direction", "start_way", "block_from", "block_way", "step", "frame")
    ],
    ("id", ["not-a-uuid", "1"], "Begin once more."),
]


@pytest.mark.parametrize(("name", "samples", "sentence"), BAD)
def test_bad_input_is_told_beside_the_field(app, alice, name, samples, sentence):
    for typed in samples:
        answer = alice.post("/projects", data=SENT | {name: typed})
        assert (typed[:50], answer.status_code) == (typed[:50], 422)
        assert sentence in answer.text, typed
    assert projects(app) == []


def test_what_was_typed_is_kept(alice):
    key, title = str(uuid4()), '"><script>alert(1)</script>'
    page = alice.post("/projects", data={"id": key, "title": title, "width": "1e3", "working": "blocks"}).text
    assert f'value="{escape(title)}"' in page
    assert 'value="1e3"' in page
    assert f'value="{key}"' in page
    assert 'value="blocks" checked' in page
    assert "<script>alert" not in page


def test_a_damaged_form_can_be_sent_once_more(app, alice):
    page = alice.post("/projects", data=SENT | {"id": "torn"}).text
    key = page.split('name="id" value="')[1].split('"')[0]
    assert made(app, alice, id=key).id == UUID(key)


def test_the_cursor_is_in_the_first_wrong_field(alice):
    page = alice.post(
        "/projects", data={"title": "Quince tree", "width": "90", "height": "x", "count": "x"}
    ).text
    assert page.count("autofocus") == 1
    assert "autofocus" in page.split('name="height"')[1].split(">")[0]


@pytest.mark.parametrize(
    "title",
    ["x" * 120, "🧵" * 120, "שדה חיטה בערב", "e\u0301" * 60, "👩‍👩‍👧", "<b>Bold</b> & 'plain'"],
    ids=["long", "astral", "right to left", "combining", "joined", "markup"],
)
def test_a_title_is_kept_as_written(app, alice, title):
    project = made(app, alice, title=title)
    assert project.title == title
    assert f"<bdi>{escape(title)}</bdi>" in alice.get(f"/projects/{project.id}").text
    assert f"<bdi>{escape(title)}</bdi>" in alice.get(f"/projects/{project.id}/edit").text
    assert f'<bdi class="title">{escape(title)}</bdi>' in alice.get("/projects").text


def test_the_same_form_twice_makes_one_project(app, alice):
    first = made(app, alice, id=str(uuid4()))
    again = made(app, alice, id=str(first.id).upper(), title="Another title")
    assert again.id == first.id
    assert [p.title for p in projects(app)] == ["Harbour lanterns"]


def test_the_same_form_five_times_at_once_makes_one_project(app, alice):
    key, answers = str(uuid4()), []
    cookie = alice.get_cookie("evenrow").value

    def send():
        browser = app.test_client()
        browser.set_cookie("evenrow", cookie)
        answer = browser.post("/projects", data=SENT | {"id": key}, headers={"Sec-Fetch-Site": "same-origin"})
        answers.append((answer.status_code, answer.location))

    threads = [threading.Thread(target=send) for _ in range(5)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert answers == [(303, f"/projects/{key}")] * 5
    assert [p.id for p in projects(app)] == [UUID(key)]


def test_an_id_of_another_stitcher_is_free(app, alice, charlie):
    key = str(uuid4())
    made(app, alice, id=key)
    answer = charlie.post("/projects", data=SENT | {"id": key, "title": "Quince tree"})
    assert (answer.status_code, answer.location) == (303, f"/projects/{key}")
    assert "Quince tree" in charlie.get(f"/projects/{key}").text
    assert "Harbour lanterns" in alice.get(f"/projects/{key}").text


@pytest.mark.parametrize(
    ("body", "kind", "status"),
    [
        (b"", "application/x-www-form-urlencoded", 422),
        (b"title=\xff\xfe&width=1&height=1", "application/x-www-form-urlencoded", 400),
        (b"{}", "application/json", 422),
        (b"title=" + b"x" * 10_000_000, "application/x-www-form-urlencoded", 413),
        (b"title=" + b"x" * 190_000 + b"&width=1&height=1", "application/x-www-form-urlencoded", 422),
    ],
    ids=["empty", "not UTF-8", "JSON", "10 MB", "long"],
)
def test_a_body_that_is_no_form_of_ours_makes_nothing(app, alice, body, kind, status):
    answer = alice.post("/projects", data=body, content_type=kind)
    assert answer.status_code == status
    assert projects(app) == []


def test_who_is_not_signed_in_is_asked_to(app, alice, client):
    answer = client.post("/projects", data=SENT)
    assert answer.status_code == 303
    assert "/projects/" not in answer.location
    assert projects(app) == []
