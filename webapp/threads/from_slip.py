"""A slip's threads as the legend of a project, and a legend as the threads of its project's slip."""

from collections.abc import Sequence
from uuid import UUID, uuid5

from sqlalchemy import exists, select

from webapp.cloth import slip_asking, slip_text, slip_threads
from webapp.cloth.project_slip import asked_by
from webapp.cloth.slip_threads import Part, Thread
from webapp.db import add_once, db
from webapp.projects.models import Project
from webapp.threads.models import LegendLine
from webapp.threads.ticks import legend

COUNTS = ("full", "half", "quarter", "three_quarter", "back", "knots", "beads")


def keep(key: tuple[UUID, UUID], threads: Sequence[Thread]) -> None:
    """Make threads the legend of a project, whose key is given, if it has none: what is there is hers."""
    stitcher, project = key
    query = exists().where(LegendLine.stitcher == stitcher, LegendLine.project == project)
    if not threads or db.session.scalar(select(query)):
        return
    db.session.flush()
    taken: set[str] = set()
    for position, thread in enumerate(threads, 1):
        line = LegendLine(stitcher=stitcher, project=project, id=uuid5(project, str(position)))
        line.position, line.symbol = position, thread.symbol
        line.key = _key(thread.parts[0].thread, taken)
        line.parts = [
            {
                "thread": part.thread,
                "kind": part.kind,
                "strands": part.strands,
                "instead": part.instead,
                "lots": [],
            }
            for part in thread.parts
        ]
        for name in COUNTS:
            setattr(line, name, getattr(thread, name))
        add_once(line)


def threads_of(lines: Sequence[LegendLine]) -> tuple[Thread, ...]:
    """Give a legend as the threads of a slip."""
    return tuple(
        Thread(
            line.symbol,
            tuple(
                Part(part["thread"], part["kind"], part["strands"], part.get("instead", ""))
                for part in line.parts
            ),
            **{name: getattr(line, name) for name in COUNTS},
        )
        for line in lines
    )


def slip_of(project: Project) -> tuple[dict[str, str], bool]:
    """Give the question of a project's slip, with its threads; and whether these had to be left out.

    They are left out where no link is as long.
    """
    bare = asked_by(project)
    threads = threads_of(legend(project))
    if not threads:
        return bare, False
    full = {**bare, "threads": slip_threads.write(threads)}
    _asked, slip = slip_asking.ask(full)
    fits = slip is not None and slip_text.weight(slip_text.write(slip)) <= slip_text.MOST_LINKED
    return (full, False) if fits else (bare, True)


def _key(name: str, taken: set[str]) -> str:
    """Make a key from a line's first name, one of a kind in its project."""
    key, number = name[:100], 1
    while key in taken:
        number += 1
        key = f"{name[:94]} {number}"
    taken.add(key)
    return key
