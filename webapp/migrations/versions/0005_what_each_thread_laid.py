"""what each thread laid

Revision ID: 0005
Revises: 0004
"""

from collections import defaultdict

import sqlalchemy as sa
from alembic import op

revision = "0005"
down_revision = "0004"
branch_labels = None
depends_on = None

WHOLE = sa.BigInteger().with_variant(sa.Integer(), "sqlite")
ENTRY = sa.table(
    "entry",
    *(sa.column(name, sa.Uuid()) for name in ("stitcher", "id", "project")),
    *(sa.column(name, sa.String()) for name in ("kind", "tally", "thread")),
    *(sa.column(name, WHOLE) for name in ("by", "spent")),
    sa.column("cancelled", sa.Boolean()),
    sa.column("fields", sa.JSON()),
)
OF_A_THREAD = sa.text("thread IS NOT NULL")


def upgrade() -> None:
    made = {"thread_at": ("thread", "tally"), "thread_total": ("thread", "pass")}
    for name, key in made.items():
        op.create_table(
            name,
            sa.Column("stitcher", sa.Uuid(), nullable=False),
            sa.Column("project", sa.Uuid(), nullable=False),
            sa.Column("thread", sa.String(length=100), nullable=False),
            *([sa.Column("tally", sa.String(length=20), nullable=False)] if "tally" in key else []),
            sa.Column("pass", sa.String(length=5), nullable=False),
            *(sa.Column(one, WHOLE, nullable=False) for one in ("stitches", "spent", "touches")),
            sa.ForeignKeyConstraint(
                ["stitcher", "project"],
                ["project.stitcher", "project.id"],
                name=op.f(f"{name}_stitcher_of_project"),
            ),
            sa.PrimaryKeyConstraint("stitcher", "project", *key, name=op.f(f"{name}_key")),
        )
    op.add_column("entry", sa.Column("thread", sa.String(length=100), nullable=True))
    op.add_column("entry", sa.Column("spent", WHOLE, nullable=True))
    wind_up(op.get_bind())
    op.create_index(
        "entry_by_thread",
        "entry",
        ["stitcher", "project", "thread", "tally", "cancelled", "by", "spent"],
        sqlite_where=OF_A_THREAD,
        postgresql_where=OF_A_THREAD,
    )


def wind_up(connection: sa.Connection) -> None:
    """Work out what entries say of threads that came before there were sums of them."""
    named = sa.cast(ENTRY.c.fields, sa.Text()).like('%"thread"%')
    at: dict[tuple[object, ...], list[int]] = defaultdict(lambda: [0, 0, 0])
    total: dict[tuple[object, ...], list[int]] = defaultdict(lambda: [0, 0, 0])
    for row in connection.execute(sa.select(ENTRY).where(ENTRY.c.kind == "stitches", named)).all():
        thread = row.fields.get("thread")
        if not thread:
            continue
        spent = row.by if row.fields.get("why") in (None, "stitched") else 0
        mine = sa.and_(ENTRY.c.stitcher == row.stitcher, ENTRY.c.id == row.id)
        connection.execute(sa.update(ENTRY).where(mine).values(thread=thread, spent=spent))
        name = row.tally.split(" ")[0]
        for sums, key in ((at, (thread, row.tally, name)), (total, (thread, name))):
            one = sums[row.stitcher, row.project, *key]
            for i, by in enumerate((row.by, spent, 1)):
                one[i] += 0 if row.cancelled else by
    _put(connection, "thread_at", ("stitcher", "project", "thread", "tally", "pass"), at)
    _put(connection, "thread_total", ("stitcher", "project", "thread", "pass"), total)


def _put(
    connection: sa.Connection, name: str, key: tuple[str, ...], sums: dict[tuple[object, ...], list[int]]
) -> None:
    columns = [sa.column(one, sa.Uuid() if one in ("stitcher", "project") else sa.String()) for one in key]
    numbers = ("stitches", "spent", "touches")
    table = sa.table(name, *columns, *(sa.column(one, WHOLE) for one in numbers))
    rows = [dict(zip((*key, *numbers), (*of, *values), strict=True)) for of, values in sums.items()]
    if rows:
        connection.execute(sa.insert(table), rows)


def downgrade() -> None:
    op.drop_index("entry_by_thread", "entry")
    with op.batch_alter_table("entry", schema=None) as batch_op:
        batch_op.drop_column("spent")
        batch_op.drop_column("thread")
    op.drop_table("thread_total")
    op.drop_table("thread_at")
