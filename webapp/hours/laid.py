"""What she stitched, day by day of hers: the quarters of an hour summed by the database."""

from collections.abc import Iterator, Sequence
from datetime import date, datetime
from typing import Any
from uuid import UUID

from sqlalchemy import Executable, bindparam, func, select

from webapp.db import db
from webapp.hours.figures import Laid
from webapp.hours.week import Day, Days, runs
from webapp.journal.models import Quarter
from webapp.journal.quarters import LONG, bounds, number

_BEGIN, _END, _PER_DAY = (bindparam(name, type_=Quarter.quarter.type) for name in ("begin", "end", "per_day"))
_DAY = ((Quarter.quarter - _BEGIN) // _PER_DAY).label("day")
_SUMS = func.sum(Quarter.stitches)
_BETWEEN = (Quarter.stitcher == bindparam("stitcher"), Quarter.quarter >= _BEGIN, Quarter.quarter < _END)
OF_ALL = (
    select(_DAY, Quarter.project, _SUMS)
    .where(*_BETWEEN, Quarter.pass_ == "cross")
    .group_by("day", Quarter.project)
)
OF_ONE = (
    select(_DAY, Quarter.pass_, _SUMS)
    .where(*_BETWEEN, Quarter.project == bindparam("project"))
    .group_by("day", Quarter.pass_)
)
FIRST = select(func.min(Quarter.quarter)).where(
    *(Quarter.stitcher == bindparam("stitcher"), Quarter.project == bindparam("project")),
    Quarter.quarter >= 96,  # what a phone's clock dated to before 1970 is left out, in any zone
)


def laid(stitcher: UUID, days: Days) -> list[Laid]:
    """Sum the crosses of each day and project: not unpicked, corrected, or there before."""
    rows = _by_day(OF_ALL, days.days, stitcher=stitcher)
    return [Laid(project, day.begin, stitches) for day, project, stitches in rows if stitches]


def laid_of(stitcher: UUID, project: UUID, days: Sequence[Day]) -> Iterator[tuple[date, str, int]]:
    """Sum what was laid of a project on each day, by pass."""
    for day, of, stitches in _by_day(OF_ONE, days, stitcher=stitcher, project=project):
        yield day.date, of, stitches


def first_laid(stitcher: UUID, project: UUID) -> datetime | None:
    """Tell to a quarter of an hour when a project was first stitched at."""
    quarter = db.session.scalar(FIRST, {"stitcher": stitcher, "project": project})
    return None if quarter is None else bounds(quarter)[0]


def _by_day(statement: Executable, days: Sequence[Day], **asked: UUID) -> Iterator[tuple[Day, Any, int]]:
    """Ask for each run of days of one length by itself, so that a day is so many quarters."""
    connection = db.session.connection()
    for first, count in runs(days):
        run = days[first : first + count]
        length = (run[0].end - run[0].begin) // LONG
        if length:
            bounds = {"begin": number(run[0].begin), "end": number(run[-1].end), "per_day": length}
            for day, of, stitches in connection.execute(statement, asked | bounds):
                yield run[day], of, int(stitches)
