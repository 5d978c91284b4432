"""What a phone carries of a project's legend, kept with the project, and drawn anew as it changes."""

from collections.abc import Mapping
from typing import Any

from webapp.projects.models import Project
from webapp.threads.legend import Line
from webapp.threads.legend_kept import ground, legend, line_of
from webapp.threads.legend_needs import needs
from webapp.threads.own_figure import own_of
from webapp.threads.tables import kinds


def carry(project: Project) -> None:
    """Work out what is carried; the plan's revision rises by one if it changed.

    Called after every change of lines, readings, stash, and of the project's cloth, before the commit.
    """
    reach, own = lasts(project), own_of(project)
    found = []
    for row in legend(project):
        line = line_of(row)
        each = needs(line, ground(project), kinds(), own)[0].takes.each.usual
        found.append({"key": row.key, **_said(line), "each": round(each, 2), "lasts": reach.get(row.key)})
    if found != (project.legend or []):
        project.legend = found or None
        project.plan_revision += 1


def lasts(project: Project) -> Mapping[str, list[int]]:
    """Tell by key how many crosses the thread at hand reaches to, surely and perhaps.

    The one place where it comes in; of a line that is not named here nothing is known.
    """
    return {}


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
