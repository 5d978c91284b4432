"""What the journal holds of her sittings and stitches between two moments."""

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from typing import Any
from uuid import UUID

from sqlalchemy import bindparam, func, or_, select, text

from webapp.db import db
from webapp.hours.amends import usual_gap
from webapp.hours.nights import DEEP, Held, nights_on
from webapp.hours.split import QUIET, Stretch, stretch
from webapp.hours.week import Days
from webapp.journal import moments
from webapp.journal.keys import kind_of_place
from webapp.journal.models import (
    DONE_CROSSES,
    LIVE_FRAME,
    LIVE_STITCHES,
    NOT_UNDO,
    OVER_A_DAY,
    STRUCK,
    Entry,
    Latest,
    Sitting,
)
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
OF_PROJECT = (
    select(Sitting.id, Sitting.project, Sitting.begin, Sitting.end)
    .where(_HERS, Sitting.project == bindparam("project"), Sitting.begin.is_not(None))
    .order_by(Sitting.begin, Sitting.id)
)
STRUCK_OUT = select(Sitting.id, Sitting.project).where(_HERS, STRUCK)
NEXT_BEGUN = (
    select(Sitting.begin)
    .where(_HERS, Sitting.project == bindparam("project"))
    .where(Sitting.begin > bindparam("since"), Sitting.begin <= bindparam("until"))
    .order_by(Sitting.begin)
    .limit(1)
)
LAST_STITCH = (
    select(Entry.at)
    .where(Entry.stitcher == bindparam("stitcher"), LIVE_STITCHES, Entry.project == bindparam("project"))
    .where(Entry.at >= bindparam("since"), Entry.at <= bindparam("until"))
    .order_by(Entry.at.desc())
    .limit(1)
)
_WHY = Entry.fields["why"].as_string()
DONE = select(Latest.project, Latest.register, Latest.value).where(
    *(Latest.stitcher == bindparam("stitcher"), DONE_CROSSES),
    *(Latest.at >= bindparam("begin"), Latest.at < bindparam("end")),
    select(Entry.id)  # not what was there before: something was stitched at it
    .where(Entry.stitcher == Latest.stitcher, Entry.project == Latest.project, text("tally IS NOT NULL"))
    .where(Entry.tally == func.substr(Latest.register, 6), ~Entry.cancelled, Entry.kind == "stitches")
    .where(Entry.by > 0, or_(_WHY.is_(None), _WHY == "stitched"))
    .correlate(Latest)
    .exists(),
)
_STATE = Entry.fields["state"].as_string()
FRAMES = (
    select(Entry.project, Entry.at, _STATE)
    .where(Entry.stitcher == bindparam("stitcher"), LIVE_FRAME)
    .where(Entry.at >= bindparam("begin"), Entry.at < bindparam("end"))
    .order_by(Entry.at, Entry.id)
)
FIRST_FRAME = select(func.min(Entry.at)).where(
    *(Entry.stitcher == bindparam("stitcher"), Entry.project == bindparam("project"), LIVE_FRAME),
    Entry.at >= bindparam("since"),
)
FRAME_BEFORE = select(
    Project.id,
    select(_STATE)
    .where(Entry.stitcher == Project.stitcher, Entry.project == Project.id, LIVE_FRAME)
    .where(Entry.at < bindparam("begin"))
    .order_by(Entry.at.desc(), Entry.id.desc())
    .limit(1)
    .correlate(Project)
    .scalar_subquery(),
).where(Project.stitcher == bindparam("stitcher"))
TAPS = (
    select(Entry.at)
    .where(Entry.stitcher == bindparam("stitcher"), Entry.project == bindparam("project"))
    .where(~Entry.cancelled, NOT_UNDO, Entry.kind == "stitches")
    .order_by(Entry.at.desc(), Entry.id.desc())
    .limit(200)
)
TITLES = (
    select(Project.id, Project.title)
    .where(Project.stitcher == bindparam("stitcher"))
    .order_by(Project.created, Project.id)
)
DAY = timedelta(days=1)
TICK = timedelta(milliseconds=1)


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
    connection = db.session.connection()
    rows = [row for query in (BEGUN_BEFORE, BEGUN) for row in connection.execute(query, asked)]
    return [_sat(stitcher, row, now) for row in rows]


def sittings_of(stitcher: UUID, project: UUID, now: datetime) -> list[Sat]:
    """List all sittings of one project, as they began."""
    rows = db.session.connection().execute(OF_PROJECT, {"stitcher": stitcher, "project": project})
    return [_sat(stitcher, row, now) for row in rows]


def _sat(stitcher: UUID, row: Any, now: datetime) -> Sat:
    last = last_stitch(stitcher, row.project, row.begin, now) if row.end is None else None
    counts = stretch(row.project, row.begin, row.end, last, now)
    return Sat(row.id, row.project, row.begin, row.end, last, counts)


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


def gap(stitcher: UUID, project: UUID) -> timedelta:
    """Tell how long she usually takes from tap to tap at a project."""
    return usual_gap(list(db.session.scalars(TAPS, {"stitcher": stitcher, "project": project})))


def named(stitcher: UUID, project: UUID, sitting: UUID) -> list[tuple[dict[str, Any], bool]]:
    """List the entries that name a sitting as the journal writes them, each with whether it is cancelled."""
    return [(as_entry(one), one.cancelled) for one in entries(stitcher, project, sitting)]


def entries(stitcher: UUID, project: UUID, sitting: UUID) -> Iterable[Entry]:
    """List the entries that name a sitting."""
    named = (Entry.stitcher == stitcher, Entry.project == project, Entry.sitting == sitting)
    return db.session.scalars(select(Entry).where(*named)).all()


def strikes(entry: Entry) -> bool:
    """Tell whether an entry strikes its sitting out."""
    return entry.kind == "amend" and bool(entry.fields.get("struck"))


def places_done(stitcher: UUID, begin: datetime, end: datetime) -> Counter[str]:
    """Count the rows and the blocks closed in that time that are closed still."""
    rows = db.session.execute(DONE, {"stitcher": stitcher, "begin": begin, "end": end})
    return Counter(kind_of_place(register.split(" ")[2]) for _, register, done in rows if done)


def held(stitcher: UUID, begin: datetime, end: datetime) -> dict[UUID, list[Held]]:
    """List how the work of each project was held in that time, beginning with how it was before."""
    asked = {"stitcher": stitcher, "begin": begin, "end": end}
    found: dict[UUID, list[Held]] = {
        project: [Held(begin, state)] for project, state in db.session.execute(FRAME_BEFORE, asked) if state
    }
    for project, at, state in db.session.execute(FRAMES, asked):
        found.setdefault(project, []).append(Held(at, state))
    return found


def nights(stitcher: UUID, days: Days, now: datetime) -> dict[UUID, list[date]]:
    """List on which of these days nights on the frame began, by project: as told early on the day after."""
    return nights_on(held(stitcher, days.begin, min(days.end + DEEP, now)), days.days, now)


def nights_of_any(stitcher: UUID, days: Days, now: datetime) -> set[date]:
    """Tell on which of these days nights began on which any work was on its frame."""
    return {night for dates in nights(stitcher, days, now).values() for night in dates}


def first_held(stitcher: UUID, project: UUID, since: datetime) -> datetime | None:
    """Tell when, from then on, it was first said how the work of a project is held."""
    asked = {"stitcher": stitcher, "project": project, "since": since}
    first: datetime | None = db.session.scalar(FIRST_FRAME, asked)
    return first


def titles(stitcher: UUID) -> dict[UUID, str]:
    """Name all her projects, the oldest first."""
    return {row.id: row.title for row in db.session.execute(TITLES, {"stitcher": stitcher})}


def last_stitch(stitcher: UUID, project: UUID, begin: datetime, now: datetime) -> datetime | None:
    """Find the last stitch of a sitting without end: before the next one there, before two hours of quiet.

    Each step goes to the newest stitch within two hours, so there are few, however much was stitched.
    """
    asked = {"stitcher": stitcher, "project": project}
    last, since = None, begin
    while since <= now:
        within = {"since": since, "until": min(since + QUIET, now)}
        found: datetime | None = db.session.scalar(LAST_STITCH, {**asked, **within})
        if found in (None, last):
            break
        last = since = found
    if last is None:
        return None
    following = db.session.scalar(NEXT_BEGUN, {**asked, "since": begin, "until": last})
    return last_stitch(stitcher, project, begin, following - TICK) if following else last
