"""A project's whole story, read and worked out."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from uuid import UUID
from zoneinfo import ZoneInfo

from sqlalchemy import bindparam, select

from webapp import clock
from webapp.accounts.models import Account
from webapp.db import db
from webapp.hours import photographs, records, wall
from webapp.hours.forecast import Forecast, forecast, rests
from webapp.hours.growth import Grown, chosen, grown, places, weeks_from
from webapp.hours.joining import join
from webapp.hours.kinds import Tap, by_changes
from webapp.hours.laid import first_laid, laid_of
from webapp.hours.models import Photograph
from webapp.hours.pace import Span
from webapp.hours.shown import Seen
from webapp.hours.split import Stretch, cut, laid_out
from webapp.hours.week import Day, Days, days_from, first_of
from webapp.journal.models import NOT_UNDO, Entry, Latest
from webapp.projects.models import Project
from webapp.projects.turns import turns_of
from webapp.projects.woven import Cloth, woven
from webapp.threads.used import Used, length, used, whole

BOX = (84, 76)  # px, of one drawing of the cloth as it grew
_OF = (Latest.stitcher == bindparam("stitcher"), Latest.project == bindparam("project"))
DONE = select(Latest.register, Latest.at, Latest.value).where(*_OF, Latest.register.startswith("done cross "))
NOTE = select(Latest.value, Latest.at).where(*_OF, Latest.register == "note", Latest.at.is_not(None))
TAPS = (
    select(Entry.at, Entry.tally, Entry.by, Entry.fields)
    .where(Entry.stitcher == bindparam("stitcher"), Entry.project == bindparam("project"))
    .where(~Entry.cancelled, NOT_UNDO, Entry.kind == "stitches", Entry.tally.startswith("cross "))
    .order_by(Entry.at.desc(), Entry.id.desc())
    .limit(4000)
)


@dataclass(frozen=True)
class Stage:
    """The cloth as it stood at the end of a week."""

    grown: Grown
    cloth: Cloth


@dataclass(frozen=True)
class Story(Seen):
    """What became of a project."""

    project: Project
    begun: date | None  # its first stitch
    finished: date | None
    rested: list[Span]
    time: timedelta
    stitches: int
    sittings: int
    evenings: int  # days of hers with a sitting or a stitch
    nights: int  # on the frame
    kinds: tuple[float, float] | None
    thread: list[Used]
    forecast: Forecast | None
    weeks: list[Grown]  # that gave anything
    stages: list[Stage]  # of those that closed a row or a block: as many as there is room to draw
    note: tuple[str, date] | None
    photographs: list[Photograph]

    @property
    def pace(self) -> float | None:
        """Tell the stitches an hour over all of it."""
        return self.stitches / (self.time / timedelta(hours=1)) if self.time and self.stitches > 0 else None

    def thread_in_all(self, unit: str) -> str:
        """Say how long all thread used comes to, in her unit; nothing where there is none."""
        total = whole(self.thread)
        return length(total, unit) if total else ""

    def day(self, moment: datetime) -> date:
        """Tell on which day of hers a moment lies."""
        return wall.shown(moment, self.zone).date()


def story_of(account: Account, project: Project) -> Story:
    """Read and work out a project's story."""
    zone, now = ZoneInfo(account.zone), clock.now()
    seen = Seen(zone, now)
    asked = {"stitcher": account.id, "project": project.id}
    sat = records.sittings_of(account.id, project.id, now)
    counts = laid_out([one.counts for one in sat])
    began = [wall.shown(one.begin, zone).date() for one in counts]
    done = _done(asked, zone)
    first = _first_day(project, zone, [*began, *done.values(), seen.today])
    days = days_from(first_of(first, account.week_start), seen.today + timedelta(days=1), zone)
    laid = [(day, n) for day, of, n in laid_of(account.id, project.id, days.days) if of == "cross"]
    turns = turns_of(account.id, project.id)
    weeks = grown(done, laid, _by_week(counts, days), weeks_from(days.first, seen.today))
    return Story(
        zone=zone,
        now=now,
        project=project,
        begun=min((day for day, n in laid if n > 0), default=None),
        finished=_finished(project, turns, zone),
        rested=[span for span in rests(turns, zone, ["resting"]) if span.end],
        time=sum((one.length for one in counts), timedelta()),
        stitches=max(sum(n for _, n in laid), 0),  # as the cloth is drawn: nothing there, or something
        sittings=len(join(sat)),
        evenings=len({*began, *(day for day, n in laid if n > 0)}),
        nights=len(records.nights(account.id, days, now).get(project.id, [])),
        kinds=by_changes(_taps(asked)),
        thread=used(project),
        forecast=forecast(project, zone, now) if project.state == "in hand" else None,
        weeks=weeks,
        stages=[
            Stage(one, woven(project, *places(one.done), box=BOX))
            for one in chosen([week for week in weeks if week.closed])
        ],
        note=_note(asked, zone),
        photographs=photographs.of_project(account.id, project.id),
    )


_LONG = timedelta(days=20 * 366)  # a phone's clock may be wrong by ages; work begun before is not


def _done(asked: dict[str, UUID], zone: ZoneInfo) -> dict[str, date]:
    """Tell when each row or block was closed that is closed now."""
    rows = db.session.execute(DONE, asked)
    return {register.split(" ")[2]: wall.shown(at, zone).date() for register, at, done in rows if at and done}


def _first_day(project: Project, zone: ZoneInfo, others: Sequence[date]) -> date:
    """Tell on which day of hers anything was first: a stitch, the frame, or the earliest of others."""
    asked = (project.stitcher, project.id)
    firsts = (first_laid(*asked), records.first_held(*asked, wall.EARLIEST))
    days = [wall.shown(one, zone).date() for one in firsts if one]
    return max(min([*days, *others]), wall.shown(project.created, zone).date() - _LONG)


def _by_week(pieces: Sequence[Stretch], days: Days) -> dict[date, timedelta]:
    """Tell the time of each seven days, by the first of them."""
    sevens = [days.days[n : n + 7] for n in range(0, len(days.days), 7)]
    weeks = tuple(Day(seven[0].date, seven[0].begin, seven[-1].end) for seven in sevens)
    times: dict[date, timedelta] = {}
    for which, _, time in cut(pieces, weeks):
        times[weeks[which].date] = times.get(weeks[which].date, timedelta()) + time
    return times


def _finished(project: Project, turns: Sequence[tuple[datetime, str]], zone: ZoneInfo) -> date | None:
    finished = [at for at, state in turns if state == "finished"]
    return wall.shown(finished[-1], zone).date() if finished and project.state == "finished" else None


def _taps(asked: dict[str, UUID]) -> list[Tap]:
    rows = db.session.connection().execute(TAPS, asked)
    return [
        Tap(row.at, row.tally, row.by, row.fields.get("thread"))
        for row in rows
        if row.fields.get("why") in (None, "stitched")
    ]


def _note(asked: dict[str, UUID], zone: ZoneInfo) -> tuple[str, date] | None:
    found = db.session.execute(NOTE, asked).first()
    return (found.value, wall.shown(found.at, zone).date()) if found and found.value else None
