"""The journal's tables: entries as they came, and totals worked out from them.

Only ``Entry`` is the truth; the rest can be thrown away and worked out anew (``evenrow audit`` checks that
it would come out the same).
"""

from datetime import datetime
from typing import Any
from uuid import UUID

from sqlalchemy import JSON, ForeignKeyConstraint, Index, String, TextClause, text
from sqlalchemy.orm import Mapped, mapped_column

from webapp.db import Base

# A partial index is used only where a query says its condition word for word, so both take it from here.
NOT_UNDO = text("kind != 'undo'")
LIVE_FRAME = text("kind = 'frame' AND NOT cancelled")
LIVE_STITCHES = text("kind = 'stitches' AND NOT cancelled")
OF_A_THREAD = text("thread IS NOT NULL")
OVER_A_DAY = text("over_a_day")
STRUCK = text("struck")
DONE_CROSSES = text("substr(register, 1, 11) = 'done cross '")
OPEN_OR_UNBEGUN = text("(begun IS NULL) != (closers = 0)")


def _partial(name: str, *columns: str, where: TextClause | str) -> Index:
    """Index only the rows that ``where`` names, after the stitcher."""
    condition = text(where) if isinstance(where, str) else where
    return Index(name, "stitcher", *columns, sqlite_where=condition, postgresql_where=condition)


def _of_project() -> ForeignKeyConstraint:
    return ForeignKeyConstraint(["stitcher", "project"], ["project.stitcher", "project.id"])


class Entry(Base):
    """One thing done. Never changed but for ``cancelled``, which an undo sets once."""

    __tablename__ = "entry"
    __table_args__ = (
        _of_project(),
        _partial("entry_by_time", "project", "cancelled", "at", "id", where=NOT_UNDO),
        _partial("entry_by_tally", "project", "tally", "cancelled", "kind", "by", where="tally IS NOT NULL"),
        _partial(
            "entry_by_register", "project", "register", "cancelled", "at", "id", where="register IS NOT NULL"
        ),
        _partial("entry_by_hand", "project", "hand", "cancelled", "at", "id", where="hand IS NOT NULL"),
        _partial("entry_by_sitting", "project", "sitting", where="sitting IS NOT NULL"),
        _partial(
            "entry_by_thread", "project", "thread", "tally", "cancelled", "by", "spent", where=OF_A_THREAD
        ),
        _partial("entry_by_act", "project", "act", where="act IS NOT NULL"),
        _partial("frame_by_time", "project", "at", "id", where=LIVE_FRAME),
        _partial("frame_of_any", "at", where=LIVE_FRAME),
        _partial("stitches_by_time", "at", where=LIVE_STITCHES),
    )

    stitcher: Mapped[UUID] = mapped_column(primary_key=True)
    id: Mapped[UUID] = mapped_column(primary_key=True)
    project: Mapped[UUID]
    kind: Mapped[str] = mapped_column(String(8))
    at: Mapped[datetime]  # corrected by the phone's offset
    said: Mapped[datetime]  # as the phone's own clock had it
    fields: Mapped[dict[str, Any]] = mapped_column(JSON)  # the kind's own fields, as accepted
    by: Mapped[int | None]  # stitches, bare
    tally: Mapped[str | None] = mapped_column(String(20))  # "cross 37": whose sum it is part of
    register: Mapped[str | None] = mapped_column(
        String(200)
    )  # "done cross 37": whose latest it may be; what an undo names
    hand: Mapped[str | None] = mapped_column(String(5))  # row, block: it says where her hand is
    sitting: Mapped[UUID | None]  # begin: its own id; end, amend: the one they name
    thread: Mapped[str | None] = mapped_column(String(100))  # stitches: the thread they are of
    spent: Mapped[int | None]  # stitches of a thread: on how many of them it was spent
    act: Mapped[UUID | None]  # the act it is part of
    cancelled: Mapped[bool] = mapped_column(default=False)


class Standing(Base):
    """How many entries a project has."""

    __tablename__ = "standing"
    __table_args__ = (_of_project(),)

    stitcher: Mapped[UUID] = mapped_column(primary_key=True)
    project: Mapped[UUID] = mapped_column(primary_key=True)
    revision: Mapped[int] = mapped_column(default=0)


class Total(Base):
    """The sums of one pass at one place, and whether it is done."""

    __tablename__ = "total"
    __table_args__ = (_of_project(),)

    stitcher: Mapped[UUID] = mapped_column(primary_key=True)
    project: Mapped[UUID] = mapped_column(primary_key=True)
    tally: Mapped[str] = mapped_column(String(20), primary_key=True)
    pass_: Mapped[str] = mapped_column("pass", String(5))
    kind: Mapped[str] = mapped_column(String(5))  # of place: row, block, or whole where it was left out
    stitches: Mapped[int]
    bare: Mapped[int]
    touches: Mapped[int]  # live entries at this place; none: as if it had never been touched
    done: Mapped[bool]
    revision: Mapped[int]


class ThreadAt(Base):
    """What is laid and spent of one thread in one pass at one place; so no sum grows with the journal."""

    __tablename__ = "thread_at"
    __table_args__ = (_of_project(),)

    stitcher: Mapped[UUID] = mapped_column(primary_key=True)
    project: Mapped[UUID] = mapped_column(primary_key=True)
    thread: Mapped[str] = mapped_column(String(100), primary_key=True)
    tally: Mapped[str] = mapped_column(String(20), primary_key=True)
    pass_: Mapped[str] = mapped_column("pass", String(5))
    stitches: Mapped[int]
    spent: Mapped[int]
    touches: Mapped[int]  # live entries


class ThreadTotal(Base):
    """What is laid and spent of one thread in one pass, everywhere."""

    __tablename__ = "thread_total"
    __table_args__ = (_of_project(),)

    stitcher: Mapped[UUID] = mapped_column(primary_key=True)
    project: Mapped[UUID] = mapped_column(primary_key=True)
    thread: Mapped[str] = mapped_column(String(100), primary_key=True)
    pass_: Mapped[str] = mapped_column("pass", String(5), primary_key=True)
    stitches: Mapped[int]
    spent: Mapped[int]
    touches: Mapped[int]


class Latest(Base):
    """What holds of one thing of which only the latest holds."""

    __tablename__ = "latest"
    __table_args__ = (_of_project(), _partial("done_by_time", "at", where=DONE_CROSSES))

    stitcher: Mapped[UUID] = mapped_column(primary_key=True)
    project: Mapped[UUID] = mapped_column(primary_key=True)
    register: Mapped[str] = mapped_column(String(200), primary_key=True)
    at: Mapped[datetime | None]  # none: every entry of it is cancelled
    entry: Mapped[UUID | None]
    value: Mapped[Any] = mapped_column(JSON)
    revision: Mapped[int]


class QuarterAt(Base):
    """What was stitched in one quarter of an hour at one place in one pass; so no sum grows for ever."""

    __tablename__ = "quarter_at"
    __table_args__ = (_of_project(),)

    stitcher: Mapped[UUID] = mapped_column(primary_key=True)
    project: Mapped[UUID] = mapped_column(primary_key=True)
    quarter: Mapped[int] = mapped_column(primary_key=True)
    tally: Mapped[str] = mapped_column(String(20), primary_key=True)
    pass_: Mapped[str] = mapped_column("pass", String(5))
    stitches: Mapped[int]


class Quarter(Base):
    """What was stitched of one pass in one quarter of an hour: days of any zone begin with one."""

    __tablename__ = "quarter"
    __table_args__ = (
        _of_project(),
        Index("quarter_by_time", "stitcher", "quarter", "pass", "project", "stitches"),
    )

    stitcher: Mapped[UUID] = mapped_column(primary_key=True)
    project: Mapped[UUID] = mapped_column(primary_key=True)
    quarter: Mapped[int] = mapped_column(primary_key=True)  # counted from 1970-01-01T00:00Z
    pass_: Mapped[str] = mapped_column("pass", String(5), primary_key=True)
    stitches: Mapped[int]


class Sitting(Base):
    """One stretch of stitching, as its entries have it."""

    __tablename__ = "sitting"
    __table_args__ = (
        _of_project(),
        Index("sitting_by_time", "stitcher", "begin"),
        _partial("sitting_over_days", "begin", where=OVER_A_DAY),
        _partial("sitting_struck", where=STRUCK),
        _partial("sitting_open", "project", where=OPEN_OR_UNBEGUN),
    )

    stitcher: Mapped[UUID] = mapped_column(primary_key=True)
    project: Mapped[UUID] = mapped_column(primary_key=True)
    id: Mapped[UUID] = mapped_column(primary_key=True)
    begun: Mapped[datetime | None]  # at of its live begin entry
    closers: Mapped[int]  # its live ends and amends
    begin: Mapped[datetime | None]  # as it counts: amended, or begun; none: it does not count
    end: Mapped[datetime | None]  # as it counts; none: open, or it does not count
    struck: Mapped[bool]
    over_a_day: Mapped[bool] = mapped_column(default=False)  # it lasted over 24 hours, or is open
