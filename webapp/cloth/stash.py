"""Her stash of cloth: kept, and searched for what takes a design."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Any
from uuid import UUID

from sqlalchemy import func, select

from webapp.cloth.fitting import how_it_fits
from webapp.cloth.margins import margin
from webapp.cloth.models import KeptCloth
from webapp.cloth.piece import better, margin_of, ways
from webapp.cloth.sizing import Cloth, Fit, finished
from webapp.cloth.standards import table as standards
from webapp.cloth.tables import read
from webapp.db import db
from webapp.projects.models import Project

SHOWN = 30  # found at once, at most


@dataclass(frozen=True)
class Found:
    """A cloth that takes a design: over how many threads, how it lies, and how large it comes out, mm.

    sure: whether it still fits where the count is as coarse as its error allows; same: how it goes with the
    cloth the design was planned for, None where it comes out another size or nothing was planned.
    """

    cloth: KeptCloth
    over: int
    fit: Fit
    size: tuple[float, float]
    sure: bool
    same: str | None


def kept(stitcher: UUID, *, put_away: bool = False) -> list[KeptCloth]:
    """List her cloth, the newest first."""
    query = (
        select(KeptCloth)
        .where(KeptCloth.stitcher == stitcher, KeptCloth.put_away.is_not(None) == put_away)
        .order_by(KeptCloth.created.desc(), KeptCloth.id.desc())
    )
    return list(db.session.scalars(query))


def how_many_put_away(stitcher: UUID) -> int:
    """Count the cloth she has put away."""
    query = select(func.count()).where(KeptCloth.stitcher == stitcher, KeptCloth.put_away.is_not(None))
    return db.session.scalar(query) or 0


def overs(cloth: KeptCloth) -> tuple[int, ...]:
    """Tell over how many threads it is usually worked, the usual first."""
    return (2, 1) if cloth.kind == "threads" else (1,)


def counted(cloth: KeptCloth, over: int, coarse: bool = False) -> Cloth:
    """Give the cloth, selvedge upright; ``coarse``: its counts as low as their errors allow."""
    across = cloth.along if cloth.across is None else cloth.across
    if not coarse:
        return Cloth(across, cloth.along, over)
    off = cloth.along_error if cloth.across is None else cloth.across_error
    return Cloth(max(1.0, across - (off or 0)), max(1.0, cloth.along - (cloth.along_error or 0)), over)


def search(
    stitcher: UUID, width: int, height: int, side: float, planned: tuple[float, int] | None = None
) -> list[Found]:
    """Find what of her cloth takes a design with a margin a side, mm; as ``planned`` first."""
    found = []
    for cloth in kept(stitcher):
        if cloth.width and cloth.length:
            takes = [_taken(cloth, over, (width, height), side, planned) for over in overs(cloth)]
            found += sorted((one for one in takes if one), key=lambda one: one.same is None)[:1]
    return sorted(found, key=lambda one: (one.same is None, not one.sure))[:SHOWN]


def _taken(
    cloth: KeptCloth, over: int, design: tuple[int, int], side: float, planned: tuple[float, int] | None
) -> Found | None:
    width, height = design
    values = {"width": width, "height": height, "piece_width": cloth.width, "piece_height": cloth.length}
    fit = better(*ways(counted(cloth, over), values, side))
    if not fit.fits:
        return None
    sure = any(way.fits for way in ways(counted(cloth, over, coarse=True), values, side))
    ground = counted(cloth, over)
    size = finished(ground.turned if fit.turned else ground, *design)
    return Found(cloth, over, fit, size, sure, _same(cloth, over, planned))


def _same(cloth: KeptCloth, over: int, planned: tuple[float, int] | None) -> str | None:
    """Tell how a cloth goes with the one a design was planned for, worked over so many threads."""
    how = how_it_fits(*planned, *_interval(cloth)) if planned else None
    return how[0] if how and how[1] == over else None


def _interval(cloth: KeptCloth) -> tuple[float, float]:
    """Give what its count may be: measured, within its error; else what cloth of that name is sold at."""
    if cloth.along_error is not None:
        return cloth.along - cloth.along_error, cloth.along + cloth.along_error
    named = next((s for s in standards().of(cloth.kind) if s.count == cloth.along), None)
    return (named.low, named.high) if named else (cloth.along, cloth.along)


def for_project(project: Project) -> list[Found]:
    """Find what of her cloth a project could go on, with the usual margin and the frame's grip."""
    side = margin("usual", project.frame, False, None, read("margins")).mm
    return search(project.stitcher, project.width, project.height, side, (project.count, project.over))


@dataclass(frozen=True)
class Going:
    """A project that goes on a piece: how it lies, how large it comes out, mm, and whether as planned."""

    project: Project
    fit: Fit
    size: tuple[float, float]
    planned: bool


def fitting_projects(stitcher: UUID, values: Mapping[str, Any]) -> list[Going]:
    """List her projects, not put away nor finished, that go on a piece that was asked about."""
    over = int(values["over"])
    cloth = Cloth(values["count"], values["across"] or values["count"], over)
    found = []
    for project in _projects(stitcher):
        side = margin_of({**values, "held": project.frame}, read("margins"))
        of = {**values, "width": project.width, "height": project.height}
        fit = better(*ways(cloth, of, side))
        if fit.fits:
            size = finished(cloth.turned if fit.turned else cloth, project.width, project.height)
            found.append(Going(project, fit, size, values["count"] / over == project.count / project.over))
    return sorted(found, key=lambda one: not one.planned)[:SHOWN]


def _projects(stitcher: UUID) -> Iterable[Project]:
    return db.session.scalars(
        select(Project)
        .where(Project.stitcher == stitcher, Project.put_away.is_(None), Project.state != "finished")
        .order_by(Project.created.desc(), Project.id.desc())
    )
