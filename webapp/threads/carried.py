"""What a phone carries of a project's legend, kept with the project, and drawn anew as it changes."""

from collections.abc import Iterable
from typing import Any
from uuid import UUID

from webapp.projects.models import Project
from webapp.threads.legend import Line
from webapp.threads.legend_kept import ground, legend, line_of
from webapp.threads.legend_needs import needs
from webapp.threads.own_figure import own_of
from webapp.threads.reach import of
from webapp.threads.tables import kinds
from webapp.threads.uses import sharing, using


def carry(project: Project) -> None:
    """Work out what is carried; the plan's revision rises by one if it changed.

    Called after every change of lines, readings, stash, and of the project's cloth, before the commit. What
    other projects carry is drawn anew with it, where they share a thread.
    """
    for one in (project, *sharing(project)):
        _carry(one)


def carry_using(stitcher: UUID, names: Iterable[str]) -> None:
    """Do the same for all of her projects that use threads of these names."""
    for project in using(stitcher, names):
        _carry(project)


def _carry(project: Project) -> None:
    reach, own = of(project), own_of(project)
    found = []
    for row in legend(project):
        line = line_of(row)
        each = needs(line, ground(project), kinds(), own)[0].takes.each.usual
        found.append({"key": row.key, **_said(line), "each": round(each, 2), "lasts": reach.get(row.key)})
    if found != (project.legend or []):
        project.legend = found or None
        project.plan_revision += 1


def _said(line: Line) -> dict[str, Any]:
    return {
        "symbol": line.symbol,
        "name": line.used,
        "colour": line.colour,
        "strands": sum(part.strands for part in line.parts),
        "full": line.full,
        "part": line.half + line.quarter + line.three_quarter,
        "back": line.back,
        "knot": line.knots + line.beads,
    }
