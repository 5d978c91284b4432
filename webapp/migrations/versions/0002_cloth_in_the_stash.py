"""cloth in the stash

Revision ID: 0002
Revises: 0001
"""

import sqlalchemy as sa
from alembic import op

import webapp.db

revision = "0002"
down_revision = "0001"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_table(
        "cloth",
        sa.Column("stitcher", sa.Uuid(), nullable=False),
        sa.Column("id", sa.Uuid(), nullable=False),
        sa.Column("name", sa.String(length=120), nullable=False),
        sa.Column("kind", sa.String(length=7), nullable=False),
        sa.Column("along", sa.Double(), nullable=False),
        sa.Column("along_error", sa.Double(), nullable=True),
        sa.Column("across", sa.Double(), nullable=True),
        sa.Column("across_error", sa.Double(), nullable=True),
        sa.Column("width", sa.Double(), nullable=True),
        sa.Column("length", sa.Double(), nullable=True),
        sa.Column("note", sa.String(length=500), nullable=False),
        sa.Column("created", webapp.db.UTCDateTime(), nullable=False),
        sa.Column("put_away", webapp.db.UTCDateTime(), nullable=True),
        sa.ForeignKeyConstraint(["stitcher"], ["account.id"], name=op.f("cloth_stitcher_of_account")),
        sa.PrimaryKeyConstraint("stitcher", "id", name=op.f("cloth_key")),
    )


def downgrade() -> None:
    op.drop_table("cloth")
