"""The database: engine, pragmas, the UTC type, and one writer at a time."""

import sqlite3
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import UTC, datetime
from typing import Any

from flask import g
from flask_sqlalchemy import SQLAlchemy
from sqlalchemy import BigInteger, DateTime, Dialect, Engine, Integer, MetaData, event
from sqlalchemy.engine import Connection
from sqlalchemy.exc import IntegrityError
from sqlalchemy.orm import DeclarativeBase, object_mapper
from sqlalchemy.types import TypeDecorator


class UTCDateTime(TypeDecorator[datetime]):
    """A moment in UTC; aware on the Python side, always with the zone given."""

    impl = DateTime
    cache_ok = True

    def process_bind_param(self, value: datetime | None, dialect: Dialect) -> datetime | None:
        """Take an aware moment to naive UTC."""
        if value is None:
            return None
        if value.tzinfo is None:
            raise ValueError("a moment needs its zone")
        return value.astimezone(UTC).replace(tzinfo=None)

    def process_result_value(self, value: datetime | None, dialect: Dialect) -> datetime | None:
        """Give the moment back aware."""
        return None if value is None else value.replace(tzinfo=UTC)


NAMES = {
    "uq": "%(table_name)s_by_%(column_0_name)s",
    "fk": "%(table_name)s_%(column_0_name)s_of_%(referred_table_name)s",
    "pk": "%(table_name)s_key",
}


class Base(DeclarativeBase):
    """The base of every table."""

    type_annotation_map = {datetime: UTCDateTime(), int: BigInteger().with_variant(Integer(), "sqlite")}
    metadata = MetaData(naming_convention=NAMES)


db = SQLAlchemy()
_writer = threading.RLock()
TURN = 0x65_76_65_6E_72_6F_77  # "evenrow": of the locks in a PostgreSQL database, the writer's turn


@event.listens_for(Engine, "connect")
def _set_pragmas(connection: Any, _record: Any) -> None:
    if not isinstance(connection, sqlite3.Connection):
        return
    connection.isolation_level = None  # transactions begin where _begin says, not where the driver guesses
    for pragma in ("journal_mode=WAL", "synchronous=FULL", "foreign_keys=ON", "busy_timeout=10000"):
        connection.execute(f"PRAGMA {pragma}")


@event.listens_for(Engine, "begin")
def _begin(connection: Connection) -> None:
    writing = connection.get_execution_options().get("writing", False)
    if connection.dialect.name == "sqlite":
        connection.exec_driver_sql("BEGIN IMMEDIATE" if writing else "BEGIN")
    elif writing:  # PostgreSQL: the same turn, for every server of the house, until the transaction ends
        connection.exec_driver_sql(f"SELECT pg_advisory_xact_lock({TURN})")


def begin_writing() -> None:
    """Take the writer's turn and begin a transaction that may write, before its first SELECT.

    SQLite answers "locked" at once when a reading transaction turns into a writing one, and backs off
    badly between writers; so a request that may write begins so, one at a time in this process.
    Ends with ``end_writing``, which the application calls when the request is over.
    """
    if g.get("writing"):
        return
    db.session.rollback()
    _writer.acquire()
    g.writing = True
    db.session.connection(execution_options={"writing": True})


def end_writing() -> None:
    """Roll back what was not committed and give the turn away."""
    db.session.rollback()
    if g.pop("writing", False):
        _writer.release()


@contextmanager
def writing() -> Iterator[None]:
    """Do one piece of writing with its own turn; the caller commits."""
    begin_writing()
    try:
        yield
    finally:
        end_writing()


def add_once(row: Base) -> None:
    """Add a row with a key of its own, once: where that key is there already, what is there stays."""
    key = object_mapper(row).primary_key_from_instance(row)
    if db.session.get(type(row), tuple(key)) is None:
        db.session.add(row)


def commit_once() -> None:
    """Commit what was added once; where another process added it just now, that stays."""
    try:
        db.session.commit()
    except IntegrityError:
        db.session.rollback()
