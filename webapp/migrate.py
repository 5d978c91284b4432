"""Bring a database to the newest shape, under a lock, and give it its house."""

from pathlib import Path
from uuid import uuid4

from alembic import command
from alembic.config import Config as AlembicConfig
from flask import Flask
from sqlalchemy import insert, select, text
from sqlalchemy.engine import Connection

from webapp.accounts.models import House
from webapp.db import db

MIGRATIONS = Path(__file__).parent / "migrations"


def settings(connection: Connection) -> AlembicConfig:
    """Point Alembic at our migrations and an open connection."""
    config = AlembicConfig()
    config.set_main_option("script_location", str(MIGRATIONS))
    config.attributes["connection"] = connection
    return config


def migrate(app: Flask) -> None:
    """Upgrade to the newest shape; two processes that start at once take turns."""
    with app.app_context():
        engine = db.engine
        with engine.connect().execution_options(writing=True) as connection, connection.begin():
            if engine.dialect.name == "postgresql":
                connection.execute(text("SELECT pg_advisory_xact_lock(7361)"))
            command.upgrade(settings(connection), "head")
            if connection.execute(select(House.one)).first() is None:
                connection.execute(insert(House).values(one=1, id=uuid4(), owner=None))
        engine.dispose()
