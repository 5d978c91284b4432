"""What a page of Hours is drawn from."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import timedelta
from typing import Any
from uuid import UUID
from zoneinfo import ZoneInfo

from webapp import clock
from webapp.accounts.models import Account
from webapp.hours import bars, records, wall, words
from webapp.hours.figures import EARLIER, Figures, Share, Shares, usual, whole, work_out
from webapp.hours.records import Sat
from webapp.hours.shown import Shown
from webapp.hours.split import Stretch
from webapp.hours.week import Day, Week, week_beside, week_holding, week_named


@dataclass(frozen=True)
class Report(Shown):
    """One week of hers, read and worked out."""

    figures: Figures
    usual: timedelta | None
    titles: dict[UUID, str]
    running: list[Sat]

    @property
    def is_now(self) -> bool:
        """Tell whether the week is the one that runs."""
        return self.week.begin <= self.now < self.week.end

    @property
    def days(self) -> list[tuple[Day, Shares, Share]]:
        """Give each day, what the projects have of it, and the sum."""
        return [(day, shares, whole(shares)) for day, shares in self.figures.days]

    @property
    def thread_minutes(self) -> int:
        """Tell what one thread of the bands stands for."""
        return bars.thread_minutes(max(total.time for _, _, total in self.days))

    @property
    def weaves(self) -> dict[UUID, int]:
        """Give each project its weave."""
        return bars.weaves_of(self.figures.projects, list(self.titles))

    def swatch(self, project: UUID) -> list[bars.Float]:
        """Weave a piece to know a project by."""
        return bars.swatch(self.weaves[project])

    def running_words(self, sat: Sat) -> str:
        """Say of an open sitting since when it runs, and how far it counts if it was left."""
        since = words.moment(wall.shown(sat.begin, self.zone), self.today)
        if not sat.left_running(self.now):
            return f"still running, since {since}."
        until = words.moment(wall.shown(sat.counts.end, self.zone), self.today)
        return f"left running since {since}. It counts to {until}, two hours after the last stitch."

    @property
    def bands(self) -> list[bars.Band]:
        """Weave the seven days."""
        each, weaves = timedelta(minutes=self.thread_minutes), self.weaves
        return [
            bars.band(n, [(weaves[project], share.time) for project, share in shares.items()], each)
            for n, (_, shares) in enumerate(self.figures.days)
        ]


def week_asked(account: Account, name: str | None) -> Week:
    """Give the week named, or this one; raise BadWeek."""
    zone = ZoneInfo(account.zone)
    if name is None:
        return week_holding(clock.now(), zone, account.week_start)
    return week_named(name, zone, account.week_start)


def report_on(account: Account, name: str | None) -> Report:
    """Read and work out the week named, or this one; raise BadWeek."""
    zone, now, week = ZoneInfo(account.zone), clock.now(), week_asked(account, name)
    first = week_beside(week, -EARLIER, zone)
    sat = records.sittings(account.id, first.begin, week.end, now)
    counts: Sequence[Stretch] = [one.counts for one in sat]
    worked = work_out(week, counts, records.laid(account.id, week.begin, week.end))
    running = [one for one in sat if one.end is None and one.begin <= now]
    return Report(
        week, zone, now, worked, usual(week, counts, now, zone), records.titles(account.id), running
    )


def as_figures(report: Report) -> dict[str, Any]:
    """Give the same figures to programs, unrounded."""
    shown = report.figures
    return {
        "week": report.week.name,
        "first_date": report.week.first.isoformat(),
        "last_date": report.week.last.isoformat(),
        "zone": report.zone.key,
        "total_seconds": shown.total.time.total_seconds(),
        "stitches": shown.total.stitches,
        "usual_seconds": None if report.usual is None else report.usual.total_seconds(),
        "days": [
            {
                "date": day.date.isoformat(),
                "length_seconds": (day.end - day.begin).total_seconds(),
                **_share(whole(shares)),
                "projects": [{"project": str(p), **_share(share)} for p, share in shares.items()],
            }
            for day, shares in shown.days
        ],
        "projects": [
            {
                "project": str(project),
                "title": report.titles[project],
                **_share(share),
                "sitting_seconds": share.sat.total_seconds(),
                "stitches_per_hour": share.pace,
            }
            for project, share in shown.projects.items()
        ],
    }


def _share(share: Share) -> dict[str, Any]:
    return {"seconds": share.time.total_seconds(), "stitches": share.stitches}
