"""Work every total out anew from the entries, and say where it differs."""

from collections.abc import Iterator
from itertools import groupby
from typing import Any

from sqlalchemy import select

from webapp.db import db
from webapp.journal import moments, quarters
from webapp.journal.models import Entry, Quarter, Sitting
from webapp.journal.rows import as_entry
from webapp.journal.sittings import Counted, counted
from webapp.journal.snapshot import plan_of, snapshot_of
from webapp.journal.whole import snapshot
from webapp.projects.models import Project


def differences() -> Iterator[str]:
    """Give a sentence for each figure that its entries do not come to; nothing if all is well."""
    for project in list(db.session.scalars(select(Project).order_by(Project.stitcher, Project.id))):
        yield from differences_of(project)
        db.session.expunge_all()


def differences_of(project: Project) -> Iterator[str]:
    """Give the sentences for one project."""
    of = (Entry.stitcher == project.stitcher, Entry.project == project.id)
    rows = list(db.session.scalars(select(Entry).where(*of)))
    where = f"Project {project.id} of {project.stitcher}"
    for part in (_totals, _sittings, _quarters):
        yield from (f"{where}: {said}" for said in part(project, rows))


def _totals(project: Project, rows: list[Entry]) -> Iterator[str]:
    kept = snapshot_of(project.stitcher, project.id)
    right = snapshot(plan_of(project), [as_entry(row) for row in rows])
    for name, value in right.items():
        if kept[name] != value:
            yield f"“{name}” is {_first_difference(kept[name], value)}"


def _first_difference(kept: Any, right: Any) -> str:
    if isinstance(kept, dict) and isinstance(right, dict):
        for key in sorted(kept.keys() | right.keys()):
            if kept.get(key) != right.get(key):
                return f"{kept.get(key)!r} at {key!r}, and comes to {right.get(key)!r}."
    return f"{kept!r}, and comes to {right!r}."


def _sittings(project: Project, rows: list[Entry]) -> Iterator[str]:
    of = (Sitting.stitcher == project.stitcher, Sitting.project == project.id)
    kept = {row.id: row for row in db.session.scalars(select(Sitting).where(*of))}
    named = sorted((row for row in rows if row.sitting), key=lambda row: str(row.sitting))
    for sitting, entries in groupby(named, key=lambda row: row.sitting):
        right = counted((as_entry(row), row.cancelled) for row in entries)
        found = kept.pop(sitting, None) if sitting else None
        if found is None or _as_kept(found) != right:
            yield f"sitting {sitting} is {found and _as_kept(found)}, and comes to {right}."
    yield from (f"sitting {sitting} has no entries." for sitting in kept)


def _quarters(project: Project, rows: list[Entry]) -> Iterator[str]:
    of = (Quarter.stitcher == project.stitcher, Quarter.project == project.id)
    query = select(Quarter.quarter, Quarter.pass_, Quarter.stitches).where(*of)
    kept = {(number, of): stitches for number, of, stitches in db.session.execute(query)}
    right = quarters.counted(as_entry(row) for row in rows if not row.cancelled)
    for quarter in sorted(kept.keys() | right.keys()):
        if kept.get(quarter, 0) != right[quarter]:
            said = f"“{quarter[1]}” from {moments.write(quarters.bounds(quarter[0])[0])}"
            yield f"{said} is {kept.get(quarter, 0)}, and comes to {right[quarter]}."


def _as_kept(row: Sitting) -> Counted:
    begun, begin, end = (moments.write(t) if t else None for t in (row.begun, row.begin, row.end))
    return Counted(begun, row.closers, begin, end, row.struck)
