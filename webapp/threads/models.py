"""Thread in the database: the lines of a legend, what she measured, what she has, and what she ticks."""

from datetime import datetime
from typing import Any
from uuid import UUID

from sqlalchemy import JSON, ForeignKey, ForeignKeyConstraint, Index, String
from sqlalchemy.orm import Mapped, mapped_column

from webapp.db import Base


def _of_project() -> ForeignKeyConstraint:
    return ForeignKeyConstraint(["stitcher", "project"], ["project.stitcher", "project.id"])


class LegendLine(Base):
    """One line of a project's legend: a symbol, what is in the needle, and how many stitches of each kind.

    ``key`` is what entries of the journal call it by: made from its first name, one of a kind in its project,
    and never changed. A *part* is a dict: ``thread`` (as printed), ``kind`` (of shared/tables/threads.json),
    ``strands``, ``instead`` (what she uses in its place, or ""), ``lots`` (their marks); several are a blend.
    """

    __tablename__ = "legend_line"
    __table_args__ = (
        _of_project(),
        Index("legend_line_by_key", "stitcher", "project", "key", unique=True),
    )

    stitcher: Mapped[UUID] = mapped_column(primary_key=True)
    project: Mapped[UUID] = mapped_column(primary_key=True)
    id: Mapped[UUID] = mapped_column(primary_key=True)
    key: Mapped[str] = mapped_column(String(100))
    position: Mapped[int]  # in the legend, from 1
    symbol: Mapped[str] = mapped_column(String(12), default="")
    colour: Mapped[str | None] = mapped_column(String(7))  # "#9b3527", as she picked it
    parts: Mapped[list[dict[str, Any]]] = mapped_column(JSON)
    full: Mapped[int] = mapped_column(default=0)
    half: Mapped[int] = mapped_column(default=0)
    quarter: Mapped[int] = mapped_column(default=0)
    three_quarter: Mapped[int] = mapped_column(default=0)
    back: Mapped[int] = mapped_column(
        default=0
    )  # backstitch, in lengths of one stitch (squares of the chart)
    knots: Mapped[int] = mapped_column(default=0)
    beads: Mapped[int] = mapped_column(default=0)
    method: Mapped[str | None] = mapped_column(String(5))  # rows, each; none: as its kind is worked
    scatter: Mapped[str] = mapped_column(String(9), default="mixed")  # together, mixed, scattered
    patches: Mapped[int | None]  # counted on the chart; none: worked out from scatter
    working: Mapped[float | None]  # mm, working length; none: as its kind is cut
    note: Mapped[str] = mapped_column(String(500), default="")


class ThreadReading(Base):
    """What she measured: one working length stitched, a skein finished, or what is left of a thread."""

    __tablename__ = "thread_reading"
    __table_args__ = (_of_project(), Index("thread_reading_by_project", "stitcher", "project", "made"))

    stitcher: Mapped[UUID] = mapped_column(primary_key=True)
    project: Mapped[UUID] = mapped_column(primary_key=True)
    id: Mapped[UUID] = mapped_column(primary_key=True)
    line: Mapped[UUID | None]  # the line of the legend it was made on; none: of no line alone
    what: Mapped[str] = mapped_column(String(6))  # length, skein, left
    stitches: Mapped[int | None]  # full crosses it gave; none for what is left
    length: Mapped[float]  # mm: the working length; the thread used up, or left, as it is sold
    strands: Mapped[int | None]  # in the needle
    method: Mapped[str | None] = mapped_column(String(5))  # rows, each
    made: Mapped[datetime]


class KeptThread(Base):
    """Thread in her stash: of one lot, in skeins (or spools, packs) whole and part, and lengths cut off."""

    __tablename__ = "kept_thread"

    stitcher: Mapped[UUID] = mapped_column(ForeignKey("account.id"), primary_key=True)
    id: Mapped[UUID] = mapped_column(primary_key=True)
    thread: Mapped[str] = mapped_column(String(100))  # as it is called on its band
    kind: Mapped[str] = mapped_column(String(12))
    colour: Mapped[str | None] = mapped_column(String(7))
    lot: Mapped[str] = mapped_column(String(40), default="")
    skeins: Mapped[float] = mapped_column(default=0.0)  # whole and part, of what it is sold in
    lengths: Mapped[float] = mapped_column(default=0.0)  # mm, left over beside them, as it is sold
    note: Mapped[str] = mapped_column(String(500), default="")
    counted: Mapped[datetime]  # when she said how much there is
    created: Mapped[datetime]
    put_away: Mapped[datetime | None]


class SheetLine(Base):
    """A line of a project's bag or finishing sheet that she ticked, or wrote herself."""

    __tablename__ = "sheet_line"
    __table_args__ = (_of_project(),)

    stitcher: Mapped[UUID] = mapped_column(primary_key=True)
    project: Mapped[UUID] = mapped_column(primary_key=True)
    sheet: Mapped[str] = mapped_column(String(9), primary_key=True)  # bag, finishing
    item: Mapped[str] = mapped_column(String(160), primary_key=True)
    own: Mapped[bool] = mapped_column(default=False)  # her own line
    ticked: Mapped[bool] = mapped_column(default=False)
    created: Mapped[datetime]
