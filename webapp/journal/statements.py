"""The journal's statements, built once: a tap runs some twenty of them, and building costs more than running.

Each is of one stitcher and project, given as ``of_stitcher`` and ``of_project``, and uses one index.
"""

from collections.abc import Sequence
from typing import Any
from uuid import UUID

from sqlalchemy import (
    ColumnElement,
    Executable,
    Row,
    Select,
    Table,
    and_,
    bindparam,
    case,
    func,
    insert,
    or_,
    select,
    tuple_,
    update,
)
from sqlalchemy.sql.dml import Insert, Update

from webapp.db import db
from webapp.journal.models import (
    LIVE_FRAME,
    NOT_UNDO,
    OF_A_THREAD,
    OPEN_OR_UNBEGUN,
    Entry,
    Latest,
    Quarter,
    QuarterAt,
    Sitting,
    Standing,
    ThreadAt,
    ThreadTotal,
    Total,
)

_models: tuple[Any, ...] = (Entry, Total, Latest, Sitting, Standing)
_sums_of: tuple[Any, ...] = (ThreadAt, ThreadTotal, QuarterAt, Quarter)
entry, total, latest, sitting, standing = (model.__table__ for model in _models)
thread_at, thread_total, quarter_at, quarter = (model.__table__ for model in _sums_of)
AnyRow = Row[*tuple[Any, ...]]


class Journal:
    """The statements of one project."""

    def __init__(self, stitcher: UUID, project: UUID) -> None:
        self.connection = db.session.connection()
        self.of = {"of_stitcher": stitcher, "of_project": project}

    def rows(self, statement: Executable, **values: Any) -> Sequence[AnyRow]:
        """Run one statement and give its rows."""
        return self.connection.execute(statement, self.of | values).all()

    def first(self, statement: Executable, **values: Any) -> AnyRow | None:
        """Run one statement and give its first row, or none."""
        return self.connection.execute(statement, self.of | values).first()

    def change(self, statement: Insert | Update, **values: Any) -> int:
        """Run one statement that changes rows; tells how many."""
        return self.connection.execute(statement, self.of | values).rowcount

    def put(self, table: Table, key: dict[str, Any], values: dict[str, Any]) -> None:
        """Keep the one row of this key: change it, or add it if it is not there yet."""
        if not self.change(UPDATES[table.name], **{f"of_{k}": v for k, v in key.items()}, **values):
            of = {"stitcher": self.of["of_stitcher"], "project": self.of["of_project"]}
            self.connection.execute(INSERTS[table.name], of | key | values)


def of_project(table: Table) -> ColumnElement[bool]:
    """Name the rows of the project."""
    return and_(table.c.stitcher == bindparam("of_stitcher"), table.c.project == bindparam("of_project"))


def _wound(*columns: Any) -> list[Any]:
    """Sum columns, none being nothing."""
    return [func.coalesce(func.sum(column), 0) for column in columns]


def _any_of(column: Any, name: str) -> ColumnElement[bool]:
    named: ColumnElement[bool] = column.in_(bindparam(name, expanding=True))
    return named


def _update(table: Table, keys: Sequence[str], values: Sequence[str]) -> Update:
    named = and_(of_project(table), *(table.c[key] == bindparam(f"of_{key}") for key in keys))
    return update(table).where(named).values({table.c[name]: bindparam(name) for name in values})


_laid = ("stitches", "spent", "touches")
_kept = {
    "standing": (standing, (), ("revision",)),
    "total": (total, ("tally",), ("pass", "kind", "stitches", "bare", "touches", "done", "revision")),
    "thread_at": (thread_at, ("thread", "tally"), ("pass", *_laid)),
    "thread_total": (thread_total, ("thread", "pass"), _laid),
    "latest": (latest, ("register",), ("at", "entry", "value", "revision")),
    "sitting": (sitting, ("id",), ("begun", "closers", "begin", "end", "struck", "over_a_day")),
    "quarter_at": (quarter_at, ("quarter", "tally"), ("pass", "stitches")),
    "quarter": (quarter, ("quarter", "pass"), ("stitches",)),
}
UPDATES = {name: _update(*kept) for name, kept in _kept.items()}
INSERTS = {name: insert(kept[0]) for name, kept in _kept.items()}

# Entries

_live = and_(of_project(entry), ~entry.c.cancelled)
_mark = tuple_(entry.c.at, entry.c.id)
_latest_first = (entry.c.at.desc(), entry.c.id.desc())
_earlier = _mark < tuple_(
    bindparam("mark_at", type_=entry.c.at.type), bindparam("mark_id", type_=entry.c.id.type)
)
_from = _mark >= tuple_(
    bindparam("mark_at", type_=entry.c.at.type), bindparam("mark_id", type_=entry.c.id.type)
)
_after = _mark > tuple_(
    bindparam("mark_at", type_=entry.c.at.type), bindparam("mark_id", type_=entry.c.id.type)
)
_shown = select(entry.c.id, entry.c.kind, entry.c.project, entry.c.at, entry.c.fields, entry.c.act)

TAIL = _shown.where(_live, NOT_UNDO).order_by(*_latest_first).limit(bindparam("most"))
TAIL_FROM = _shown.where(_live, NOT_UNDO, _from).order_by(*_latest_first).limit(bindparam("most"))
FIRST_OF_ACT = (
    _shown.where(_live, NOT_UNDO, entry.c.act == bindparam("act")).order_by(entry.c.at, entry.c.id).limit(1)
)
SIZES_OF_ACTS = (
    select(entry.c.act, func.count())
    .where(_live, NOT_UNDO, _any_of(entry.c.act, "acts"))
    .group_by(entry.c.act)
)
HAND_BEFORE = (
    _shown.where(_live, _earlier, entry.c.hand == bindparam("hand")).order_by(*_latest_first).limit(1)
)
_register = entry.c.register == bindparam("register")
LATEST_OF = _shown.where(_live, _register).order_by(*_latest_first).limit(1)
LATEST_OF_BEFORE = _shown.where(_live, _register, _earlier).order_by(*_latest_first).limit(1)
_frames = and_(of_project(entry), LIVE_FRAME)
_off = entry.c.fields["state"].as_string() == "off"
FRAMES_BEFORE = _shown.where(_frames, _earlier).order_by(*_latest_first).limit(bindparam("most"))
OFF_BEFORE = _shown.where(_frames, _earlier, _off).order_by(*_latest_first).limit(1)
HELD_BEFORE = _shown.where(_frames, _earlier, ~_off).order_by(*_latest_first).limit(1)
FIRST_FRAME = _shown.where(_frames).order_by(entry.c.at, entry.c.id).limit(1)
FIRST_FRAME_AFTER = _shown.where(_frames, _after).order_by(entry.c.at, entry.c.id).limit(1)
OF_SITTING = select(
    entry.c.id, entry.c.kind, entry.c.project, entry.c.at, entry.c.fields, entry.c.cancelled
).where(of_project(entry), entry.c.sitting == bindparam("of_id"))
HERE = select(entry.c.id).where(of_project(entry), entry.c.id == bindparam("of_id"))
SUMS = select(
    func.coalesce(func.sum(case((entry.c.kind == "stitches", entry.c.by))), 0),
    func.coalesce(func.sum(case((entry.c.kind == "bare", entry.c.by))), 0),
    func.count(),
).where(_live, entry.c.tally == bindparam("of_tally"))
THREAD_SUMS = select(*_wound(entry.c.by, entry.c.spent), func.count()).where(
    _live, OF_A_THREAD, entry.c.thread == bindparam("of_thread"), entry.c.tally == bindparam("of_tally")
)
THREAD_PLACES = select(*_wound(thread_at.c.stitches, thread_at.c.spent, thread_at.c.touches)).where(
    of_project(thread_at),
    thread_at.c.thread == bindparam("of_thread"),
    thread_at.c["pass"] == bindparam("of_pass"),
)
UNDOS_NAMING = select(entry.c.register).distinct().where(_live, _any_of(entry.c.register, "registers"))
_why = entry.c.fields["why"].as_string()
LAID_AT_BETWEEN = select(*_wound(entry.c.by)).where(
    *(_live, entry.c.kind == "stitches", entry.c.tally == bindparam("of_tally")),
    *(entry.c.at >= bindparam("begin"), entry.c.at <= bindparam("last")),
    or_(_why.is_(None), _why == "stitched"),
)
LAID_IN_QUARTER = select(*_wound(quarter_at.c.stitches)).where(
    of_project(quarter_at),
    quarter_at.c.quarter == bindparam("of_quarter"),
    quarter_at.c["pass"] == bindparam("of_pass"),
)
_touched = select(*(entry.c[name] for name in ("id", "kind", "at", "register", "tally", "sitting", "thread")))
UNDONE_IDS = _touched.where(_live, NOT_UNDO, _any_of(entry.c.id, "ids"))
UNDONE_ACTS = _touched.where(_live, NOT_UNDO, _any_of(entry.c.act, "acts"))
CANCEL = update(entry).where(of_project(entry), _any_of(entry.c.id, "ids")).values(cancelled=True)
ADD = insert(entry)

# What is worked out

REVISION = select(standing.c.revision).where(of_project(standing))
_sums = select(
    total.c.tally,
    total.c["pass"],
    total.c.kind,
    total.c.stitches,
    total.c.bare,
    total.c.touches,
    total.c.done,
)
TOTALS = _sums.where(of_project(total), total.c.touches > 0)
TOTALS_SINCE = _sums.where(of_project(total), total.c.revision > bindparam("since"))
TOTALS_OF = _sums.where(of_project(total), _any_of(total.c.tally, "tallies"))
DONE_CROSSES = select(total.c.tally).where(of_project(total), total.c.done, total.c["pass"] == "cross")
COUNTS = (
    select(
        total.c["pass"], total.c.kind, func.sum(total.c.stitches), func.sum(case((total.c.done, 1), else_=0))
    )
    .where(of_project(total), total.c.touches > 0)
    .group_by(total.c["pass"], total.c.kind)
)
THREADS = select(
    *(thread_total.c[name] for name in ("thread", "pass", "stitches", "spent", "touches"))
).where(of_project(thread_total), thread_total.c.touches > 0)
_held = select(latest.c.register, latest.c.at, latest.c.entry, latest.c.value)
LATEST: Select[Any] = _held.where(of_project(latest), latest.c.at.is_not(None))
LATEST_SINCE = _held.where(of_project(latest), latest.c.revision > bindparam("since"))
HOLDS = _held.where(
    of_project(latest), latest.c.register == bindparam("of_register"), latest.c.at.is_not(None)
)
_state = select(sitting.c.id, sitting.c.begun, sitting.c.closers)
OPEN_SITTINGS = _state.where(of_project(sitting), OPEN_OR_UNBEGUN)
SITTINGS_OF = _state.where(of_project(sitting), _any_of(sitting.c.id, "sittings"))
