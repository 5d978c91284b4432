"""Her stash of cloth: kept, and searched for what takes a design."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from math import isclose
from typing import Any
from uuid import UUID

from sqlalchemy import func, select

from webapp.cloth import slip_asking
from webapp.cloth.fitting import how_it_fits
from webapp.cloth.models import KeptCloth
from webapp.cloth.piece import better, margin_of, ways
from webapp.cloth.project_slip import asked_by, cloth_of
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


def search(stitcher: UUID, width: int, height: int, side: float, planned: Cloth | None = None) -> list[Found]:
    """Find what of her cloth takes a design with a margin a side, mm; what is as ``planned`` first."""
    found = []
    for cloth in kept(stitcher):
        if cloth.width and cloth.length:
            takes = [_taken(cloth, over, (width, height), side, planned) for over in overs(cloth)]
            found += sorted((one for one in takes if one), key=lambda one: one.same is None)[:1]
    return sorted(found, key=lambda one: (one.same is None, not one.sure))[:SHOWN]


def _taken(
    cloth: KeptCloth, over: int, design: tuple[int, int], side: float, planned: Cloth | None
) -> Found | None:
    width, height = design
    values = {"width": width, "height": height, "piece_width": cloth.width, "piece_height": cloth.length}
    both = ways(counted(cloth, over), values, side)
    alike = [way for way in both if way.fits and _same(cloth, way.turned, over, planned)]
    fit = alike[0] if alike else better(*both)
    if not fit.fits:
        return None
    sure = any(way.fits for way in ways(counted(cloth, over, coarse=True), values, side))
    ground = counted(cloth, over)
    size = finished(ground.turned if fit.turned else ground, *design)
    return Found(cloth, over, fit, size, sure, _same(cloth, fit.turned, over, planned))


def _same(cloth: KeptCloth, turned: bool, over: int, planned: Cloth | None) -> str | None:
    """Tell how a cloth goes with the one a design was planned for, worked over so many threads: both ways."""
    if planned is None:
        return None
    along = _interval(cloth.kind, cloth.along, cloth.along_error)
    across = along
    if cloth.across is not None:
        across = _interval(cloth.kind, cloth.across, cloth.across_error)
    wide, high = (along, across) if turned else (across, along)
    hows = how_it_fits(planned.across, planned.over, *wide), how_it_fits(planned.down, planned.over, *high)
    return hows[0][0] if hows[0] and hows[0] == hows[1] and hows[0][1] == over else None


def _interval(kind: str, count: float, error: float | None) -> tuple[float, float]:
    """Give what a count may be: measured, within its error; else what cloth of that name is sold at."""
    if error is not None:
        return count - error, count + error
    named = next((s for s in standards().of(kind) if s.count == count), None)
    return (named.low, named.high) if named else (count, count)


def side_of(project: Project) -> float:
    """Give a project's margin a side, mm: as its slip has it, and what its frame grips."""
    asked = slip_asking.ask(asked_by(project))[0]
    return margin_of(asked.values, read("margins"))


def for_project(project: Project) -> list[Found]:
    """Find what of her cloth a project could go on, with the margin of its slip."""
    return search(project.stitcher, project.width, project.height, side_of(project), cloth_of(project))


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
            planned = finished(cloth_of(project), project.width, project.height)
            found.append(Going(project, fit, size, all(map(isclose, size, planned))))
    return sorted(found, key=lambda one: not one.planned)[:SHOWN]


def _projects(stitcher: UUID) -> Iterable[Project]:
    return db.session.scalars(
        select(Project)
        .where(Project.stitcher == stitcher, Project.put_away.is_(None), Project.state != "finished")
        .order_by(Project.created.desc(), Project.id.desc())
    )
