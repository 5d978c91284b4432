"""What the journal holds of her sittings and stitches between two moments."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime, timedelta
from uuid import UUID

from sqlalchemy import bindparam, or_, select

from webapp.db import db
from webapp.hours.figures import Laid
from webapp.hours.split import QUIET, Stretch, stretch
from webapp.journal import moments
from webapp.journal.models import LIVE_STITCHES, OVER_A_DAY, STRUCK, Entry, Quarter, Sitting
from webapp.journal.rows import as_entry
from webapp.journal.sittings import counted
from webapp.projects.models import Project

# Built once: building one takes longer than running it.
_HERS = Sitting.stitcher == bindparam("stitcher")
_SITTINGS = (
    select(Sitting.id, Sitting.project, Sitting.begin, Sitting.end)
    .where(_HERS, or_(Sitting.end.is_(None), Sitting.end > bindparam("begin")))
    .order_by(Sitting.begin, Sitting.id)
)
BEGUN = _SITTINGS.where(Sitting.begin >= bindparam("first"), Sitting.begin < bindparam("end"))
BEGUN_BEFORE = _SITTINGS.where(OVER_A_DAY, Sitting.begin < bindparam("first"))
STRUCK_OUT = select(Sitting.id, Sitting.project).where(_HERS, STRUCK)
LAID = select(Quarter.project, Quarter.at, Quarter.stitches).where(
    *(Quarter.stitcher == bindparam("stitcher"), Quarter.pass_ == "cross", Quarter.stitches != 0),
    *(Quarter.at >= bindparam("begin"), Quarter.at < bindparam("end")),
)
LAST_STITCH = (
    select(Entry.at)
    .where(
        *(Entry.stitcher == bindparam("stitcher"), LIVE_STITCHES),
        *(Entry.at >= bindparam("since"), Entry.project == bindparam("project")),
    )
    .order_by(Entry.at.desc())
    .limit(1)
)
TITLES = (
    select(Project.id, Project.title)
    .where(Project.stitcher == bindparam("stitcher"))
    .order_by(Project.created, Project.id)
)
DAY = timedelta(days=1)


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
    first = begin - DAY  # what began earlier is found by having lasted over a day
    asked = {"stitcher": stitcher, "first": first, "begin": begin, "end": end}
    rows = [row for query in (BEGUN_BEFORE, BEGUN) for row in db.session.execute(query, asked)]
    found = []
    for row in rows:
        last = _last_stitch(stitcher, row.project, row.begin) if row.end is None else None
        counts = stretch(row.project, row.begin, row.end, last, now)
        found.append(Sat(row.id, row.project, row.begin, row.end, last, counts))
    return found


def struck(stitcher: UUID, begin: datetime, end: datetime, now: datetime) -> list[Sat]:
    """List what was struck out and would otherwise touch that time."""
    found = []
    for row in db.session.execute(STRUCK_OUT, {"stitcher": stitcher}):
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
    """List the crosses stitched in that time, by quarters of an hour; not what was there before."""
    rows = db.session.execute(LAID, {"stitcher": stitcher, "begin": begin, "end": end})
    return [Laid(row.project, row.at, row.stitches) for row in rows]


def titles(stitcher: UUID) -> dict[UUID, str]:
    """Name all her projects, the oldest first."""
    return {row.id: row.title for row in db.session.execute(TITLES, {"stitcher": stitcher})}


def _last_stitch(stitcher: UUID, project: UUID, since: datetime) -> datetime | None:
    asked = {"stitcher": stitcher, "project": project, "since": since}
    last: datetime | None = db.session.scalar(LAST_STITCH, asked)
    return last
