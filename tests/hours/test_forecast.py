"""The finish as the page and the figures tell it, out of the journal."""

from datetime import UTC, date, datetime, timedelta
from uuid import uuid4
from zoneinfo import ZoneInfo

import pytest

from webapp.db import db
from webapp.hours.forecast import rests
from webapp.threads.models import LegendLine

FIRST = date(2026, 1, 13)  # a Tuesday


@pytest.fixture
def evenings(lay):
    """Stitch a row of 100 on Tuesdays and Fridays from 13 January on."""

    def evenings(client, project, count, **more):
        for n in range(count):
            day = FIRST + timedelta(days=n // 2 * 7 + n % 2 * 3)
            begin, place = str(uuid4()), {"row": n + 1}
            lay(
                client,
                project,
                {"id": begin, "kind": "begin", "at": f"{day}T19:00:00.000Z"},
                {"kind": "stitches", **place, "by": 100, "at": f"{day}T20:00:00.000Z", **more},
                {"kind": "done", **place, "done": True, "at": f"{day}T20:00:00.000Z"},
                {"kind": "end", "sitting": begin, "at": f"{day}T20:30:00.000Z"},
            )

    return evenings


@pytest.fixture
def lanterns(alice, new_project):
    return new_project(alice, width=100, height=20)


def test_a_steady_stitcher_is_told_the_day(alice, lanterns, evenings, figures):
    evenings(alice, lanterns, 10)  # the tenth row today, Friday 13 February
    (told,) = figures(alice)["finishes"]
    assert told["crosses_left_stitches"] == 1000
    assert set(told["crosses"].values()) == {"2026-03-20"}  # ten rows on: five weeks, a Friday
    assert told["last_pass"] is None
    assert "At this pace the crosses are done <b>on 20 March</b>" in alice.get("/hours").text


def test_nothing_is_forecast_from_fewer_than_eight_sittings(alice, lanterns, evenings, figures):
    evenings(alice, lanterns, 7)
    assert figures(alice)["finishes"] == []
    assert "At this pace" not in alice.get("/hours").text


def test_a_week_that_is_over_tells_no_finish(alice, lanterns, evenings, figures):
    evenings(alice, lanterns, 10)
    assert figures(alice, "2026-W06")["finishes"] == []


def test_a_project_that_rests_has_no_date(alice, lanterns, evenings, figures):
    evenings(alice, lanterns, 10)
    alice.post(f"/projects/{lanterns}/state", data={"state": "resting"})
    assert figures(alice)["finishes"] == []


def test_rested_weeks_stay_out(alice, lanterns, evenings, figures, friday_evening):
    evenings(alice, lanterns, 10)
    alice.post(f"/projects/{lanterns}/state", data={"state": "resting"})
    friday_evening.move_to("2026-04-24T08:00:00Z")  # a Friday ten weeks later
    alice.post(f"/projects/{lanterns}/state", data={"state": "in hand"})
    begin = {"id": str(uuid4()), "kind": "begin", "at": "2026-04-24T06:00:00.000Z"}
    alice.post("/journal", json={"entries": [{**begin, "project": str(lanterns)}]})
    (told,) = figures(alice, "2026-W17")["finishes"]
    assert told["crosses"]["date_at_90_percent"] == "2026-05-26"  # ten rows on, as if she had not been away


def test_the_charts_own_number_decides(alice, app, lanterns, evenings, figures):
    from webapp.db import writing
    from webapp.projects.models import Project

    evenings(alice, lanterns, 10)
    with app.app_context(), writing():
        db.session.scalars(db.select(Project)).one().chart_total = 1200
        db.session.commit()
    (told,) = figures(alice)["finishes"]
    assert told["crosses_left_stitches"] == 200
    assert set(told["crosses"].values()) == {"2026-02-20"}


@pytest.mark.parametrize(
    ("back", "date", "told_as"),
    [
        # 400 backstitches are worth 200 crosses: a week more
        (400, "2026-03-27", "the crosses are done <b>on 20 March</b>, and the last pass <b>on 27 March</b>"),
        (2, "2026-03-20", "the crosses and the last pass are done <b>on 20 March</b>"),
    ],
)
def test_the_last_pass_is_told_where_the_legend_has_one(
    alice, app, lanterns, evenings, figures, back, date, told_as
):
    from webapp.accounts.models import Account
    from webapp.db import writing
    from webapp.projects.models import Project

    evenings(alice, lanterns, 10)
    with app.app_context(), writing():
        her = db.session.scalars(db.select(Account.id).where(Account.name == "Alice")).one()
        db.session.scalars(db.select(Project)).one().chart_total = 1990  # the last row has room for a little
        line = {"key": "ink", "symbol": "x", "parts": [], "scatter": "mixed", "position": 1}
        db.session.add(LegendLine(stitcher=her, project=lanterns, id=uuid4(), full=2000, back=back, **line))
        db.session.commit()
    (told,) = figures(alice)["finishes"]
    assert set(told["last_pass"].values()) == {date}
    assert told_as in alice.get("/hours").text


def test_what_was_there_before_is_not_her_pace(alice, lanterns, evenings, figures):
    evenings(alice, lanterns, 10, why="before")
    assert figures(alice)["finishes"] == []


def turn(day, state):
    return datetime(2026, 2, day, 12, tzinfo=UTC), state


@pytest.mark.parametrize(
    ("turns", "spans"),
    [
        ([], []),  # a project from before its turns were noted
        ([turn(3, "in hand")], []),
        ([turn(3, "in hand"), turn(5, "resting")], [(5, None)]),
        ([turn(3, "resting"), turn(9, "in hand")], [(3, 9)]),
        ([turn(3, "resting"), turn(3, "in hand")], []),
        ([turn(3, "resting"), turn(6, "finished"), turn(9, "in hand")], [(3, 6), (6, 9)]),
    ],
)
def test_days_out_of_hand_are_told_from_the_turns(turns, spans):
    found = rests(turns, ZoneInfo("Europe/London"))
    assert [(span.first.day, span.end and span.end.day) for span in found] == spans
