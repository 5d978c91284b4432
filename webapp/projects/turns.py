"""When a project began, rested and was finished: each change of its state is noted."""

from datetime import datetime
from uuid import UUID

from sqlalchemy import select

from webapp import clock
from webapp.db import db
from webapp.projects.models import Project, Turn


def note(project: Project, at: datetime | None = None) -> None:
    """Note that a project came into its state, now or at an earlier moment; the caller commits."""
    made = {"stitcher": project.stitcher, "project": project.id, "state": project.state}
    now = clock.now()
    db.session.merge(Turn(at=min(at or now, now), **made))


def turns_of(stitcher: UUID, project: UUID) -> list[tuple[datetime, str]]:
    """List when the project came into which state, in order."""
    query = select(Turn.at, Turn.state).where(Turn.stitcher == stitcher, Turn.project == project)
    return [(at, state) for at, state in db.session.execute(query.order_by(Turn.at))]
