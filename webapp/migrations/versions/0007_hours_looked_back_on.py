"""hours looked back on

Revision ID: 0007
Revises: 0006
"""

from collections import Counter
from datetime import UTC, datetime, timedelta

import sqlalchemy as sa
from alembic import op

import webapp.db

revision = "0007"
down_revision = "0006"
branch_labels = None
depends_on = None

PARTIAL = (
    ("sitting", "sitting_over_days", ["begin"], "over_a_day"),
    ("sitting", "sitting_struck", [], "struck"),
    ("entry", "frame_of_any", ["at"], "kind = 'frame' AND NOT cancelled"),
    ("latest", "done_by_time", ["at"], "substr(register, 1, 11) = 'done cross '"),
)
EPOCH = datetime(1970, 1, 1, tzinfo=UTC)
WHOLE = sa.BigInteger().with_variant(sa.Integer(), "sqlite")


def upgrade() -> None:
    op.create_table(
        "quarter",
        sa.Column("stitcher", sa.Uuid(), nullable=False),
        sa.Column("project", sa.Uuid(), nullable=False),
        sa.Column("quarter", WHOLE, nullable=False),
        sa.Column("pass", sa.String(length=5), nullable=False),
        sa.Column("stitches", WHOLE, nullable=False),
        sa.ForeignKeyConstraint(
            ["stitcher", "project"],
            ["project.stitcher", "project.id"],
            name=op.f("quarter_stitcher_of_project"),
        ),
        sa.PrimaryKeyConstraint("stitcher", "project", "quarter", "pass", name=op.f("quarter_key")),
    )
    with op.batch_alter_table("quarter", schema=None) as batch_op:
        batch_op.create_index("quarter_by_time", ["stitcher", "quarter", "pass", "project", "stitches"])
    op.create_table(
        "quarter_at",
        sa.Column("stitcher", sa.Uuid(), nullable=False),
        sa.Column("project", sa.Uuid(), nullable=False),
        sa.Column("quarter", WHOLE, nullable=False),
        sa.Column("tally", sa.String(length=20), nullable=False),
        sa.Column("pass", sa.String(length=5), nullable=False),
        sa.Column("stitches", WHOLE, nullable=False),
        sa.ForeignKeyConstraint(
            ["stitcher", "project"],
            ["project.stitcher", "project.id"],
            name=op.f("quarter_at_stitcher_of_project"),
        ),
        sa.PrimaryKeyConstraint("stitcher", "project", "quarter", "tally", name=op.f("quarter_at_key")),
    )
    op.create_table(
        "turn",
        sa.Column("stitcher", sa.Uuid(), nullable=False),
        sa.Column("project", sa.Uuid(), nullable=False),
        sa.Column("at", webapp.db.UTCDateTime(), nullable=False),
        sa.Column("state", sa.String(length=8), nullable=False),
        sa.ForeignKeyConstraint(
            ["stitcher", "project"], ["project.stitcher", "project.id"], name=op.f("turn_stitcher_of_project")
        ),
        sa.PrimaryKeyConstraint("stitcher", "project", "at", name=op.f("turn_key")),
    )
    op.create_table(
        "photograph",
        sa.Column("stitcher", sa.Uuid(), nullable=False),
        sa.Column("project", sa.Uuid(), nullable=False),
        sa.Column("id", sa.Uuid(), nullable=False),
        sa.Column("file", sa.Uuid(), nullable=False),
        sa.Column("at", webapp.db.UTCDateTime(), nullable=False),
        sa.Column("line", sa.String(length=200), nullable=False),
        sa.Column("width", WHOLE, nullable=False),
        sa.Column("height", WHOLE, nullable=False),
        sa.ForeignKeyConstraint(
            ["stitcher", "project"],
            ["project.stitcher", "project.id"],
            name=op.f("photograph_stitcher_of_project"),
        ),
        sa.PrimaryKeyConstraint("stitcher", "project", "id", name=op.f("photograph_key")),
    )
    with op.batch_alter_table("photograph", schema=None) as batch_op:
        batch_op.create_index("photograph_by_age", ["stitcher", "project", "at"])
    with op.batch_alter_table("sitting", schema=None) as batch_op:
        batch_op.add_column(sa.Column("over_a_day", sa.Boolean(), nullable=False, server_default=sa.false()))
    with op.batch_alter_table("sitting", schema=None) as batch_op:
        batch_op.alter_column("over_a_day", server_default=None)
    for table, name, columns, condition in PARTIAL:
        where = sa.text(condition)
        op.create_index(name, table, ["stitcher", *columns], sqlite_where=where, postgresql_where=where)
    _work_out(op.get_bind())


def _work_out(connection: sa.Connection) -> None:
    """Work out from the entries what the journal would have kept."""
    moment = webapp.db.UTCDateTime()
    sitting = sa.table(
        "sitting", sa.column("stitcher"), sa.column("project"), sa.column("id"),
        sa.column("begin", moment), sa.column("end", moment), sa.column("over_a_day"),
    )  # fmt: skip
    for row in connection.execute(sa.select(sitting).where(sitting.c.begin.is_not(None))).all():
        if row.end is None or (row.end - row.begin).total_seconds() > 86_400:
            named = (sitting.c.stitcher == row.stitcher, sitting.c.id == row.id)
            connection.execute(
                sa.update(sitting).where(*named, sitting.c.project == row.project).values(over_a_day=True)
            )
    sums: Counter[tuple[object, ...]] = Counter()
    entry = sa.table(
        "entry", sa.column("stitcher"), sa.column("project"), sa.column("at", moment), sa.column("tally"),
        sa.column("by"), sa.column("fields", sa.JSON()),
    )  # fmt: skip
    live = sa.text("kind = 'stitches' AND NOT cancelled")
    for row in connection.execute(sa.select(entry).where(live)):
        if row.fields.get("why") in (None, "stitched"):
            number = (row.at - EPOCH) // timedelta(minutes=15)
            sums[row.stitcher, row.project, number, row.tally] += row.by
    whole: Counter[tuple[object, ...]] = Counter()
    for (stitcher, project, number, tally), stitches in sums.items():
        whole[stitcher, project, number, str(tally).split(" ")[0]] += stitches
    at = [(*of, str(of[3]).split(" ")[0], stitches) for of, stitches in sums.items()]
    _put(connection, "quarter_at", ("tally", "pass"), at)
    _put(connection, "quarter", ("pass",), [(*of, stitches) for of, stitches in whole.items()])


def _put(connection: sa.Connection, name: str, of: tuple[str, ...], rows: list[tuple[object, ...]]) -> None:
    columns = ("stitcher", "project", "quarter", *of, "stitches")
    table = sa.table(name, *(sa.column(one) for one in columns))
    for start in range(0, len(rows), 5_000):
        some = [dict(zip(columns, row, strict=True)) for row in rows[start : start + 5_000]]
        connection.execute(sa.insert(table), some)


def downgrade() -> None:
    for table, name, *_ in PARTIAL:
        op.drop_index(name, table_name=table)
    with op.batch_alter_table("sitting", schema=None) as batch_op:
        batch_op.drop_column("over_a_day")
    with op.batch_alter_table("photograph", schema=None) as batch_op:
        batch_op.drop_index("photograph_by_age")
    op.drop_table("photograph")
    op.drop_table("turn")
    op.drop_table("quarter_at")
    with op.batch_alter_table("quarter", schema=None) as batch_op:
        batch_op.drop_index("quarter_by_time")
    op.drop_table("quarter")
