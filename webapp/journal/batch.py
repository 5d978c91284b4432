"""Take a batch into the journal: each entry once, however often it arrives."""

from collections.abc import Iterable, Sequence
from typing import Any, NamedTuple
from uuid import UUID

from sqlalchemy import insert, select, update

from webapp import clock
from webapp.db import db
from webapp.ids import new_id
from webapp.journal import moments
from webapp.journal.models import Entry, Standing
from webapp.journal.rows import Row, as_row
from webapp.journal.schemas import read_entry
from webapp.journal.totals import Totals, Touched
from webapp.projects.models import Project

NOT_HERS = "There is no such project of yours."
TAKEN = "This id was used before, for something else."


class Refused(ValueError):
    """An entry can never be right; the message is a sentence that says why."""


class Taken(NamedTuple):
    """What became of a batch: ids as they were sent, sentences for the refused, projects it concerned."""

    accepted: list[str]
    refused: list[dict[str, Any]]
    projects: list[UUID]


def take(stitcher: UUID, raw: Sequence[object], offset_ms: int = 0) -> Taken:
    """Add what is new of ``raw`` for this stitcher, and work out anew what it touched; the caller commits."""
    read, refused = _read(stitcher, raw, offset_ms)
    known = _known(stitcher, [row["id"] for _, row in read])
    hers = _projects_of(stitcher, {row["project"] for _, row in read})
    accepted: dict[str, UUID] = {}
    new: dict[UUID, list[Row]] = {}
    for sent, row in read:
        same = known.setdefault(row["id"], None) in (None, (row["project"], row["kind"]))
        if row["project"] not in hers or not same:
            refused.append({"id": sent, "why": TAKEN if row["project"] in hers else NOT_HERS})
            continue
        if known[row["id"]] is None:
            known[row["id"]] = (row["project"], row["kind"])
            new.setdefault(row["project"], []).append(row)
        accepted[sent] = row["project"]
    for project, rows in new.items():
        _add(stitcher, project, rows)
    return Taken(list(accepted), refused, sorted(set(accepted.values())))


def write_down(stitcher: UUID, project: UUID, entries: Iterable[dict[str, Any]]) -> None:
    """Add entries made on this side, by a form; ``id`` and ``at`` have defaults. The caller commits.

    Raises ``Refused`` with a sentence if one can never be right; then nothing of them is added.
    """
    at = moments.write(clock.now())
    whole = [{"id": str(new_id()), "at": at, **entry, "project": str(project)} for entry in entries]
    with db.session.begin_nested():
        taken = take(stitcher, whole)
        if taken.refused:
            raise Refused(taken.refused[0]["why"])


def _read(
    stitcher: UUID, raw: Sequence[object], offset_ms: int
) -> tuple[list[tuple[str, Row]], list[dict[str, Any]]]:
    read, refused = [], []
    for one in raw:
        sent = one.get("id") if isinstance(one, dict) else None
        try:
            read.append((str(sent), as_row(stitcher, read_entry(one), offset_ms)))
        except ValueError as error:
            refused.append({"id": sent, "why": str(error)})
    return read, refused


def _known(stitcher: UUID, ids: list[UUID]) -> dict[UUID, tuple[UUID, str] | None]:
    query = select(Entry.id, Entry.project, Entry.kind).where(Entry.stitcher == stitcher, Entry.id.in_(ids))
    return {row.id: (row.project, row.kind) for row in db.session.execute(query)}


def _projects_of(stitcher: UUID, ids: set[UUID]) -> set[UUID]:
    """Tell which are hers. Where many can write at once, their rows are locked, in the order of their ids."""
    query = select(Project.id).where(Project.stitcher == stitcher, Project.id.in_(ids))
    return set(db.session.scalars(query.order_by(Project.id).with_for_update()))


def _add(stitcher: UUID, project: UUID, rows: list[Row]) -> None:
    standing = db.session.get(Standing, (stitcher, project)) or Standing(
        stitcher=stitcher, project=project, revision=0
    )
    db.session.add(standing)
    standing.revision += len(rows)
    db.session.flush()
    db.session.execute(insert(Entry), rows)
    named = _named(stitcher, project, rows)
    victims = _cancel(stitcher, project, named | {row["register"] for row in rows if row["kind"] == "undo"})
    totals = Totals(stitcher, project, standing.revision)
    totals.work_out([*(Touched.of(row) for row in rows), *victims], named)
    if any(row["kind"] == "stitches" and row["fields"].get("why") in (None, "stitched") for row in rows):
        _take_in_hand(stitcher, project)


def _named(stitcher: UUID, project: UUID, rows: list[Row]) -> set[str]:
    """List those undos, here already or come along, that name one of ``rows`` or its act."""
    could = {f"undone entry {row['id']}" for row in rows} | {
        f"undone act {row['act']}" for row in rows if row["act"]
    }
    query = select(Entry.register).distinct()
    of = (Entry.stitcher == stitcher, Entry.project == project, Entry.register.in_(could), ~Entry.cancelled)
    return {register for register in db.session.scalars(query.where(*of)) if register}


def _cancel(stitcher: UUID, project: UUID, undone: set[str]) -> list["Touched"]:
    """Flag what is undone and not flagged yet; gives what that touched."""
    ids = [UUID(name[13:]) for name in undone if name.startswith("undone entry ")]
    acts = [UUID(name[11:]) for name in undone if name.startswith("undone act ")]
    if not undone:
        return []
    of = (Entry.stitcher == stitcher, Entry.project == project, Entry.kind != "undo", ~Entry.cancelled)
    query = select(Entry.id, Entry.register, Entry.tally, Entry.sitting)
    found = [
        row
        for named in (Entry.id.in_(ids), Entry.act.in_(acts))
        for row in db.session.execute(query.where(*of, named))
    ]
    for start in range(0, len(found), 500):
        some = [row.id for row in found[start : start + 500]]
        db.session.execute(
            update(Entry).where(Entry.stitcher == stitcher, Entry.id.in_(some)).values(cancelled=True)
        )
    return [Touched(row.register, row.tally, row.sitting) for row in found]


def _take_in_hand(stitcher: UUID, project: UUID) -> None:
    """A planned project is in hand from its first stitch on."""
    planned = (Project.stitcher == stitcher, Project.id == project, Project.state == "planned")
    values = {"state": "in hand", "plan_revision": Project.plan_revision + 1}
    db.session.execute(update(Project).where(*planned).values(values))
