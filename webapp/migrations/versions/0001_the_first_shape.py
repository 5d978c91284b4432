"""the first shape

Revision ID: 0001
Revises:
"""

import sqlalchemy as sa
from alembic import op

import webapp.db

revision = "0001"
down_revision = None
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_table(
        "account",
        sa.Column("id", sa.Uuid(), nullable=False),
        sa.Column("name", sa.String(length=60), nullable=True),
        sa.Column("name_key", sa.String(length=200), nullable=True),
        sa.Column("passphrase_hash", sa.String(length=200), nullable=True),
        sa.Column("zone", sa.String(length=64), nullable=False),
        sa.Column("unit", sa.String(length=2), nullable=False),
        sa.Column("week_start", sa.BigInteger().with_variant(sa.Integer(), "sqlite"), nullable=False),
        sa.Column("bedtime", sa.Time(), nullable=False),
        sa.Column("hand", sa.String(length=5), nullable=False),
        sa.Column("created", webapp.db.UTCDateTime(), nullable=False),
        sa.Column("given_to", sa.Uuid(), nullable=True),
        sa.ForeignKeyConstraint(["given_to"], ["account.id"], name=op.f("account_given_to_of_account")),
        sa.PrimaryKeyConstraint("id", name=op.f("account_key")),
        sa.UniqueConstraint("name_key", name=op.f("account_by_name_key")),
    )
    op.create_table(
        "house",
        sa.Column("one", sa.BigInteger().with_variant(sa.Integer(), "sqlite"), nullable=False),
        sa.Column("id", sa.Uuid(), nullable=False),
        sa.Column("owner", sa.Uuid(), nullable=True),
        sa.ForeignKeyConstraint(["owner"], ["account.id"], name=op.f("house_owner_of_account")),
        sa.PrimaryKeyConstraint("one", name=op.f("house_key")),
    )
    op.create_table(
        "invitation",
        sa.Column("stitcher", sa.Uuid(), nullable=False),
        sa.Column("id", sa.Uuid(), nullable=False),
        sa.Column("token_hash", sa.String(length=64), nullable=False),
        sa.Column("created", webapp.db.UTCDateTime(), nullable=False),
        sa.Column("used", webapp.db.UTCDateTime(), nullable=True),
        sa.ForeignKeyConstraint(["stitcher"], ["account.id"], name=op.f("invitation_stitcher_of_account")),
        sa.PrimaryKeyConstraint("stitcher", "id", name=op.f("invitation_key")),
        sa.UniqueConstraint("token_hash", name=op.f("invitation_by_token_hash")),
    )
    op.create_table(
        "project",
        sa.Column("stitcher", sa.Uuid(), nullable=False),
        sa.Column("id", sa.Uuid(), nullable=False),
        sa.Column("title", sa.String(length=120), nullable=False),
        sa.Column("width", sa.BigInteger().with_variant(sa.Integer(), "sqlite"), nullable=False),
        sa.Column("height", sa.BigInteger().with_variant(sa.Integer(), "sqlite"), nullable=False),
        sa.Column("count", sa.Double(), nullable=False),
        sa.Column("over", sa.BigInteger().with_variant(sa.Integer(), "sqlite"), nullable=False),
        sa.Column("state", sa.String(length=8), nullable=False),
        sa.Column("working", sa.String(length=6), nullable=False),
        sa.Column("direction", sa.String(length=6), nullable=False),
        sa.Column("first_row", sa.BigInteger().with_variant(sa.Integer(), "sqlite"), nullable=False),
        sa.Column("start_column", sa.BigInteger().with_variant(sa.Integer(), "sqlite"), nullable=False),
        sa.Column("start_way", sa.String(length=5), nullable=False),
        sa.Column("expected", sa.BigInteger().with_variant(sa.Integer(), "sqlite"), nullable=True),
        sa.Column("block_from", sa.String(length=12), nullable=False),
        sa.Column("block_way", sa.String(length=6), nullable=False),
        sa.Column("step", sa.String(length=4), nullable=False),
        sa.Column("frame", sa.String(length=9), nullable=False),
        sa.Column("plan_revision", sa.BigInteger().with_variant(sa.Integer(), "sqlite"), nullable=False),
        sa.Column("created", webapp.db.UTCDateTime(), nullable=False),
        sa.Column("put_away", webapp.db.UTCDateTime(), nullable=True),
        sa.ForeignKeyConstraint(["stitcher"], ["account.id"], name=op.f("project_stitcher_of_account")),
        sa.PrimaryKeyConstraint("stitcher", "id", name=op.f("project_key")),
    )
    with op.batch_alter_table("project", schema=None) as batch_op:
        batch_op.create_index("project_by_age", ["stitcher", "created"], unique=False)

    op.create_table(
        "signed_in",
        sa.Column("stitcher", sa.Uuid(), nullable=False),
        sa.Column("id", sa.Uuid(), nullable=False),
        sa.Column("token_hash", sa.String(length=64), nullable=False),
        sa.Column("device", sa.String(length=80), nullable=False),
        sa.Column("offset_ms", sa.BigInteger().with_variant(sa.Integer(), "sqlite"), nullable=False),
        sa.Column("created", webapp.db.UTCDateTime(), nullable=False),
        sa.Column("seen", webapp.db.UTCDateTime(), nullable=False),
        sa.Column("expires", webapp.db.UTCDateTime(), nullable=False),
        sa.ForeignKeyConstraint(["stitcher"], ["account.id"], name=op.f("signed_in_stitcher_of_account")),
        sa.PrimaryKeyConstraint("stitcher", "id", name=op.f("signed_in_key")),
        sa.UniqueConstraint("token_hash", name=op.f("signed_in_by_token_hash")),
    )
    op.create_table(
        "entry",
        sa.Column("stitcher", sa.Uuid(), nullable=False),
        sa.Column("id", sa.Uuid(), nullable=False),
        sa.Column("project", sa.Uuid(), nullable=False),
        sa.Column("kind", sa.String(length=8), nullable=False),
        sa.Column("at", webapp.db.UTCDateTime(), nullable=False),
        sa.Column("said", webapp.db.UTCDateTime(), nullable=False),
        sa.Column("fields", sa.JSON(), nullable=False),
        sa.Column("by", sa.BigInteger().with_variant(sa.Integer(), "sqlite"), nullable=True),
        sa.Column("tally", sa.String(length=20), nullable=True),
        sa.Column("register", sa.String(length=200), nullable=True),
        sa.Column("hand", sa.String(length=5), nullable=True),
        sa.Column("sitting", sa.Uuid(), nullable=True),
        sa.Column("act", sa.Uuid(), nullable=True),
        sa.Column("cancelled", sa.Boolean(), nullable=False),
        sa.ForeignKeyConstraint(
            ["stitcher", "project"],
            ["project.stitcher", "project.id"],
            name=op.f("entry_stitcher_of_project"),
        ),
        sa.PrimaryKeyConstraint("stitcher", "id", name=op.f("entry_key")),
    )
    with op.batch_alter_table("entry", schema=None) as batch_op:
        batch_op.create_index(
            "entry_by_act",
            ["stitcher", "project", "act"],
            unique=False,
            sqlite_where=sa.text("act IS NOT NULL"),
            postgresql_where=sa.text("act IS NOT NULL"),
        )
        batch_op.create_index(
            "entry_by_hand",
            ["stitcher", "project", "hand", "cancelled", "at", "id"],
            unique=False,
            sqlite_where=sa.text("hand IS NOT NULL"),
            postgresql_where=sa.text("hand IS NOT NULL"),
        )
        batch_op.create_index(
            "entry_by_register",
            ["stitcher", "project", "register", "cancelled", "at", "id"],
            unique=False,
            sqlite_where=sa.text("register IS NOT NULL"),
            postgresql_where=sa.text("register IS NOT NULL"),
        )
        batch_op.create_index(
            "entry_by_sitting",
            ["stitcher", "project", "sitting"],
            unique=False,
            sqlite_where=sa.text("sitting IS NOT NULL"),
            postgresql_where=sa.text("sitting IS NOT NULL"),
        )
        batch_op.create_index(
            "entry_by_tally",
            ["stitcher", "project", "tally", "cancelled", "kind", "by"],
            unique=False,
            sqlite_where=sa.text("tally IS NOT NULL"),
            postgresql_where=sa.text("tally IS NOT NULL"),
        )
        batch_op.create_index(
            "entry_by_time",
            ["stitcher", "project", "cancelled", "at", "id"],
            unique=False,
            sqlite_where=sa.text("kind != 'undo'"),
            postgresql_where=sa.text("kind != 'undo'"),
        )
        batch_op.create_index(
            "frame_by_time",
            ["stitcher", "project", "at", "id"],
            unique=False,
            sqlite_where=sa.text("kind = 'frame' AND NOT cancelled"),
            postgresql_where=sa.text("kind = 'frame' AND NOT cancelled"),
        )
        batch_op.create_index(
            "stitches_by_time",
            ["stitcher", "at"],
            unique=False,
            sqlite_where=sa.text("kind = 'stitches' AND NOT cancelled"),
            postgresql_where=sa.text("kind = 'stitches' AND NOT cancelled"),
        )

    op.create_table(
        "latest",
        sa.Column("stitcher", sa.Uuid(), nullable=False),
        sa.Column("project", sa.Uuid(), nullable=False),
        sa.Column("register", sa.String(length=200), nullable=False),
        sa.Column("at", webapp.db.UTCDateTime(), nullable=True),
        sa.Column("entry", sa.Uuid(), nullable=True),
        sa.Column("value", sa.JSON(), nullable=False),
        sa.Column("revision", sa.BigInteger().with_variant(sa.Integer(), "sqlite"), nullable=False),
        sa.ForeignKeyConstraint(
            ["stitcher", "project"],
            ["project.stitcher", "project.id"],
            name=op.f("latest_stitcher_of_project"),
        ),
        sa.PrimaryKeyConstraint("stitcher", "project", "register", name=op.f("latest_key")),
    )
    op.create_table(
        "sitting",
        sa.Column("stitcher", sa.Uuid(), nullable=False),
        sa.Column("project", sa.Uuid(), nullable=False),
        sa.Column("id", sa.Uuid(), nullable=False),
        sa.Column("begun", webapp.db.UTCDateTime(), nullable=True),
        sa.Column("closers", sa.BigInteger().with_variant(sa.Integer(), "sqlite"), nullable=False),
        sa.Column("begin", webapp.db.UTCDateTime(), nullable=True),
        sa.Column("end", webapp.db.UTCDateTime(), nullable=True),
        sa.Column("struck", sa.Boolean(), nullable=False),
        sa.ForeignKeyConstraint(
            ["stitcher", "project"],
            ["project.stitcher", "project.id"],
            name=op.f("sitting_stitcher_of_project"),
        ),
        sa.PrimaryKeyConstraint("stitcher", "project", "id", name=op.f("sitting_key")),
    )
    with op.batch_alter_table("sitting", schema=None) as batch_op:
        batch_op.create_index("sitting_by_time", ["stitcher", "begin"], unique=False)
        batch_op.create_index(
            "sitting_open",
            ["stitcher", "project"],
            unique=False,
            sqlite_where=sa.text("(begun IS NULL) != (closers = 0)"),
            postgresql_where=sa.text("(begun IS NULL) != (closers = 0)"),
        )

    op.create_table(
        "standing",
        sa.Column("stitcher", sa.Uuid(), nullable=False),
        sa.Column("project", sa.Uuid(), nullable=False),
        sa.Column("revision", sa.BigInteger().with_variant(sa.Integer(), "sqlite"), nullable=False),
        sa.ForeignKeyConstraint(
            ["stitcher", "project"],
            ["project.stitcher", "project.id"],
            name=op.f("standing_stitcher_of_project"),
        ),
        sa.PrimaryKeyConstraint("stitcher", "project", name=op.f("standing_key")),
    )
    op.create_table(
        "total",
        sa.Column("stitcher", sa.Uuid(), nullable=False),
        sa.Column("project", sa.Uuid(), nullable=False),
        sa.Column("tally", sa.String(length=20), nullable=False),
        sa.Column("pass", sa.String(length=5), nullable=False),
        sa.Column("kind", sa.String(length=5), nullable=False),
        sa.Column("stitches", sa.BigInteger().with_variant(sa.Integer(), "sqlite"), nullable=False),
        sa.Column("bare", sa.BigInteger().with_variant(sa.Integer(), "sqlite"), nullable=False),
        sa.Column("touches", sa.BigInteger().with_variant(sa.Integer(), "sqlite"), nullable=False),
        sa.Column("done", sa.Boolean(), nullable=False),
        sa.Column("revision", sa.BigInteger().with_variant(sa.Integer(), "sqlite"), nullable=False),
        sa.ForeignKeyConstraint(
            ["stitcher", "project"],
            ["project.stitcher", "project.id"],
            name=op.f("total_stitcher_of_project"),
        ),
        sa.PrimaryKeyConstraint("stitcher", "project", "tally", name=op.f("total_key")),
    )


def downgrade() -> None:
    op.drop_table("total")
    op.drop_table("standing")
    with op.batch_alter_table("sitting", schema=None) as batch_op:
        batch_op.drop_index(
            "sitting_open",
            sqlite_where=sa.text("(begun IS NULL) != (closers = 0)"),
            postgresql_where=sa.text("(begun IS NULL) != (closers = 0)"),
        )
        batch_op.drop_index("sitting_by_time")

    op.drop_table("sitting")
    op.drop_table("latest")
    with op.batch_alter_table("entry", schema=None) as batch_op:
        batch_op.drop_index(
            "stitches_by_time",
            sqlite_where=sa.text("kind = 'stitches' AND NOT cancelled"),
            postgresql_where=sa.text("kind = 'stitches' AND NOT cancelled"),
        )
        batch_op.drop_index(
            "frame_by_time",
            sqlite_where=sa.text("kind = 'frame' AND NOT cancelled"),
            postgresql_where=sa.text("kind = 'frame' AND NOT cancelled"),
        )
        batch_op.drop_index(
            "entry_by_time",
            sqlite_where=sa.text("kind != 'undo'"),
            postgresql_where=sa.text("kind != 'undo'"),
        )
        batch_op.drop_index(
            "entry_by_tally",
            sqlite_where=sa.text("tally IS NOT NULL"),
            postgresql_where=sa.text("tally IS NOT NULL"),
        )
        batch_op.drop_index(
            "entry_by_sitting",
            sqlite_where=sa.text("sitting IS NOT NULL"),
            postgresql_where=sa.text("sitting IS NOT NULL"),
        )
        batch_op.drop_index(
            "entry_by_register",
            sqlite_where=sa.text("register IS NOT NULL"),
            postgresql_where=sa.text("register IS NOT NULL"),
        )
        batch_op.drop_index(
            "entry_by_hand",
            sqlite_where=sa.text("hand IS NOT NULL"),
            postgresql_where=sa.text("hand IS NOT NULL"),
        )
        batch_op.drop_index(
            "entry_by_act",
            sqlite_where=sa.text("act IS NOT NULL"),
            postgresql_where=sa.text("act IS NOT NULL"),
        )

    op.drop_table("entry")
    op.drop_table("signed_in")
    with op.batch_alter_table("project", schema=None) as batch_op:
        batch_op.drop_index("project_by_age")

    op.drop_table("project")
    op.drop_table("invitation")
    op.drop_table("house")
    op.drop_table("account")
