"""Photographs of the work."""

from datetime import datetime
from uuid import UUID

from sqlalchemy import ForeignKeyConstraint, Index, String
from sqlalchemy.orm import Mapped, mapped_column

from webapp.db import Base


class Photograph(Base):
    """One photograph of a project, kept as a file in the house's data; with a line of hers, or none."""

    __tablename__ = "photograph"
    __table_args__ = (
        ForeignKeyConstraint(["stitcher", "project"], ["project.stitcher", "project.id"]),
        Index("photograph_by_age", "stitcher", "project", "at"),
    )

    stitcher: Mapped[UUID] = mapped_column(primary_key=True)
    project: Mapped[UUID] = mapped_column(primary_key=True)
    id: Mapped[UUID] = mapped_column(primary_key=True)
    file: Mapped[UUID]  # its name among the files, made here
    at: Mapped[datetime]
    line: Mapped[str] = mapped_column(String(200), default="")  # where she stopped
    width: Mapped[int]  # pixels
    height: Mapped[int]
