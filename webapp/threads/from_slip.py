"""A slip's threads as the legend of a project, and a legend as the threads of its project's slip."""

from collections.abc import Sequence
from uuid import UUID, uuid5

from webapp.cloth import slip_asking, slip_text, slip_threads
from webapp.cloth.project_slip import asked_by
from webapp.cloth.slip_threads import COUNTS, Thread
from webapp.db import db
from webapp.projects.models import Project
from webapp.threads import legend as legends
from webapp.threads.carried import carry
from webapp.threads.legend import Line
from webapp.threads.legend_kept import add, legend, line_of


def keep(key: tuple[UUID, UUID], threads: Sequence[Thread]) -> None:
    """Make threads the legend of the project with a key, if it has none: what is there is hers."""
    project = db.session.get_one(Project, key)
    if not threads or (there := legend(project)):
        return
    for position, thread in enumerate(threads, 1):
        add(project, line_from(thread), uuid5(project.id, str(position)), there)
    carry(project)


def line_from(thread: Thread) -> Line:
    """Give a slip's thread as a line of a legend."""
    parts = tuple(legends.Part(part.thread, part.kind, part.strands, part.instead) for part in thread.parts)
    return Line(parts, thread.symbol, **{name: getattr(thread, name) for name in COUNTS})


def thread_from(line: Line) -> Thread:
    """Give a line of a legend as a slip's thread."""
    parts = tuple(
        slip_threads.Part(part.thread, part.kind, part.strands, part.instead) for part in line.parts
    )
    return Thread(line.symbol, parts, **{name: getattr(line, name) for name in COUNTS})


def slip_of(project: Project) -> tuple[dict[str, str], bool]:
    """Give the question of a project's slip, with its threads; and whether these had to be left out.

    They are left out where no link is as long.
    """
    bare = asked_by(project)
    threads = tuple(thread_from(line_of(row)) for row in legend(project))
    if not threads:
        return bare, False
    full = {**bare, "threads": slip_threads.write(threads)}
    _asked, slip = slip_asking.ask(full)
    fits = slip is not None and slip_text.weight(slip_text.write(slip)) <= slip_text.MOST_LINKED
    return (full, False) if fits else (bare, True)
