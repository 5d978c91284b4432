"""What the journal holds of her sittings and stitches between two moments."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime
from uuid import UUID

from sqlalchemy import Select, or_, select, text

from webapp.db import db
from webapp.hours.figures import Laid
from webapp.hours.split import QUIET, Stretch, stretch
from webapp.journal import moments
from webapp.journal.models import Entry, Sitting
from webapp.journal.rows import as_entry
from webapp.journal.sittings import counted
from webapp.projects.models import Project

STITCHES = "kind = 'stitches' AND NOT cancelled"  # word for word as in the index


@dataclass(frozen=True)
class Sat:
    """One sitting, and what it counts for."""

    id: UUID
    project: UUID
    begin: datetime
    end: datetime | None
    last_stitch: datetime | None  # known only while it is open
    counts: Stretch
    struck: bool = False

    def left_running(self, now: datetime) -> bool:
        """Tell whether it is open and nothing was stitched for two hours."""
        return self.end is None and now - max(self.begin, self.last_stitch or self.begin) > QUIET


def sittings(stitcher: UUID, begin: datetime, end: datetime, now: datetime) -> list[Sat]:
    """List the sittings that touch the time from ``begin`` to ``end``, as they began; open ones touch all."""
    query = select(Sitting.id, Sitting.project, Sitting.begin, Sitting.end).where(
        Sitting.stitcher == stitcher, Sitting.begin < end, or_(Sitting.end.is_(None), Sitting.end > begin)
    )
    found = []
    for row in db.session.execute(query.order_by(Sitting.begin, Sitting.id)):
        last = _last_stitch(stitcher, row.project, row.begin) if row.end is None else None
        counts = stretch(row.project, row.begin, row.end, last, now)
        found.append(Sat(row.id, row.project, row.begin, row.end, last, counts))
    return found


def struck(stitcher: UUID, begin: datetime, end: datetime, now: datetime) -> list[Sat]:
    """List what was struck out and would otherwise touch that time."""
    query = select(Sitting.id, Sitting.project).where(Sitting.stitcher == stitcher, Sitting.struck)
    found = []
    for row in db.session.execute(query):
        times = counted(
            (as_entry(e), e.cancelled) for e in entries(stitcher, row.project, row.id) if not strikes(e)
        )
        if times.begin is None:
            continue
        began, ended = moments.read(times.begin), moments.read(times.end) if times.end else None
        counts = stretch(row.project, began, ended, None, now)
        if began < end and counts.end > begin:
            found.append(Sat(row.id, row.project, began, ended, None, counts, struck=True))
    return found


def entries(stitcher: UUID, project: UUID, sitting: UUID) -> Iterable[Entry]:
    """List the entries that name a sitting."""
    named = (Entry.stitcher == stitcher, Entry.project == project, Entry.sitting == sitting)
    return db.session.scalars(select(Entry).where(*named)).all()


def strikes(entry: Entry) -> bool:
    """Tell whether an entry strikes its sitting out."""
    return entry.kind == "amend" and bool(entry.fields.get("struck"))


def laid(stitcher: UUID, begin: datetime, end: datetime) -> list[Laid]:
    """List the crosses stitched in that time: not unpicked, not corrected, not there before."""
    why = Entry.fields["why"].as_string()
    query = _stitches(stitcher).where(
        Entry.at >= begin,
        Entry.at < end,
        Entry.tally.startswith("cross "),
        or_(why.is_(None), why == "stitched"),
    )
    return [Laid(row.project, row.at, row.by or 0) for row in db.session.execute(query)]


def titles(stitcher: UUID) -> dict[UUID, str]:
    """Name all her projects, the oldest first."""
    query = select(Project.id, Project.title).where(Project.stitcher == stitcher)
    rows = db.session.execute(query.order_by(Project.created, Project.id))
    return {row.id: row.title for row in rows}


def _stitches(stitcher: UUID) -> Select[UUID, datetime, int | None]:
    return select(Entry.project, Entry.at, Entry.by).where(Entry.stitcher == stitcher, text(STITCHES))


def _last_stitch(stitcher: UUID, project: UUID, since: datetime) -> datetime | None:
    query = _stitches(stitcher).where(Entry.at >= since, Entry.project == project)
    row = db.session.execute(query.order_by(Entry.at.desc()).limit(1)).first()
    return row.at if row else None
