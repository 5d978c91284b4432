"""How Alembic meets this application: one engine, handed over by ``webapp.migrate``."""

from alembic import context

from webapp.accounts import models as _accounts  # noqa: F401
from webapp.cloth import models as _cloth  # noqa: F401
from webapp.db import Base
from webapp.journal import models as _journal  # noqa: F401
from webapp.projects import models as _projects  # noqa: F401
from webapp.reminders import models as _reminders  # noqa: F401
from webapp.threads import models as _threads  # noqa: F401

connection = context.config.attributes["connection"]
context.configure(
    connection=connection, target_metadata=Base.metadata, render_as_batch=True, compare_type=True
)
with context.begin_transaction():
    context.run_migrations()
