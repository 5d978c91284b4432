"""Take a batch into the journal: each entry once, however often it arrives."""

from collections.abc import Iterable, Sequence
from typing import Any, NamedTuple
from uuid import UUID

from sqlalchemy import bindparam, select

from webapp import clock
from webapp.db import db
from webapp.ids import new_id
from webapp.journal import moments, statements
from webapp.journal.models import Entry
from webapp.journal.rows import Row, as_row
from webapp.journal.schemas import read_entry
from webapp.journal.snapshot import revision_of
from webapp.journal.statements import Journal
from webapp.journal.totals import Touched, work_out
from webapp.projects import turns
from webapp.projects.models import Project

NOT_HERS = "There is no such project of yours."
TAKEN = "This id was used before, for something else."


KNOWN = select(Entry.id, Entry.project, Entry.kind).where(
    Entry.stitcher == bindparam("stitcher"), Entry.id.in_(bindparam("ids", expanding=True))
)
HERS = (
    select(Project.id, Project.state)
    .where(Project.stitcher == bindparam("stitcher"), Project.id.in_(bindparam("ids", expanding=True)))
    .order_by(Project.id)
    .with_for_update()
)


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
        if hers[project] == "planned":
            _take_in_hand(stitcher, project, rows)
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
    rows = db.session.execute(KNOWN, {"stitcher": stitcher, "ids": ids})
    return {row.id: (row.project, row.kind) for row in rows}


def _projects_of(stitcher: UUID, ids: set[UUID]) -> dict[UUID, str]:
    """Tell which are hers, and their states; where many write at once, lock them in the order of ids."""
    return {row.id: row.state for row in db.session.execute(HERS, {"stitcher": stitcher, "ids": list(ids)})}


def _add(stitcher: UUID, project: UUID, rows: list[Row]) -> None:
    journal = Journal(stitcher, project)
    revision = revision_of(stitcher, project) + len(rows)
    journal.put(statements.standing, {}, {"revision": revision})
    journal.connection.execute(statements.ADD, rows)
    named = _named(journal, rows)
    victims = _cancel(journal, named | {row["register"] for row in rows if row["kind"] == "undo"})
    work_out(journal, revision, [*(Touched.of(row) for row in rows), *victims], named)


def _named(journal: Journal, rows: list[Row]) -> set[str]:
    """List those undos, here already or come along, that name one of ``rows`` or its act."""
    could = {f"undone entry {row['id']}" for row in rows} | {
        f"undone act {row['act']}" for row in rows if row["act"]
    }
    return {row.register for row in journal.rows(statements.UNDOS_NAMING, registers=list(could))}


def _cancel(journal: Journal, undone: set[str]) -> list[Touched]:
    """Flag what is undone and not flagged yet; gives what that touched."""
    if not undone:
        return []
    ids = [UUID(name[13:]) for name in undone if name.startswith("undone entry ")]
    acts = [UUID(name[11:]) for name in undone if name.startswith("undone act ")]
    found = {row.id: row for row in journal.rows(statements.UNDONE_IDS, ids=ids)}
    found |= {row.id: row for row in journal.rows(statements.UNDONE_ACTS, acts=acts)}
    every = list(found)
    for start in range(0, len(every), 500):
        journal.change(statements.CANCEL, ids=every[start : start + 500])
    return [Touched.of(row._mapping) for row in found.values()]


def _take_in_hand(stitcher: UUID, project: UUID, rows: list[Row]) -> None:
    """A planned project is in hand from its first stitch on."""
    laid = [row for row in rows if row["kind"] == "stitches"]
    stitched = [row["at"] for row in laid if row["fields"].get("why") in (None, "stitched")]
    if stitched:
        planned = db.session.get_one(Project, (stitcher, project))
        planned.state, planned.plan_revision = "in hand", planned.plan_revision + 1
        turns.note(planned, min(stitched))
