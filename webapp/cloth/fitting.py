"""Her projects against a cloth: which are on such a one, and which would keep their size on it."""

from dataclasses import dataclass
from uuid import UUID

from sqlalchemy import select

from webapp.cloth.sizing import Cloth, finished
from webapp.db import db
from webapp.projects.models import Project


@dataclass(frozen=True)
class Fitting:
    """A project that goes with the cloth: how, and how large it comes out on it, mm."""

    project: Project
    how: str
    size: tuple[float, float]


def how_it_fits(cloth: float, over: int, low: float, high: float) -> tuple[str, int] | None:
    """Tell how a design planned for ``cloth`` (per inch, over one or two) goes with one measured so."""
    if low <= cloth <= high:
        return "on such a cloth", over
    for threads, words in ((1, "the same size over one"), (2, "the same size over two")):
        if low <= cloth / over * threads <= high:
            return words, threads
    return None


def fitting(stitcher: UUID, count: float, low: float | None, high: float | None) -> list[Fitting]:
    """List her projects, not put away nor finished, that go with such a cloth, newest first."""
    hers = db.session.scalars(
        select(Project)
        .where(Project.stitcher == stitcher, Project.put_away.is_(None), Project.state != "finished")
        .order_by(Project.created.desc(), Project.id.desc())
    )
    found = []
    for project in hers:
        fits = how_it_fits(project.count, project.over, low or count, high or count)
        if fits:
            how, over = fits
            size = finished(Cloth(count, count, over), project.width, project.height)
            found.append(Fitting(project, how, size))
    return found
