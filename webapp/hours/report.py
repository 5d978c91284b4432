"""What a week's page is drawn from."""

from collections import Counter, defaultdict
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import timedelta
from zoneinfo import ZoneInfo

from webapp import clock
from webapp.accounts.models import Account
from webapp.hours import bars, charts, records, wall, words
from webapp.hours.figures import EARLIER, Share, Shares, usual, whole, work_out
from webapp.hours.forecast import Forecast, forecasts
from webapp.hours.joining import join
from webapp.hours.laid import laid
from webapp.hours.records import Sat
from webapp.hours.shown import Shown, Sums, woven
from webapp.hours.split import Stretch, cut, laid_out
from webapp.hours.week import Day, Week, week_beside, week_holding, week_named


@dataclass(frozen=True)
class Report(Shown, Sums):
    """One week of hers, read and worked out."""

    usual: timedelta | None
    weeks: list[tuple[Week, Shares]]  # the four before and this, the earliest first
    running: list[Sat]
    sittings: list[timedelta]  # what each has of the week, where it has any
    places: Counter[str]  # rows and blocks closed
    nights: int  # on which any work was on its frame
    forecasts: list[Forecast]
    numbered: bool  # her weeks begin as ISO's do

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
    def longest(self) -> timedelta | None:
        """Tell how long the longest sitting was."""
        return max(self.sittings, default=None)

    @property
    def beside(self) -> list[tuple[Week, timedelta, list[bars.Float]]]:
        """Lay this week and the four before as threads side by side; nothing if none was worked before."""
        if not any(shares for _, shares in self.weeks[:-1]):
            return []
        every = {project for _, shares in self.weeks for project in shares}
        weaves = bars.weaves_of(every, list(self.titles)) | self.weaves
        threads = charts.plied([sorted(woven(shares, weaves)) for _, shares in self.weeks])
        return [
            (week, whole(shares).time, thread)
            for (week, shares), thread in zip(self.weeks, threads, strict=True)
        ]

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
        return [bars.band(n, woven(shares, weaves), each) for n, (_, shares) in enumerate(self.figures.days)]


def week_asked(account: Account, name: str | None) -> Week:
    """Give the week named, or this one; raise BadWeek."""
    zone = ZoneInfo(account.zone)
    if name is None:
        return week_holding(clock.now(), zone, account.week_start)
    return week_named(name, zone, account.week_start)


def report_on(account: Account, name: str | None) -> Report:
    """Read and work out the week named, or this one; raise BadWeek."""
    zone, now, week = ZoneInfo(account.zone), clock.now(), week_asked(account, name)
    weeks = [week_beside(week, -n, zone) for n in range(EARLIER, 0, -1)] + [week]
    sat = records.sittings(account.id, weeks[0].begin, week.end, now)
    counts: Sequence[Stretch] = [one.counts for one in sat]
    worked = work_out(week, counts, laid(account.id, week))
    titles = records.titles(account.id)
    is_now = week.begin <= now < week.end
    return Report(
        figures=worked,
        titles=titles,
        zone=zone,
        now=now,
        week=week,
        usual=usual(week, counts, now, zone),
        weeks=_by_week(weeks, counts),
        running=[one for one in sat if one.end is None and one.begin <= now],
        sittings=[time for one in join(sat) if (time := one.within(week.begin, week.end))],
        places=records.places_done(account.id, week.begin, week.end),
        nights=len(records.nights_of_any(account.id, week, now)),
        forecasts=forecasts(account.id, list(worked.projects), zone, now) if is_now else [],
        numbered=account.week_start == 0,
    )


def _by_week(weeks: Sequence[Week], counts: Sequence[Stretch]) -> list[tuple[Week, Shares]]:
    """Give what each project has of each week."""
    spans = tuple(Day(week.first, week.begin, week.end) for week in weeks)
    times: list[Shares] = [defaultdict(Share) for _ in weeks]
    for which, project, time in cut(laid_out(counts), spans):
        times[which][project].time += time
    return list(zip(weeks, times, strict=True))
