"""A week's sittings as they are listed to put their times right."""

from dataclasses import dataclass
from uuid import UUID
from zoneinfo import ZoneInfo

from webapp import clock
from webapp.accounts.models import Account
from webapp.hours import records, wall, words
from webapp.hours.joining import Joined, join
from webapp.hours.records import Sat
from webapp.hours.report import week_asked
from webapp.hours.shown import Shown
from webapp.ids import new_id

FIELD = "%Y-%m-%dT%H:%M"


@dataclass(frozen=True)
class Listing(Shown):
    """The sittings of one week of hers."""

    joined: list[Joined]
    titles: dict[UUID, str]

    def day_of(self, joined: Joined) -> str:
        """Say on which day it began."""
        return words.short_date(wall.shown(joined.parts[0].begin, self.zone).date())

    def says(self, sat: Sat) -> str:
        """Say from when to when a sitting lasted."""
        begin = wall.shown(sat.begin, self.zone)
        if sat.end is None:
            return f"{begin:%H:%M}, {'left running' if sat.left_running(self.now) else 'still running'}"
        return f"{begin:%H:%M} to {words.moment(wall.shown(sat.end, self.zone), begin.date())}"

    def values(self, sat: Sat) -> dict[str, str]:
        """Fill in its form; for one that runs, its last stitch is offered as the end."""
        end = sat.end or sat.last_stitch or sat.counts.end
        return {
            "begin": wall.shown(sat.begin, self.zone).strftime(FIELD),
            "end": wall.shown(end, self.zone).strftime(FIELD),
        }

    def new_form(self) -> UUID:
        """Make the id of one form."""
        return new_id()


def listing_of(account: Account, name: str | None) -> Listing:
    """List a week's sittings, those struck out too; raise BadWeek."""
    zone, now, week = ZoneInfo(account.zone), clock.now(), week_asked(account, name)
    found = records.sittings(account.id, week.begin, week.end, now)
    touching = [one for one in found if one.counts.end > week.begin or one.begin >= week.begin]
    struck = records.struck(account.id, week.begin, week.end, now)
    return Listing(zone, now, week, join(touching + struck), records.titles(account.id))
