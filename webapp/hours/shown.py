"""What every page of Hours is about: one week of hers, seen from now."""

from dataclasses import dataclass
from datetime import date, datetime
from zoneinfo import ZoneInfo

from webapp.hours.week import Week, week_beside


@dataclass(frozen=True)
class Shown:
    """One week of hers, and what lies beside it."""

    week: Week
    zone: ZoneInfo
    now: datetime

    @property
    def today(self) -> date:
        """Tell her date."""
        return self.now.astimezone(self.zone).date()

    @property
    def earlier(self) -> str:
        """Name the week before."""
        return week_beside(self.week, -1, self.zone).name

    @property
    def later(self) -> str | None:
        """Name the week after; none if it has not begun."""
        return week_beside(self.week, 1, self.zone).name if self.week.end <= self.now else None
