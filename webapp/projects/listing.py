"""Her projects, each with how far it is."""

from dataclasses import dataclass
from datetime import datetime
from typing import Any
from uuid import UUID

from sqlalchemy import ScalarSelect, case, func, literal_column, select

from webapp.db import db
from webapp.journal.models import Entry, Total
from webapp.projects.models import Project
from webapp.projects.progress import Progress, progress

CROSS = Total.pass_ == "cross"


@dataclass(frozen=True)
class Listed:
    """One project of a list."""

    project: Project
    progress: Progress


def projects_of(stitcher: UUID, *, put_away: bool = False) -> list[Listed]:
    """List her projects, the one worked last first."""
    done = _places_done(stitcher)
    found = db.session.scalars(
        select(Project)
        .where(Project.stitcher == stitcher, Project.put_away.is_not(None) == put_away)
        .order_by(func.coalesce(_last_worked(), Project.created).desc(), Project.id.desc())
    )
    return [Listed(p, progress(p, *done.get(p.id, (0, 0)))) for p in found]


@dataclass(frozen=True)
class Worked:
    """The crosses of one project, place by place."""

    rows: dict[str, dict[str, Any]]
    blocks: dict[str, dict[str, Any]]
    stitches: int

    @property
    def rows_done(self) -> int:
        """Count the rows done."""
        return sum(place["done"] for place in self.rows.values())

    @property
    def blocks_done(self) -> int:
        """Count the blocks done."""
        return sum(place["done"] for place in self.blocks.values())


def worked(project: Project) -> Worked:
    """Load what is worked of a project, out of its totals."""
    query = select(Total.kind, Total.tally, Total.stitches, Total.done).where(
        Total.stitcher == project.stitcher, Total.project == project.id, Total.touches > 0, CROSS
    )
    places: dict[str, dict[str, dict[str, Any]]] = {"row": {}, "block": {}, "whole": {}}
    for kind, tally, laid, done in db.session.execute(query):
        places[kind][tally[6:]] = {"stitches": laid, "done": done}
    stitches = sum(place["stitches"] for kind in places.values() for place in kind.values())
    return Worked(places["row"], places["block"], stitches)


def how_many_put_away(stitcher: UUID) -> int:
    """Count the projects she has put away."""
    query = select(func.count()).where(Project.stitcher == stitcher, Project.put_away.is_not(None))
    return db.session.scalar(query) or 0


def _last_worked() -> ScalarSelect[datetime]:
    """Ask when a project was last worked, by the index of live entries."""
    return (
        select(Entry.at)
        .where(Entry.stitcher == Project.stitcher, Entry.project == Project.id, Entry.cancelled.is_(False))
        .where(literal_column("entry.kind != 'undo'"))  # as the index says it, so that it serves
        .order_by(Entry.at.desc())
        .limit(1)
        .correlate(Project)
        .scalar_subquery()
    )


def _places_done(stitcher: UUID) -> dict[UUID, tuple[int, int]]:
    """Count the rows and the blocks done of each project."""
    rows, blocks = (func.sum(case((Total.kind == kind, 1), else_=0)) for kind in ("row", "block"))
    query = (
        select(Total.project, rows, blocks)
        .where(Total.stitcher == stitcher, Total.done, Total.touches > 0, CROSS)
        .group_by(Total.project)
    )
    return {project: (int(rows), int(blocks)) for project, rows, blocks in db.session.execute(query)}
