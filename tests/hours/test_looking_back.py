"""Months and years as pages; the week beside the four before it, and what else it had."""

import re

import pytest


class Calendar:
    """A month or year as its page has it."""

    def __init__(self, page):
        self.page = page

    def marks(self):
        return re.search(r'class="beneath" d="([^"]*)"', self.page)[1].count("M")

    def row(self, name):
        rows = (
            re.findall(r"<t[hd][^>]*>(.*?)</t[hd]>", one)
            for one in re.findall(r"<tr>.*?</tr>", self.page, re.S)
        )
        texts = ([re.sub("<[^>]*>", "", cell) for cell in row] for row in rows)
        return next(row for row in texts if row[0] == name)


def test_a_month_shows_its_days_and_leads_to_its_weeks(alice, lanterns, sit):
    sit(alice, lanterns, "2026-02-03T20:00", "2026-02-03T21:30", stitches=105)
    sit(alice, lanterns, "2026-01-31T20:00", "2026-01-31T21:00", stitches=50)
    page = alice.get("/hours/month?month=2026-02").text
    for words in (
        "<h1>February</h1>",
        "1:30",
        "on 1 day",
        "105 stitches",
        'href="/hours?week=2026-W06"',
        "2–8 Feb",
        "Tue 3 February",
    ):
        assert words in page, words
    assert 'href="/hours?week=2026-W05"' in page
    assert "2026-W08" not in page  # not begun yet


def test_a_year_shows_its_months(alice, lanterns, sit):
    sit(alice, lanterns, "2026-02-03T20:00", "2026-02-03T21:30", stitches=105)
    sit(alice, lanterns, "2026-01-31T20:00", "2026-01-31T21:00", stitches=50)
    page = alice.get("/hours/year?year=2026").text
    for words in ("<h1>2026</h1>", "2:30", "on 2 days", "155 stitches", 'href="/hours/month?month=2026-01"'):
        assert words in page, words
    assert "month=2026-03" not in page
    assert "No stitching in this year." in alice.get("/hours/year?year=2025").text


def test_without_a_name_it_is_this_month_and_this_year(alice):
    assert "<h1>February</h1>" in alice.get("/hours/month").text
    assert "<h1>2026</h1>" in alice.get("/hours/year").text


@pytest.mark.parametrize(
    ("page", "earlier", "later"),
    [
        ("/hours/month?month=2026-01", "month=2025-12", "month=2026-02"),
        ("/hours/year?year=2025", "year=2024", "year=2026"),
    ],
)
def test_each_leads_to_those_beside_it(alice, page, earlier, later):
    text = alice.get(page).text
    assert f"?{earlier}" in text
    assert f"?{later}" in text
    assert "Later" not in alice.get(page.split("?")[0]).text


def frame(lay, client, project, state, at):
    lay(client, project, {"kind": "frame", "state": state, "at": f"{at}:00.000Z"})


def test_nights_on_the_frame_are_marked_and_told_in_month_and_year(alice, lanterns, sit, lay):
    sit(alice, lanterns, "2026-02-03T20:00", "2026-02-03T21:30", stitches=105)
    frame(lay, alice, lanterns, "on", "2026-02-03T21:30")
    frame(lay, alice, lanterns, "off", "2026-02-05T08:00")
    month = Calendar(alice.get("/hours/month?month=2026-02").text)
    assert month.marks() == 2
    assert month.row("2–8 Feb") == ["2–8 Feb", "105", "1:30", "2"]
    assert month.row("Tue 3 February")[-1] == "on frame"
    assert month.row("Wed 4 February") == ["Wed 4 February", "0", "–", "on frame"]
    year = Calendar(alice.get("/hours/year?year=2026").text)
    assert year.marks() == 2
    assert year.row("February") == ["February", "105", "1:30", "2"]
    assert year.row("January")[-1] == "–"


def test_without_such_nights_neither_mark_nor_column_is_there(alice, lanterns, sit):
    sit(alice, lanterns, "2026-02-03T20:00", "2026-02-03T21:30", stitches=105)
    for page in ("/hours/month", "/hours/year"):
        text = alice.get(page).text
        assert "beneath" not in text
        assert "Night" not in text


def test_a_night_with_two_works_on_frames_is_one_night(alice, lanterns, new_project, sit, lay):
    sit(alice, lanterns, "2026-02-03T20:00", "2026-02-03T21:30", stitches=105)
    for project in (lanterns, new_project(alice)):
        frame(lay, alice, project, "on", "2026-02-03T21:30")
        frame(lay, alice, project, "off", "2026-02-04T08:00")
    month = Calendar(alice.get("/hours/month?month=2026-02").text)
    assert (month.marks(), month.row("2–8 Feb")[-1]) == (1, "1")


def test_a_week_without_a_stitch_tells_how_long_the_work_was_on_its_frame(alice, lanterns, lay, figures):
    frame(lay, alice, lanterns, "on", "2026-01-30T20:00")
    frame(lay, alice, lanterns, "off", "2026-02-01T08:00")
    assert figures(alice, "2026-W05")["nights_on_frame"] == 2
    page = " ".join(alice.get("/hours?week=2026-W05").text.split())
    assert "No stitching in this week</h2> <p>The work was on its frame for 2 nights." in page


def test_a_month_without_a_stitch_tells_how_long_the_work_was_on_its_frame(alice, lanterns, lay):
    frame(lay, alice, lanterns, "on", "2026-01-30T20:00")
    frame(lay, alice, lanterns, "off", "2026-02-01T08:00")
    page = alice.get("/hours/month?month=2026-01").text
    assert "No stitching in this month. The work was on its frame for 2 nights." in page


@pytest.mark.parametrize("what", ["month", "year"])
def test_the_part_alone_is_no_page(alice, what):
    part = alice.get(f"/hours/{what}/part").text
    assert part.lstrip().startswith(f'<div id="{what}"')
    assert "<html" not in part


@pytest.mark.parametrize("name", ["", "x", "9999-01", "9999", "<script>"])
def test_what_is_no_month_or_year_is_answered_by_a_sentence(alice, name):
    for address in ("/hours/month", "/hours/month/part"):
        assert alice.get(address, query_string={"month": name}).status_code == 422
    for address in ("/hours/year", "/hours/year/part"):
        answer = alice.get(address, query_string={"year": name})
        assert answer.status_code == 422
        assert "<script>" not in answer.text


def test_charlie_sees_nothing_of_alices(alice, charlie, lanterns, sit):
    sit(alice, lanterns, "2026-02-03T20:00", "2026-02-03T21:30", stitches=105)
    for page in ("/hours/month", "/hours/year"):
        assert "Harbour" not in charlie.get(page).text
    assert charlie.get("/hours/month").status_code == 200


def test_the_four_weeks_before_stand_beside_it(alice, lanterns, sit, figures):
    sit(alice, lanterns, "2026-02-03T20:00", "2026-02-03T21:30")
    sit(alice, lanterns, "2026-01-05T20:00", "2026-01-05T23:00")  # five before: too long ago
    assert figures(alice)["weeks_before"] == [
        {"week": "2026-W03", "total_seconds": 0},
        {"week": "2026-W04", "total_seconds": 0},
        {"week": "2026-W05", "total_seconds": 0},
        {"week": "2026-W06", "total_seconds": 5400},
    ]
    sit(alice, lanterns, "2026-02-10T20:00", "2026-02-10T20:30")
    page = alice.get("/hours").text
    assert "Against the four weeks before" in page
    assert '<a href="/hours?week=2026-W06">2–8 Feb</a>' in page


def test_a_first_week_stands_beside_none(alice, lanterns, sit):
    sit(alice, lanterns, "2026-02-10T20:00", "2026-02-10T20:30")
    assert "Against the four weeks before" not in alice.get("/hours").text


def test_a_sitting_across_the_weeks_end_counts_in_both_with_what_lies_there(alice, lanterns, sit, figures):
    sit(alice, lanterns, "2026-02-08T23:00", "2026-02-09T03:00")
    told = [figures(alice, week) for week in ("2026-W06", "2026-W07")]
    assert [(one["sittings"], one["longest_sitting_seconds"]) for one in told] == [(1, 3600), (1, 10800)]


def test_a_sitting_of_no_time_is_none(alice, lanterns, sit, figures):
    sit(alice, lanterns, "2026-02-10T20:00", "2026-02-10T20:00")
    told = figures(alice)
    assert (told["sittings"], told["longest_sitting_seconds"]) == (0, None)


def test_sittings_are_counted_as_they_are_shown(alice, lanterns, sit, figures):
    sit(alice, lanterns, "2026-02-10T19:00", "2026-02-10T20:00")
    sit(alice, lanterns, "2026-02-10T20:29", "2026-02-10T21:00")
    sit(alice, lanterns, "2026-02-11T20:00", "2026-02-11T20:30")
    week = figures(alice)
    assert (week["sittings"], week["longest_sitting_seconds"]) == (2, 5460)


def test_rows_and_blocks_closed_are_counted_if_they_were_stitched(alice, lanterns, lay, figures):
    at = {"at": "2026-02-10T20:00:00.000Z"}
    lay(
        alice,
        lanterns,
        {"kind": "stitches", "row": 1, "by": 140, **at},
        {"kind": "done", "row": 1, "done": True, **at},
        {"kind": "stitches", "row": 2, "by": 140, **at},
        {"kind": "done", "row": 2, "done": True, **at},
        {"kind": "done", "row": 2, "done": False, "at": "2026-02-10T20:01:00.000Z"},
        {"kind": "stitches", "row": 3, "by": 140, "why": "before", **at},
        {"kind": "done", "row": 3, "done": True, **at},
        {"kind": "stitches", "block": [1, 1], "by": 100, **at},
        {"kind": "done", "block": [1, 1], "done": True, **at},
    )
    assert (figures(alice)["rows_done"], figures(alice)["blocks_done"]) == (1, 1)
    assert figures(alice, "2026-W06")["rows_done"] == 0


def test_nights_on_the_frame_are_counted(alice, lanterns, lay, figures):
    lay(alice, lanterns, {"kind": "frame", "state": "on", "at": "2026-02-05T20:00:00.000Z"})
    assert figures(alice, "2026-W06")["nights_on_frame"] == 4
    lay(alice, lanterns, {"kind": "frame", "state": "off", "at": "2026-02-11T08:00:00.000Z"})
    assert figures(alice)["nights_on_frame"] == 2


def test_work_taken_off_after_the_weeks_last_midnight_spent_no_night_on_it(alice, lanterns, lay, figures):
    lay(
        alice,
        lanterns,
        {"kind": "frame", "state": "on", "at": "2026-02-08T20:00:00.000Z"},
        {"kind": "frame", "state": "off", "at": "2026-02-09T01:00:00.000Z"},
    )
    assert figures(alice, "2026-W06")["nights_on_frame"] == 0


def test_a_sitting_of_days_is_in_every_week_it_touches(alice, lanterns, lay, figures):
    begin = "00000000-0000-7000-8000-00000000000a"
    lay(
        alice,
        lanterns,
        {"id": begin, "kind": "begin", "at": "2026-01-20T20:00:00.000Z"},
        {"kind": "end", "sitting": begin, "at": "2026-02-09T01:00:00.000Z"},
    )
    assert figures(alice, "2026-W06")["total_seconds"] == 7 * 86400
    assert figures(alice)["total_seconds"] == 3600


def test_week_numbers_are_said_where_her_weeks_begin_as_isos_do(app, alice):
    from tests.hours.test_hours_week import week_starts_on

    assert "<h1>Week 7</h1>" in alice.get("/hours").text
    week_starts_on(app, 6)
    assert "<h1>The week</h1>" in alice.get("/hours").text
