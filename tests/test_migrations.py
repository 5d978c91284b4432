"""A database of an earlier shape comes to the newest with all that is in it."""

from datetime import datetime, timedelta

import pytest
from alembic import command
from alembic.autogenerate import compare_metadata
from alembic.migration import MigrationContext
from sqlalchemy import text

from webapp import create_app
from webapp.config import Config
from webapp.db import Base, db
from webapp.migrate import migrate, settings

ACCOUNT = """INSERT INTO account (id, zone, unit, week_start, bedtime, hand, created)
    VALUES (:id, 'Europe/London', 'in', 0, '22:30:00', 'right', '2026-02-03 20:14:05')"""
PROJECT = """INSERT INTO project (stitcher, id, title, width, height, count, over, state, working, direction,
    first_row, start_column, start_way, block_from, block_way, step, frame, plan_revision, created)
    VALUES (:stitcher, :id, 'Quince tree', 140, 98, 27.6, 2, 'in hand', 'rows', 'top', 1, 1, 'right',
    'top-left', 'across', '1', 'hoop', 3, '2026-02-03 20:14:05')"""


@pytest.fixture
def house(tmp_path):
    app = create_app(Config.from_environment({"EVENROW_DATA": str(tmp_path)}))
    with app.app_context():
        yield app
        db.engine.dispose()


def step(way, to):
    with db.engine.connect().execution_options(writing=True) as connection, connection.begin():
        way(settings(connection), to)


def test_what_was_there_before_cloth_was_kept_is_there_after(house):
    step(command.upgrade, "0001")
    with db.engine.connect().execution_options(writing=True) as connection, connection.begin():
        connection.execute(text(ACCOUNT), {"id": "a" * 32})
        connection.execute(text(PROJECT), {"stitcher": "a" * 32, "id": "b" * 32})
    migrate(house)
    with db.engine.connect() as connection:
        assert connection.execute(text("SELECT title, count, plan_revision FROM project")).all() == [
            ("Quince tree", 27.6, 3)
        ]
        assert connection.execute(text("SELECT count(*) FROM cloth")).scalar() == 0
        assert connection.execute(text("SELECT across, bench FROM project")).all() == [(None, None)]
    step(command.downgrade, "0001")
    with db.engine.connect() as connection:
        assert connection.execute(text("SELECT title FROM project")).scalar() == "Quince tree"


ENTRY = """INSERT INTO entry (stitcher, id, project, kind, at, said, fields, "by", tally, cancelled)
    VALUES (:stitcher, :id, :project, 'stitches', '2026-02-03 20:14:05', '2026-02-03 20:14:05', :fields, :by,
    :tally, :cancelled)"""


def test_what_entries_said_of_threads_before_there_were_sums_of_them_is_summed(house):
    step(command.upgrade, "0004")
    laid = [
        ('{"row": 1, "by": 9, "thread": "Sea green"}', 9, "cross 1", False),
        ('{"row": 1, "by": -2, "why": "unpicked", "thread": "Sea green"}', -2, "cross 1", False),
        ('{"row": 2, "by": 5, "thread": "Sea green"}', 5, "cross 2", False),
        ('{"row": 2, "by": 4, "thread": "Sea green"}', 4, "cross 2", True),
        ('{"row": 2, "by": 3}', 3, "cross 2", False),
    ]
    with db.engine.connect().execution_options(writing=True) as connection, connection.begin():
        connection.execute(text(ACCOUNT), {"id": "a" * 32})
        connection.execute(text(PROJECT), {"stitcher": "a" * 32, "id": "b" * 32})
        for n, (fields, by, tally, cancelled) in enumerate(laid):
            row = {"fields": fields, "by": by, "tally": tally, "cancelled": cancelled}
            of = {"stitcher": "a" * 32, "project": "b" * 32, "id": f"{n:032d}"}
            connection.execute(text(ENTRY), row | of)
    migrate(house)
    with db.engine.connect() as connection:
        total = 'SELECT thread, "pass", stitches, spent, touches FROM thread_total'
        assert connection.execute(text(total)).all() == [("Sea green", "cross", 12, 14, 3)]
        at = "SELECT tally, stitches, spent, touches FROM thread_at ORDER BY tally"
        assert connection.execute(text(at)).all() == [("cross 1", 7, 9, 2), ("cross 2", 5, 5, 1)]
        assert connection.execute(text("SELECT count(*) FROM entry WHERE thread IS NULL")).scalar() == 1


LAID = """INSERT INTO entry (stitcher, id, project, kind, at, said, fields, by, tally, cancelled)
    VALUES (:stitcher, :id, :project, 'stitches', :at, :at, :fields, :by, 'cross 1', :cancelled)"""
SITTING = """INSERT INTO sitting (stitcher, project, id, begun, closers, begin, "end", struck)
    VALUES (:stitcher, :project, :id, :begin, :closers, :begin, :end, false)"""


def test_quarters_and_long_sittings_are_worked_out_from_what_was_there(house):
    step(command.upgrade, "0004")
    of = {"stitcher": "a" * 32, "project": "b" * 32}
    with db.engine.connect().execution_options(writing=True) as connection, connection.begin():
        connection.execute(text(ACCOUNT), {"id": of["stitcher"]})
        connection.execute(text(PROJECT), {"stitcher": of["stitcher"], "id": of["project"]})
        for n, (time, by, fields, cancelled) in enumerate(
            [
                ("20:01:00", 5, "{}", False),
                ("20:14:59.999", 4, '{"why": "stitched"}', False),
                ("20:15:00", 3, "{}", False),
                ("20:02:00", 90, '{"why": "before"}', False),
                ("20:03:00", 70, "{}", True),
            ]
        ):
            laid = {"at": f"2026-02-10 {time}", "by": by, "fields": fields, "cancelled": cancelled}
            connection.execute(text(LAID), of | laid | {"id": f"{n:032}"})
        for id, end in (("c", "2026-02-10 21:00:00"), ("d", "2026-02-12 21:00:00"), ("e", None)):
            times = {"begin": "2026-02-10 20:00:00", "end": end, "closers": int(end is not None)}
            connection.execute(text(SITTING), of | times | {"id": id * 32})
    migrate(house)
    with db.engine.connect() as connection:
        kept = connection.execute(text("SELECT quarter, pass, stitches FROM quarter ORDER BY 1")).all()
        eight = (datetime(2026, 2, 10, 20) - datetime(1970, 1, 1)) // timedelta(minutes=15)
        assert kept == [(eight, "cross", 9), (eight + 1, "cross", 3)]
        long = connection.execute(text("SELECT id FROM sitting WHERE over_a_day ORDER BY id")).scalars().all()
        assert long == ["d" * 32, "e" * 32]
        indexes = text("SELECT sql FROM sqlite_master WHERE tbl_name = 'sitting' AND name = 'sitting_open'")
        assert "WHERE (begun IS NULL)" in connection.execute(indexes).scalar()


def test_the_newest_shape_is_what_the_models_say(house):
    migrate(house)
    with db.engine.connect() as connection:
        context = MigrationContext.configure(connection, opts={"compare_type": True})
        assert compare_metadata(context, Base.metadata) == []
