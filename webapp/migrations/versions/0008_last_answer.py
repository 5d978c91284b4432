"""when she last answered for a night

Revision ID: 0008
Revises: 0007
"""

import sqlalchemy as sa
from alembic import op

import webapp.db

revision = "0008"
down_revision = "0007"
branch_labels = None
depends_on = None


def upgrade() -> None:
    with op.batch_alter_table("reminder_choice", schema=None) as batch_op:
        batch_op.add_column(sa.Column("answered", webapp.db.UTCDateTime(), nullable=True))


def downgrade() -> None:
    with op.batch_alter_table("reminder_choice", schema=None) as batch_op:
        batch_op.drop_column("answered")
