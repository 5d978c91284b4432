"""Where she stopped: her line, written down with or without a sitting, and what helps her back in."""

from typing import Any
from uuid import UUID, uuid5

from flask import url_for

from webapp.cloth import advice
from webapp.cloth.tables import read
from webapp.hours import photographs
from webapp.hours.models import Photograph
from webapp.journal import moments
from webapp.journal.batch import write_down
from webapp.projects.models import Project
from webapp.threads.legend_kept import usual


def write_line(stitcher: UUID, project: UUID, line: str, once: UUID) -> None:
    """Write a line down, once for each form; the caller commits.

    It is said by the end of a sitting of its own that was never begun, so it ends nothing.
    """
    entry, sitting = (str(uuid5(once, name)) for name in ("line", "sitting"))
    write_down(stitcher, project, [{"id": entry, "kind": "end", "sitting": sitting, "note": line}])


def helps(project: Project) -> dict[str, Any]:
    """Give what the phone does not know of itself: the needle, the usual strands, the last photograph."""
    needle = advice.needles(max(1.0, project.count / project.over), read("needles"))
    found = photographs.of_project(project.stitcher, project.id)
    return {
        "needle": {"usual": needle.usual, "low": needle.low, "high": needle.high},
        "strands": usual(project, "cotton"),
        "photograph": _told(found[0]) if found else None,
    }


def _told(photograph: Photograph) -> dict[str, Any]:
    address = url_for("hours.story.picture", project=photograph.project, photograph=photograph.id)
    size = {"width": photograph.width, "height": photograph.height}
    return {"href": address, "line": photograph.line, "at": moments.write(photograph.at), **size}
