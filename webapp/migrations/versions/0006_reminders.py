"""reminders

Revision ID: 0006
Revises: 0005
"""

import sqlalchemy as sa
from alembic import op

import webapp.db

revision = "0006"
down_revision = "0005"
branch_labels = None
depends_on = None
WAITING = sa.text("state = 'waiting'")
WHERE = {"sqlite_where": WAITING, "postgresql_where": WAITING}


def upgrade() -> None:
    op.create_table(
        "push_phone",
        sa.Column("stitcher", sa.Uuid(), nullable=False),
        sa.Column("id", sa.Uuid(), nullable=False),
        sa.Column("session", sa.Uuid(), nullable=False),
        sa.Column("endpoint", sa.String(length=1000), nullable=False),
        sa.Column("endpoint_hash", sa.String(length=64), nullable=False),
        sa.Column("p256dh", sa.String(length=100), nullable=False),
        sa.Column("auth", sa.String(length=30), nullable=False),
        sa.Column("key", sa.String(length=100), nullable=False),
        sa.Column("origin", sa.String(length=200), nullable=False),
        sa.Column("device", sa.String(length=80), nullable=False),
        sa.Column("created", webapp.db.UTCDateTime(), nullable=False),
        sa.Column("reached", webapp.db.UTCDateTime(), nullable=True),
        sa.Column("failures", sa.BigInteger().with_variant(sa.Integer(), "sqlite"), nullable=False),
        sa.ForeignKeyConstraint(["stitcher"], ["account.id"], name=op.f("push_phone_stitcher_of_account")),
        sa.PrimaryKeyConstraint("stitcher", "id", name=op.f("push_phone_key")),
    )
    with op.batch_alter_table("push_phone", schema=None) as batch_op:
        batch_op.create_index("push_phone_by_endpoint", ["endpoint_hash"], unique=False)

    op.create_table(
        "reminder_choice",
        sa.Column("stitcher", sa.Uuid(), nullable=False),
        sa.Column("at_bedtime", sa.Boolean(), nullable=False),
        sa.Column("hours", sa.BigInteger().with_variant(sa.Integer(), "sqlite"), nullable=True),
        sa.Column("left", sa.Date(), nullable=True),
        sa.Column("away", sa.Date(), nullable=True),
        sa.Column("show_title", sa.Boolean(), nullable=False),
        sa.Column("email", sa.String(length=254), nullable=True),
        sa.Column("email_asked", sa.String(length=254), nullable=True),
        sa.Column("email_token", sa.String(length=64), nullable=True),
        sa.Column("email_failures", sa.BigInteger().with_variant(sa.Integer(), "sqlite"), nullable=False),
        sa.Column("feed", sa.String(length=64), nullable=True),
        sa.Column("origin", sa.String(length=200), nullable=False),
        sa.Column("tested", webapp.db.UTCDateTime(), nullable=True),
        sa.Column("trouble", sa.String(length=120), nullable=True),
        sa.ForeignKeyConstraint(
            ["stitcher"], ["account.id"], name=op.f("reminder_choice_stitcher_of_account")
        ),
        sa.PrimaryKeyConstraint("stitcher", name=op.f("reminder_choice_key")),
        sa.UniqueConstraint("feed", name=op.f("reminder_choice_by_feed")),
    )
    op.create_table(
        "told",
        sa.Column("stitcher", sa.Uuid(), nullable=False),
        sa.Column("night", sa.Date(), nullable=False),
        sa.Column("kind", sa.String(length=8), nullable=False),
        sa.Column("state", sa.String(length=8), nullable=False),
        sa.Column("due", webapp.db.UTCDateTime(), nullable=False),
        sa.Column("until", webapp.db.UTCDateTime(), nullable=False),
        sa.Column("next_try", webapp.db.UTCDateTime(), nullable=False),
        sa.Column("lease", webapp.db.UTCDateTime(), nullable=True),
        sa.Column("tries", sa.BigInteger().with_variant(sa.Integer(), "sqlite"), nullable=False),
        sa.Column("reached", sa.JSON(), nullable=False),
        sa.ForeignKeyConstraint(["stitcher"], ["account.id"], name=op.f("told_stitcher_of_account")),
        sa.PrimaryKeyConstraint("stitcher", "night", "kind", name=op.f("told_key")),
    )
    with op.batch_alter_table("told", schema=None) as batch_op:
        batch_op.create_index("told_waiting", ["next_try"], unique=False, **WHERE)


def downgrade() -> None:
    with op.batch_alter_table("told", schema=None) as batch_op:
        batch_op.drop_index("told_waiting", **WHERE)

    op.drop_table("told")
    op.drop_table("reminder_choice")
    with op.batch_alter_table("push_phone", schema=None) as batch_op:
        batch_op.drop_index("push_phone_by_endpoint")

    op.drop_table("push_phone")
