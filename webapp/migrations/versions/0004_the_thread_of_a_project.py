"""the thread of a project

Revision ID: 0004
Revises: 0003
"""

import sqlalchemy as sa
from alembic import op

import webapp.db

revision = "0004"
down_revision = "0003"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_table(
        "kept_thread",
        sa.Column("stitcher", sa.Uuid(), nullable=False),
        sa.Column("id", sa.Uuid(), nullable=False),
        sa.Column("thread", sa.String(length=100), nullable=False),
        sa.Column("kind", sa.String(length=12), nullable=False),
        sa.Column("colour", sa.String(length=7), nullable=True),
        sa.Column("lot", sa.String(length=40), nullable=False),
        sa.Column("skeins", sa.Double(), nullable=False),
        sa.Column("lengths", sa.Double(), nullable=False),
        sa.Column("note", sa.String(length=500), nullable=False),
        sa.Column("counted", webapp.db.UTCDateTime(), nullable=False),
        sa.Column("created", webapp.db.UTCDateTime(), nullable=False),
        sa.Column("put_away", webapp.db.UTCDateTime(), nullable=True),
        sa.ForeignKeyConstraint(["stitcher"], ["account.id"], name=op.f("kept_thread_stitcher_of_account")),
        sa.PrimaryKeyConstraint("stitcher", "id", name=op.f("kept_thread_key")),
    )
    op.create_table(
        "legend_line",
        sa.Column("stitcher", sa.Uuid(), nullable=False),
        sa.Column("project", sa.Uuid(), nullable=False),
        sa.Column("id", sa.Uuid(), nullable=False),
        sa.Column("key", sa.String(length=100), nullable=False),
        sa.Column("position", sa.BigInteger().with_variant(sa.Integer(), "sqlite"), nullable=False),
        sa.Column("symbol", sa.String(length=12), nullable=False),
        sa.Column("colour", sa.String(length=7), nullable=True),
        sa.Column("parts", sa.JSON(), nullable=False),
        sa.Column("full", sa.BigInteger().with_variant(sa.Integer(), "sqlite"), nullable=False),
        sa.Column("half", sa.BigInteger().with_variant(sa.Integer(), "sqlite"), nullable=False),
        sa.Column("quarter", sa.BigInteger().with_variant(sa.Integer(), "sqlite"), nullable=False),
        sa.Column("three_quarter", sa.BigInteger().with_variant(sa.Integer(), "sqlite"), nullable=False),
        sa.Column("back", sa.BigInteger().with_variant(sa.Integer(), "sqlite"), nullable=False),
        sa.Column("knots", sa.BigInteger().with_variant(sa.Integer(), "sqlite"), nullable=False),
        sa.Column("beads", sa.BigInteger().with_variant(sa.Integer(), "sqlite"), nullable=False),
        sa.Column("method", sa.String(length=5), nullable=True),
        sa.Column("scatter", sa.String(length=9), nullable=False),
        sa.Column("patches", sa.BigInteger().with_variant(sa.Integer(), "sqlite"), nullable=True),
        sa.Column("working", sa.Double(), nullable=True),
        sa.Column("note", sa.String(length=500), nullable=False),
        sa.ForeignKeyConstraint(
            ["stitcher", "project"],
            ["project.stitcher", "project.id"],
            name=op.f("legend_line_stitcher_of_project"),
        ),
        sa.PrimaryKeyConstraint("stitcher", "project", "id", name=op.f("legend_line_key")),
    )
    with op.batch_alter_table("legend_line", schema=None) as batch_op:
        batch_op.create_index("legend_line_by_key", ["stitcher", "project", "key"], unique=True)

    op.create_table(
        "sheet_line",
        sa.Column("stitcher", sa.Uuid(), nullable=False),
        sa.Column("project", sa.Uuid(), nullable=False),
        sa.Column("sheet", sa.String(length=9), nullable=False),
        sa.Column("item", sa.String(length=160), nullable=False),
        sa.Column("own", sa.Boolean(), nullable=False),
        sa.Column("ticked", sa.Boolean(), nullable=False),
        sa.Column("created", webapp.db.UTCDateTime(), nullable=False),
        sa.ForeignKeyConstraint(
            ["stitcher", "project"],
            ["project.stitcher", "project.id"],
            name=op.f("sheet_line_stitcher_of_project"),
        ),
        sa.PrimaryKeyConstraint("stitcher", "project", "sheet", "item", name=op.f("sheet_line_key")),
    )
    op.create_table(
        "thread_reading",
        sa.Column("stitcher", sa.Uuid(), nullable=False),
        sa.Column("project", sa.Uuid(), nullable=False),
        sa.Column("id", sa.Uuid(), nullable=False),
        sa.Column("line", sa.Uuid(), nullable=True),
        sa.Column("what", sa.String(length=6), nullable=False),
        sa.Column("stitches", sa.BigInteger().with_variant(sa.Integer(), "sqlite"), nullable=True),
        sa.Column("length", sa.Double(), nullable=False),
        sa.Column("strands", sa.BigInteger().with_variant(sa.Integer(), "sqlite"), nullable=True),
        sa.Column("method", sa.String(length=5), nullable=True),
        sa.Column("made", webapp.db.UTCDateTime(), nullable=False),
        sa.ForeignKeyConstraint(
            ["stitcher", "project"],
            ["project.stitcher", "project.id"],
            name=op.f("thread_reading_stitcher_of_project"),
        ),
        sa.PrimaryKeyConstraint("stitcher", "project", "id", name=op.f("thread_reading_key")),
    )
    with op.batch_alter_table("thread_reading", schema=None) as batch_op:
        batch_op.create_index("thread_reading_by_project", ["stitcher", "project", "made"], unique=False)

    with op.batch_alter_table("project", schema=None) as batch_op:
        batch_op.add_column(
            sa.Column("chart_total", sa.BigInteger().with_variant(sa.Integer(), "sqlite"), nullable=True)
        )
        batch_op.add_column(sa.Column("legend", sa.JSON(), nullable=True))


def downgrade() -> None:
    with op.batch_alter_table("project", schema=None) as batch_op:
        batch_op.drop_column("legend")
        batch_op.drop_column("chart_total")

    with op.batch_alter_table("thread_reading", schema=None) as batch_op:
        batch_op.drop_index("thread_reading_by_project")

    op.drop_table("thread_reading")
    op.drop_table("sheet_line")
    with op.batch_alter_table("legend_line", schema=None) as batch_op:
        batch_op.drop_index("legend_line_by_key")

    op.drop_table("legend_line")
    op.drop_table("kept_thread")
