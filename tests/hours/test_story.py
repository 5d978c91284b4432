"""A project's whole story."""

import re
from uuid import uuid4

import pytest

from tests.threads.stashed import legend, line
from webapp.journal.audit import differences


@pytest.fixture
def lanterns(alice, new_project):
    return new_project(alice, width=50, height=20)


def story(client, project):
    answer = client.get(f"/projects/{project}/story")
    assert answer.status_code == 200, answer.text
    return answer.text


def stitch_row(lay, client, project, row, day, **more):
    at = f"2026-02-{day:02}T20:00:00.000Z"
    lay(
        client,
        project,
        {"kind": "stitches", "row": row, "by": 50, "at": at, **more},
        {"kind": "done", "row": row, "done": True, "at": at},
    )


def test_it_works(app, alice, lanterns, lay, sit):
    sit(alice, lanterns, "2026-02-02T19:00", "2026-02-02T20:30")
    stitch_row(lay, alice, lanterns, 1, 2)
    stitch_row(lay, alice, lanterns, 2, 10)
    sit(alice, lanterns, "2026-02-10T19:30", "2026-02-10T20:00")
    page = story(alice, lanterns)
    for words in (
        "2:00",
        "Begun on 2 February.",
        "50 stitches an hour.",
        "How it grew",
        ">8 Feb<",
        ">13 Feb<",
    ):
        assert words in page, words
    assert page.count('class="woven"') == 2
    assert "A finish is forecast from 8 sittings over 3 weeks on. So far there are 2." in page
    with app.app_context():
        assert list(differences()) == []


def test_before_the_first_stitch_it_says_how_it_begins(alice, lanterns):
    page = story(alice, lanterns)
    assert "Nothing is stitched yet." in page
    assert "How it grew" not in page


def test_rested_and_finished_are_told(alice, lanterns, lay, friday_evening):
    stitch_row(lay, alice, lanterns, 1, 2)
    state = f"/projects/{lanterns}/state"
    alice.post(state, data={"state": "resting"})
    friday_evening.move_to("2026-03-06T20:00:00Z")
    alice.post(state, data={"state": "in hand"})
    friday_evening.move_to("2026-04-01T20:00:00Z")
    alice.post(state, data={"state": "finished"})
    page = story(alice, lanterns)
    assert "Rested from 13 February to 6 March." in page
    assert "Finished on 1 April." in page
    assert "forecast" not in page


def test_it_begins_with_the_first_stitch_however_late_that_comes(alice, lanterns, lay):
    stitch_row(lay, alice, lanterns, 2, 9)
    stitch_row(lay, alice, lanterns, 1, 3)
    assert "Begun on 3 February." in story(alice, lanterns)


def test_the_thread_it_took_is_told_by_thread_and_in_all_in_her_unit(app, alice, lanterns, lay):
    at = "2026-02-10T20:00:00.000Z"
    assert "Thread so far" not in story(alice, lanterns)
    names = [f"Dusk {n}" for n in range(8)]
    legend(app, lanterns, *(line(name, 500, colour="#2f4468") for name in names))
    for n, name in enumerate(names):
        lay(alice, lanterns, {"kind": "stitches", "row": 1, "by": 500 + n, "thread": name, "at": at})
    assert "\xa0yd</b> off the skein" in story(alice, lanterns)
    alice.post("/account", data={"unit": "cm"})
    page = story(alice, lanterns)
    assert "Thread so far" in page
    assert "The other 3" in page
    assert page.index("Dusk 7") < page.index("Dusk 3") < page.index("The other 3") < page.index("Dusk 2")
    in_all = re.search(r"<b>([\d.]+) to ([\d.]+)\xa0m</b>", page)
    each = [tuple(map(float, one)) for one in re.findall(r"<span>([\d.]+) to ([\d.]+)\xa0m</span>", page)]
    assert len(each) == 8
    assert sum(high for _, high in each) == pytest.approx(float(in_all[2]), abs=0.8)  # each rounded outwards
    assert "\xa0yd" not in page


def test_what_was_stitched_before_any_sitting_or_closed_row_is_told(alice, lanterns, lay, sit):
    """Its sitting was struck out, or it never had one: the stitches stand on the cloth all the same."""
    lay(alice, lanterns, {"kind": "stitches", "row": 1, "by": 30, "at": "2025-12-10T20:00:00.000Z"})
    page = story(alice, lanterns)
    assert "Begun on 10 December 2025." in page
    assert "How it grew" in page
    assert "<td>30</td>" in page
    sit(alice, lanterns, "2026-02-10T19:30", "2026-02-10T20:00", stitches=10)
    page = story(alice, lanterns)
    assert "Begun on 10 December 2025." in page
    assert "<dd>40</dd>" in page


def test_each_week_is_told_of_also_where_no_row_was_closed(alice, lanterns, lay, sit):
    sit(alice, lanterns, "2026-01-06T19:00", "2026-01-06T20:00", stitches=20)
    sit(alice, lanterns, "2026-01-13T19:00", "2026-01-13T20:00", stitches=30)
    stitch_row(lay, alice, lanterns, 2, 2)
    table = story(alice, lanterns).split("Week by week")[1].split("</table>")[0]
    assert table.count("<tr><th") == 1 + 3
    assert table.count("1:00") == 2


def test_more_taken_out_than_was_counted_is_none_laid_and_not_a_finish(alice, lanterns, lay, sit):
    for day in range(1, 10):
        at = f"2026-01-{day:02}T20"
        sit(alice, lanterns, f"{at}:00", f"{at}:30")
        lay(alice, lanterns, {"kind": "done", "row": day, "done": True, "at": f"{at}:20:00.000Z"})
    away = {"kind": "stitches", "row": 1, "by": -600, "at": "2026-01-20T20:00:00.000Z"}
    lay(alice, lanterns, away)
    page = story(alice, lanterns)
    assert "-600" not in page.split("How it grew")[0]
    assert "<dt>Stitches</dt><dd>0</dd>" in page
    assert "The crosses are done" not in page


def test_nights_on_the_frame_before_the_first_stitch_are_told_too(alice, lanterns, lay):
    lay(alice, lanterns, {"kind": "frame", "state": "on", "at": "2026-01-10T20:00:00.000Z"})
    lay(alice, lanterns, {"kind": "frame", "state": "off", "at": "2026-01-13T08:00:00.000Z"})
    stitch_row(lay, alice, lanterns, 1, 10)
    assert "<dt>Nights on the frame</dt><dd>3</dd>" in story(alice, lanterns)


def test_where_she_stopped_is_her_last_line(alice, lanterns, lay):
    begin = str(uuid4())
    lay(
        alice,
        lanterns,
        {"id": begin, "kind": "begin", "at": "2026-02-10T20:00:00.000Z"},
        {"kind": "end", "sitting": begin, "note": "lamp <b>next</b>", "at": "2026-02-10T21:00:00.000Z"},
    )
    page = story(alice, lanterns)
    assert "Where you stopped" in page
    assert "lamp &lt;b&gt;next" in page


def test_a_phone_that_is_wrong_by_ages_hinders_nothing(alice, lanterns, lay):
    for row, at in enumerate(("0001-01-01T00:00:00.000Z", "9999-12-31T23:59:59.999Z"), 1):
        lay(
            alice,
            lanterns,
            {"kind": "begin", "at": at},
            {"kind": "stitches", "row": row, "by": 1, "at": at},
            {"kind": "done", "row": row, "done": True, "at": at},
            {"kind": "frame", "state": "on", "at": at},
        )
    story(alice, lanterns)
    assert alice.get("/hours").status_code == 200
