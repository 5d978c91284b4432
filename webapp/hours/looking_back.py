"""What the pages of a month and of a year are drawn from."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from uuid import UUID
from zoneinfo import ZoneInfo

from webapp import clock
from webapp.accounts.models import Account
from webapp.hours import charts, months, records
from webapp.hours.charts import Cloth, Row
from webapp.hours.figures import Figures, Share, Shares, whole, work_out
from webapp.hours.laid import laid
from webapp.hours.shown import Seen, Sums, woven
from webapp.hours.week import Days, has_page, thursday


@dataclass(frozen=True)
class Part:
    """One row of the calendar: a week or a month, how it is called in addresses, and what it has."""

    name: str | None
    first: date
    last: date
    sum: Share
    nights: int


@dataclass(frozen=True)
class Back(Seen, Sums):
    """Days of hers looked back on: the calendar's rows of dates, and what lies beside it."""

    days: Days
    rows: Sequence[Sequence[date | None]]
    names: Sequence[str | None]  # of the rows, as addresses have them; none for one without a page
    grid: charts.Grid
    name: str
    earlier: str | None
    later: str | None
    nights: set[date]  # on which any work was on its frame, by the day on which they began

    @property
    def by_date(self) -> dict[date, Shares]:
        """Give what the projects have of each day."""
        return {day.date: shares for day, shares in self.figures.days}

    @property
    def cloth(self) -> Cloth:
        """Weave the days."""
        by_date, weaves, today = self.by_date, self.weaves, self.today
        rows: list[Row] = [
            [None if day is None or day > today else woven(by_date[day], weaves) for day in row]
            for row in self.rows
        ]
        places = ((day, (r, c)) for r, row in enumerate(self.rows) for c, day in enumerate(row))
        marked = [place for day, place in places if day in self.nights]
        return charts.calendar(rows, self.grid, marked)

    @property
    def parts(self) -> list[Part]:
        """Sum each row of the calendar that has begun."""
        by_date, parts = self.by_date, []
        for name, row in zip(self.names, self.rows, strict=True):
            dates = [day for day in row if day is not None]
            if dates[0] <= self.today:
                total = _sum([whole(by_date[day]) for day in dates])
                nights = sum(day in self.nights for day in dates)
                parts.append(Part(name, dates[0], dates[-1], total, nights))
        return parts

    @property
    def told(self) -> list[tuple[date, Share, bool]]:
        """Sum each day that has anything, a night on the frame included."""
        days = [(day.date, shares, day.date in self.nights) for day, shares in self.figures.days]
        return [(day, whole(shares), on_frame) for day, shares, on_frame in days if shares or on_frame]

    @property
    def days_stitched(self) -> int:
        """Count the days with any time."""
        return sum(bool(whole(shares).time) for _, shares in self.figures.days)


def _sum(shares: Sequence[Share]) -> Share:
    return Share(sum((one.time for one in shares), timedelta()), sum(one.stitches for one in shares))


def month_of(account: Account, name: str | None) -> Back:
    """Read and work out the month named, or this one; raise BadWeek."""
    zone, today = _today(account)
    first = months.month_named(name) if name is not None else today.replace(day=1)
    days = months.month_from(first, zone)
    rows = months.weeks_of(days, account.week_start)
    before, after = months.month_after(first, -1), months.month_after(first)
    return _back(
        account,
        days,
        rows=rows,
        names=[_week_name(row) for row in rows],
        grid=charts.MONTH,
        name=f"{first:%Y-%m}",
        earlier=f"{before:%Y-%m}" if has_page(before.year) else None,
        later=f"{after:%Y-%m}" if after <= today else None,
    )


def year_of(account: Account, name: str | None) -> Back:
    """Read and work out the year named, or this one; raise BadWeek."""
    zone, today = _today(account)
    year = months.year_named(name) if name is not None else today.year
    firsts = [date(year, month, 1) for month in range(1, 13)]
    rows: list[list[date | None]] = [
        [day.date for day in months.month_from(first, zone).days] for first in firsts
    ]
    return _back(
        account,
        months.year_from(year, zone),
        rows=rows,
        names=[f"{first:%Y-%m}" for first in firsts],
        grid=charts.YEAR,
        name=f"{year:04}",
        earlier=f"{year - 1:04}" if has_page(year - 1) else None,
        later=f"{year + 1:04}" if year < today.year else None,
    )


def _today(account: Account) -> tuple[ZoneInfo, date]:
    zone = ZoneInfo(account.zone)
    return zone, clock.now().astimezone(zone).date()


def _week_name(row: Sequence[date | None]) -> str | None:
    """Name the week that a row of a month's dates is part of; none if it has no page."""
    place, day = next((n, day) for n, day in enumerate(row) if day is not None)
    year, number = thursday(day - timedelta(days=place)).isocalendar()[:2]
    return f"{year:04}-W{number:02}" if has_page(year) else None


def _back(account: Account, days: Days, **layout: object) -> Back:
    zone, now = ZoneInfo(account.zone), clock.now()
    counts = [one.counts for one in records.sittings(account.id, days.begin, days.end, now)]
    figures: Figures = work_out(days, counts, laid(account.id, days))
    titles: dict[UUID, str] = records.titles(account.id)
    nights = records.nights_of_any(account.id, days, now)
    seen = {"figures": figures, "titles": titles, "zone": zone, "now": now, "days": days, "nights": nights}
    return Back(**seen, **layout)  # type: ignore[arg-type]
