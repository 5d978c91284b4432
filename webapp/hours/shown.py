"""What every page of Hours is about: days of hers, seen from now."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from uuid import UUID
from zoneinfo import ZoneInfo

from webapp.hours import bars
from webapp.hours.figures import Figures, Share
from webapp.hours.week import Week, week_beside


@dataclass(frozen=True)
class Seen:
    """Seen from now, by her clocks."""

    zone: ZoneInfo
    now: datetime

    @property
    def today(self) -> date:
        """Tell her date."""
        return self.now.astimezone(self.zone).date()


@dataclass(frozen=True)
class Shown(Seen):
    """One week of hers, and what lies beside it."""

    week: Week

    @property
    def earlier(self) -> str | None:
        """Name the week before; none if that has no page."""
        before = week_beside(self.week, -1, self.zone)
        return before.name if before.has_page else None

    @property
    def later(self) -> str | None:
        """Name the week after; none if it has not begun."""
        return week_beside(self.week, 1, self.zone).name if self.week.end <= self.now else None


@dataclass(frozen=True)
class Sums:
    """Figures of hers, and the weave that each of her projects is known by."""

    figures: Figures
    titles: dict[UUID, str]

    @property
    def weaves(self) -> dict[UUID, int]:
        """Give each project its weave."""
        return bars.weaves_of(self.figures.projects, list(self.titles))

    def swatch(self, project: UUID) -> list[bars.Float]:
        """Weave a piece to know a project by."""
        return bars.swatch(self.weaves[project])


def woven(shares: Mapping[UUID, Share], weaves: Mapping[UUID, int]) -> list[tuple[int, timedelta]]:
    """Give the time of each project with its weave, for a chart."""
    return [(weaves[project], share.time) for project, share in shares.items()]
