"""A project: one design being stitched."""

from datetime import datetime
from typing import Any
from uuid import UUID

from sqlalchemy import JSON, ForeignKey, ForeignKeyConstraint, Index, String
from sqlalchemy.orm import Mapped, mapped_column

from webapp.db import Base


class Project(Base):
    """A design, its cloth, and the way she works it."""

    __tablename__ = "project"
    __table_args__ = (Index("project_by_age", "stitcher", "created"),)

    stitcher: Mapped[UUID] = mapped_column(ForeignKey("account.id"), primary_key=True)
    id: Mapped[UUID] = mapped_column(primary_key=True)
    title: Mapped[str] = mapped_column(String(120))
    width: Mapped[int]  # stitches
    height: Mapped[int]  # stitches
    count: Mapped[float]  # squares or threads of the cloth, per inch
    across: Mapped[float | None]  # the same down the cloth; none: no other than count
    over: Mapped[int] = mapped_column(default=1)  # cloth threads each stitch spans, 1 or 2
    state: Mapped[str] = mapped_column(String(8), default="planned")  # planned, in hand, resting, finished
    working: Mapped[str] = mapped_column(String(6), default="rows")  # rows, blocks
    direction: Mapped[str] = mapped_column(String(6), default="top")  # top, bottom, middle
    first_row: Mapped[int] = mapped_column(default=1)
    start_column: Mapped[int] = mapped_column(default=1)
    start_way: Mapped[str] = mapped_column(String(5), default="right")  # right, left
    expected: Mapped[int | None]  # stitches a row; none: not known, taken from the width or not at all
    block_from: Mapped[str] = mapped_column(String(12), default="top-left")  # a corner, or middle
    block_way: Mapped[str] = mapped_column(String(6), default="across")  # across, down
    step: Mapped[str] = mapped_column(String(4), default="1")  # 1, 2, 5, 10, ten, row
    frame: Mapped[str] = mapped_column(String(9), default="hoop")  # hoop, clamps, scroll, stretched, hand
    plan_revision: Mapped[int] = mapped_column(default=1)
    bench: Mapped[str | None] = mapped_column(String(120))  # the rest of its slip's question
    chart_total: Mapped[int | None]  # full crosses on the chart, as printed
    legend: Mapped[list[Any] | None] = mapped_column(
        JSON(none_as_null=True)
    )  # what a phone carries: threads/carried.py
    created: Mapped[datetime]
    put_away: Mapped[datetime | None]


class Turn(Base):
    """When a project came into a state: what tells the weeks it rested, and when it was finished."""

    __tablename__ = "turn"
    __table_args__ = (ForeignKeyConstraint(["stitcher", "project"], ["project.stitcher", "project.id"]),)

    stitcher: Mapped[UUID] = mapped_column(primary_key=True)
    project: Mapped[UUID] = mapped_column(primary_key=True)
    at: Mapped[datetime] = mapped_column(primary_key=True)
    state: Mapped[str] = mapped_column(String(8))
