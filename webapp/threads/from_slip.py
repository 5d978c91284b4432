"""A slip's threads as the legend of a project, and a legend as the threads of its project's slip."""

from collections.abc import Sequence
from uuid import UUID, uuid5

from webapp.cloth import slip_asking, slip_text, slip_threads
from webapp.cloth.project_slip import asked_by
from webapp.db import db
from webapp.projects.models import Project
from webapp.threads.carried import carry
from webapp.threads.legend import Line
from webapp.threads.legend_kept import add, legend, line_of


def keep(key: tuple[UUID, UUID], lines: Sequence[Line]) -> None:
    """Make a slip's lines the legend of the project with a key, if it has none: what is there is hers."""
    project = db.session.get_one(Project, key)
    if not lines or (there := legend(project)):
        return
    for position, line in enumerate(lines, 1):
        add(project, line, uuid5(project.id, str(position)), there)
    carry(project)


def slip_of(project: Project) -> tuple[dict[str, str], bool]:
    """Give the question of a project's slip, with its threads; and whether these had to be left out.

    They are left out where no link is as long.
    """
    bare = asked_by(project)
    lines = tuple(line_of(row) for row in legend(project))
    if not lines:
        return bare, False
    full = {**bare, "threads": slip_threads.write(lines)}
    _asked, slip = slip_asking.ask(full)
    fits = slip is not None and slip_text.weight(slip_text.write(slip)) <= slip_text.MOST_LINKED
    return (full, False) if fits else (bare, True)
