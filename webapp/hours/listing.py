"""A week's sittings as they are listed to put their times right."""

from dataclasses import dataclass
from datetime import datetime, timedelta
from uuid import UUID
from zoneinfo import ZoneInfo

from webapp import clock
from webapp.accounts.models import Account
from webapp.hours import records, wall, words
from webapp.hours.amends import before_change, offered_end
from webapp.hours.fixing import went_to
from webapp.hours.joining import Joined, join
from webapp.hours.records import Sat
from webapp.hours.report import week_asked
from webapp.hours.shown import Shown
from webapp.hours.split import Stretch, stretch
from webapp.ids import new_id
from webapp.journal import moments

MINUTE = timedelta(minutes=1)
FIELD = "%Y-%m-%dT%H:%M"


@dataclass(frozen=True)
class Listing(Shown):
    """The sittings of one week of hers."""

    joined: list[Joined]
    titles: dict[UUID, str]
    was: dict[UUID, Stretch]  # what a sitting that was put right counted for before
    moved: dict[UUID, list[UUID]]  # through which projects one that was struck out was moved
    gaps: dict[UUID, timedelta]  # from tap to tap, at the projects of those still open

    def sat(self, sitting: UUID | None) -> Sat | None:
        """Find a sitting among those listed."""
        parts = (part for joined in self.joined for part in joined.parts)
        return next((part for part in parts if part.id == sitting), None)

    def day_of(self, joined: Joined) -> str:
        """Say on which day it began."""
        return words.short_date(wall.shown(joined.parts[0].begin, self.zone).date())

    def says(self, sat: Sat) -> str:
        """Say from when to when a sitting lasted."""
        begin = wall.shown(sat.begin, self.zone)
        if sat.end is None:
            return f"{begin:%H:%M}, {'left running' if sat.left_running(self.now) else 'still running'}"
        return f"{begin:%H:%M} to {words.moment(wall.shown(sat.end, self.zone), begin.date())}"

    def says_struck(self, sat: Sat) -> str:
        """Say where one that was struck out is now, if it was moved."""
        way = self.moved.get(sat.id)
        if not way:
            return "struck out"
        is_back = way[-1] == sat.project
        return f"moved to {self.titles[way[0]]} and back" if is_back else f"moved to {self.titles[way[-1]]}"

    def values(self, sat: Sat) -> dict[str, str]:
        """Fill in its form; for one that runs, its last tap and her usual gap are offered as the end."""
        end = sat.end or sat.counts.end
        if sat.end is None and sat.last_stitch:
            end = offered_end(sat.begin, sat.last_stitch, self.gaps[sat.project], self.now)
        if sat.end is None:  # the form has minutes alone, and an end must come after its beginning
            end = max(end, sat.begin.replace(second=0, microsecond=0) + MINUTE)
        return {
            "project": str(sat.project),
            "begin": wall.shown(sat.begin, self.zone).strftime(FIELD),
            "end": wall.shown(end, self.zone).strftime(FIELD),
        }

    def said_before(self, sat: Sat) -> str | None:
        """Say from when to when it lasted before it was put right."""
        was = self.was.get(sat.id)
        if was is None:
            return None
        begin, end = (wall.shown(moment, self.zone) for moment in (was.begin, was.end))
        now = wall.shown(sat.begin, self.zone).date()
        return f"{words.moment(begin, now)} to {words.moment(end, begin.date())}"

    def new_form(self) -> UUID:
        """Make the id of one form."""
        return new_id()


def listing_of(account: Account, name: str | None) -> Listing:
    """List a week's sittings, those struck out too; raise BadWeek."""
    zone, now, week = ZoneInfo(account.zone), clock.now(), week_asked(account, name)
    found = records.sittings(account.id, week.begin, week.end, now)
    touching = [one for one in found if one.counts.end > week.begin or one.begin >= week.begin]
    struck = records.struck(account.id, week.begin, week.end, now)
    was = {one.id: was for one in touching if (was := _was(account.id, one, now))}
    moved = {one.id: to for one in struck if (to := went_to(account.id, one.id))}
    gaps = {one.project: records.gap(account.id, one.project) for one in touching if one.end is None}
    titles = records.titles(account.id)
    return Listing(zone, now, week, join(touching + struck), titles, was, moved, gaps)


def _was(stitcher: UUID, sat: Sat, now: datetime) -> Stretch | None:
    before = before_change(records.named(stitcher, sat.project, sat.id))
    if before is None or before.begin is None:
        return None
    begin, end = moments.read(before.begin), moments.read(before.end) if before.end else None
    last = records.last_stitch(stitcher, sat.project, begin, now) if end is None else None
    return stretch(sat.project, begin, end, last, now)
