"""What is kept of each quarter of an hour is what the entries come to, however they came."""

from datetime import UTC, datetime

from sqlalchemy import select

from webapp.db import db
from webapp.journal.audit import differences
from webapp.journal.models import Quarter, Sitting
from webapp.journal.quarters import bounds


def kept(app):
    with app.app_context():
        assert list(differences()) == []
        query = select(Quarter.quarter, Quarter.pass_, Quarter.stitches)
        rows = sorted(db.session.execute(query).all())
        return [(f"{bounds(number)[0]:%H:%M}", of, stitches) for number, of, stitches in rows]


def stitches(at, by, **more):
    return {"kind": "stitches", "row": 1, "by": by, "at": f"2026-02-10T{at}Z", **more}


def test_it_works(app, alice, new_project, lay):
    lay(
        alice,
        new_project(alice),
        stitches("20:00:00", 7),
        stitches("20:14:59.999", 5),
        stitches("20:15:00", 3),
    )
    assert kept(app) == [("20:00", "cross", 12), ("20:15", "cross", 3)]


def test_only_what_was_stitched_counts_and_each_pass_by_itself(app, alice, new_project, lay):
    lay(
        alice,
        new_project(alice),
        stitches("20:00:00", 9),
        stitches("20:01:00", -2),
        stitches("20:02:00", 50, why="before"),
        stitches("20:03:00", -3, why="unpicked"),
        stitches("20:04:00", 4, why="stitched", **{"pass": "back"}),
    )
    assert kept(app) == [("20:00", "back", 4), ("20:00", "cross", 7)]


def test_what_is_undone_falls_out_and_what_comes_late_counts(app, alice, new_project, lay):
    lanterns = new_project(alice)
    first, _ = lay(alice, lanterns, stitches("20:00:00", 9), stitches("20:20:00", 1))
    lay(alice, lanterns, {"kind": "undo", "entry": first, "at": "2026-02-10T21:00:00Z"})
    assert kept(app) == [("20:00", "cross", 0), ("20:15", "cross", 1)]
    lay(alice, lanterns, stitches("20:05:00", 2))
    assert kept(app) == [("20:00", "cross", 2), ("20:15", "cross", 1)]


def test_two_projects_keep_theirs_apart(app, alice, new_project, lay):
    for by in (3, 4):
        lay(alice, new_project(alice), stitches("20:00:00", by))
    assert sorted(kept(app)) == [("20:00", "cross", 3), ("20:00", "cross", 4)]


def test_the_beginning_and_the_end_of_time_hinder_nothing(app, alice, new_project, lay):
    ends = ("0001-01-01T00:00:00.000Z", "9999-12-31T23:59:59.999Z")
    lay(alice, new_project(alice), *(stitches("20:00:00", 1) | {"at": at} for at in ends))
    assert kept(app) == [("00:00", "cross", 1), ("23:45", "cross", 1)]


def test_a_sitting_over_a_day_is_known_as_such(app, alice, new_project, lay, sit):
    lanterns = new_project(alice)
    for begin, end in (("2026-02-09T20:00", "2026-02-10T20:00"), ("2026-02-09T20:00", "2026-02-10T20:01")):
        sit(alice, lanterns, begin, end)
    sit(alice, lanterns, "2026-02-13T20:00")
    with app.app_context():
        found = db.session.execute(select(Sitting.end, Sitting.over_a_day))
        assert dict(found.all()) == {
            datetime(2026, 2, 10, 20, tzinfo=UTC): False,
            datetime(2026, 2, 10, 20, 1, tzinfo=UTC): True,
            None: True,
        }
