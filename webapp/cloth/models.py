"""Cloth she has: a piece of it, what was counted on it, and how large it is."""

from datetime import datetime
from uuid import UUID

from sqlalchemy import ForeignKey, String
from sqlalchemy.orm import Mapped, mapped_column

from webapp.db import Base


class KeptCloth(Base):
    """A piece of cloth in her stash. An error is half the 95 % interval; none: as it was sold."""

    __tablename__ = "cloth"

    stitcher: Mapped[UUID] = mapped_column(ForeignKey("account.id"), primary_key=True)
    id: Mapped[UUID] = mapped_column(primary_key=True)
    name: Mapped[str] = mapped_column(String(120))
    kind: Mapped[str] = mapped_column(String(7))  # what was counted: squares, threads
    along: Mapped[float]  # per inch, the way of the selvedge
    along_error: Mapped[float | None]
    across: Mapped[float | None]  # per inch, from selvedge to selvedge; none: as along
    across_error: Mapped[float | None]
    width: Mapped[float | None]  # mm, across; none: not measured
    length: Mapped[float | None]  # mm, along
    note: Mapped[str] = mapped_column(String(500), default="")
    created: Mapped[datetime]
    put_away: Mapped[datetime | None]
