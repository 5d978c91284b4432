"""A week's sittings as they are listed to put their times right."""

from dataclasses import dataclass
from uuid import UUID
from zoneinfo import ZoneInfo

from webapp import clock
from webapp.accounts.models import Account
from webapp.hours import records, wall, words
from webapp.hours.records import Sat
from webapp.hours.report import week_asked
from webapp.hours.shown import Shown
from webapp.hours.split import Stretch, joins, laid_out, length
from webapp.ids import new_id

FIELD = "%Y-%m-%dT%H:%M"


@dataclass(frozen=True)
class Joined:
    """Sittings of one project with pauses under half an hour: shown as one."""

    parts: list[Sat]

    @property
    def project(self) -> UUID:
        """Tell whose they are."""
        return self.parts[0].project

    @property
    def time(self) -> str:
        """Say how long they lasted, without the pauses."""
        counts = [part.counts for part in self.parts]
        return words.clock(length(laid_out(counts), self.whole.begin, self.whole.end))

    @property
    def whole(self) -> Stretch:
        """Give it from its first beginning to its last end."""
        end = max(part.counts.end for part in self.parts)
        return Stretch(self.project, self.parts[0].begin, end)

    @property
    def struck(self) -> bool:
        """Tell whether it is struck out."""
        return self.parts[0].struck


def join(sat: list[Sat]) -> list[Joined]:
    """Join what is shown as one, the latest begun first; what is struck out stands alone."""
    joined: list[Joined] = []
    latest: dict[UUID, Joined] = {}
    for one in sorted(sat, key=lambda one: (one.begin, one.id)):
        before = latest.get(one.project)
        if before and not one.struck and joins(before.whole, one.counts):
            before.parts.append(one)
            continue
        joined.append(Joined([one]))
        if not one.struck:
            latest[one.project] = joined[-1]
    return joined[::-1]


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
    return Listing(week, zone, now, join(touching + struck), records.titles(account.id))
