"""When her projects will be done, out of what the journal holds of them."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from itertools import pairwise
from uuid import UUID
from zoneinfo import ZoneInfo

from sqlalchemy import bindparam, func, select

from webapp.db import db
from webapp.hours import pace, wall
from webapp.hours.laid import laid_of
from webapp.hours.pace import Finish, Span
from webapp.hours.week import days_from
from webapp.journal.models import Sitting, Total
from webapp.projects.models import Project
from webapp.projects.progress import BLOCK
from webapp.projects.turns import turns_of
from webapp.threads.models import LegendLine

# What a stitch of another pass is worth in crosses, by the legs it is drawn with: a cross has two, half and
# backstitch one, quarter and three-quarter half a leg and one and a half. A knot: common practice, no source.
WORTH = {"cross": 1.0, "part": 0.5, "back": 0.5, "knot": 1.0}
LOOKED_AT = timedelta(weeks=2 * pace.MOST_WEEKS)

_TOTALS = (
    *(Total.stitcher == bindparam("stitcher"), Total.project == bindparam("project")),
    Total.touches > 0,
)
LAID = select(Total.pass_, func.sum(Total.stitches)).where(*_TOTALS).group_by(Total.pass_)
DONE = select(Total.tally, Total.stitches).where(
    *_TOTALS, Total.done, Total.pass_ == "cross", Total.kind == bindparam("kind")
)
# What is asked of one project must not go by an index of all her time, which grows with the years.
SOME_SITTINGS = (
    select(Sitting.id)
    .where(
        *(Sitting.stitcher == bindparam("stitcher"), Sitting.project == bindparam("project")),
        func.coalesce(Sitting.end, Sitting.begin).is_not(None),
    )
    .limit(pace.SITTINGS)
)
LEGEND = select(
    func.sum(LegendLine.half + LegendLine.quarter + LegendLine.three_quarter).label("part"),
    func.sum(LegendLine.back).label("back"),
    func.sum(LegendLine.knots + LegendLine.beads).label("knot"),
).where(LegendLine.stitcher == bindparam("stitcher"), LegendLine.project == bindparam("project"))


@dataclass(frozen=True)
class Forecast:
    """When a project will be done: its crosses, and its last pass where the legend has others."""

    project: UUID
    crosses: Finish | None
    last: Finish | None
    sittings: int  # eight at most: from how many it is told
    left: float | None  # crosses

    @property
    def why_not(self) -> str:
        """Say why there is no date."""
        if self.sittings < pace.SITTINGS:
            return (
                f"A finish is forecast from {pace.SITTINGS} sittings over {pace.WEEKS} weeks on. "
                f"So far there {'is 1' if self.sittings == 1 else f'are {self.sittings}'}."
            )
        if self.left is None:
            return (
                f"A finish is forecast once {pace.PLACES} rows or blocks are done and their stitches counted."
            )
        if self.left <= 0:
            return "The crosses are done."
        return f"A finish is forecast from {pace.WEEKS} whole weeks on, at a pace that comes to an end."


def forecasts(stitcher: UUID, projects: Sequence[UUID], zone: ZoneInfo, now: datetime) -> list[Forecast]:
    """Forecast those of the projects that are in hand and of which anything can be told."""
    query = select(Project).where(Project.stitcher == stitcher, Project.id.in_(projects))
    hers = {one.id: one for one in db.session.scalars(query) if one.state == "in hand"}
    told = [forecast(hers[project], zone, now) for project in projects if project in hers]
    return [one for one in told if one.crosses or one.last]


def forecast(project: Project, zone: ZoneInfo, now: datetime) -> Forecast:
    """Forecast one project."""
    asked = {"stitcher": project.stitcher, "project": project.id}
    today = now.astimezone(zone).date()
    sittings = len(db.session.execute(SOME_SITTINGS, asked).all())
    laid = {of: int(stitches) for of, stitches in db.session.execute(LAID, asked)}
    left = _left(project, laid.get("cross", 0))
    passes = _by_day(asked, today, zone)
    begun = min((day for day, worth in passes(tuple(WORTH)).items() if worth > 0), default=None)
    if sittings < pace.SITTINGS or begun is None or left is None:
        return Forecast(project.id, None, None, sittings, left)
    rested = rests(turns_of(project.stitcher, project.id), zone)
    more = _more(asked, laid)

    def told(laid_on: Mapping[date, float], rest: float) -> Finish | None:
        weeks = pace.weeks_before(today, laid_on, begun, rested)
        return pace.finish(weeks, rest + laid_on.get(today, 0), today) if rest > 0 else None

    crosses = told(passes(("cross",)), left)
    last = told(passes(tuple(WORTH)), left + more) if more > 0 else None
    return Forecast(project.id, crosses, last, sittings, left)


OUT_OF_HAND = ("planned", "resting", "finished")


def rests(
    turns: Sequence[tuple[datetime, str]], zone: ZoneInfo, states: Sequence[str] = OUT_OF_HAND
) -> list[Span]:
    """Give the days a project was in one of these states: not in hand, where none are named."""
    days: list[tuple[date | None, str]] = [(wall.shown(at, zone).date(), state) for at, state in turns]
    return [
        Span(day, end)
        for (day, state), (end, _) in pairwise([*days, (None, "")])
        if day and state in states and day != end
    ]


def _by_day(
    asked: dict[str, UUID], today: date, zone: ZoneInfo
) -> Callable[[Sequence[str]], dict[date, float]]:
    """Read what was laid by day, to be summed for some passes, in crosses."""
    days = days_from(today - LOOKED_AT, today + pace.DAY, zone).days
    dated = list(laid_of(asked["stitcher"], asked["project"], days))

    def of_passes(which: Sequence[str]) -> dict[date, float]:
        sums: dict[date, float] = {}
        for day, of, stitches in dated:
            if of in which:
                sums[day] = sums.get(day, 0) + stitches * WORTH[of]
        return sums

    return of_passes


def _left(project: Project, laid: int) -> float | None:
    kind = "block" if project.working == "blocks" else "row"
    asked = {"stitcher": project.stitcher, "project": project.id, "kind": kind}
    done = [(_area(project, tally[6:]), stitches) for tally, stitches in db.session.execute(DONE, asked)]
    rows = project.working == "rows"
    expected = project.expected * project.height if rows and project.expected else None
    return pace.left_to_lay(project.chart_total, laid, project.width * project.height, done, expected)


def _area(project: Project, place: str) -> int:
    """Tell how many squares of the chart a row or block has."""
    if "." not in place:
        return project.width if int(place) <= project.height else 0
    across, down = (int(part) for part in place.split("."))
    wide, high = project.width - (across - 1) * BLOCK, project.height - (down - 1) * BLOCK
    return max(min(BLOCK, wide), 0) * max(min(BLOCK, high), 0)


def _more(asked: dict[str, UUID], laid: dict[str, int]) -> float:
    """Tell what other passes have left, in crosses."""
    legend = db.session.execute(LEGEND, asked).one()._mapping
    return sum(max(int(legend[of] or 0) - laid.get(of, 0), 0) * WORTH[of] for of in ("part", "back", "knot"))
