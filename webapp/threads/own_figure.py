"""Her own figure for a project: what she measured on it, gathered for ``own.py``."""

from zoneinfo import ZoneInfo

from sqlalchemy import select

from webapp.accounts.models import Account
from webapp.db import db
from webapp.projects.models import Project
from webapp.threads import own
from webapp.threads.estimate import Own
from webapp.threads.legend_kept import ground, legend, line_of
from webapp.threads.legend_needs import how_worked, lead
from webapp.threads.models import LegendLine, ThreadReading
from webapp.threads.own import Reading
from webapp.threads.tables import kinds


def readings(project: Project) -> list[ThreadReading]:
    """Load what she measured, the latest first."""
    query = select(ThreadReading).where(
        ThreadReading.stitcher == project.stitcher, ThreadReading.project == project.id
    )
    return list(db.session.scalars(query.order_by(ThreadReading.made.desc(), ThreadReading.id.desc())))


def own_of(project: Project) -> Own | None:
    """Give her own figure; None where she measured nothing, or the cloth is another than she measured on.

    What no cross of this cloth could have taken is left out: the cloth was changed since, and says nothing.
    """
    rows = {row.id: row for row in legend(project)}
    found = []
    for one in readings(project):
        if one.what in ("length", "skein"):
            read = reading_of(one, rows.get(one.line) if one.line else None, project)
            found += [read] if _can_be(read, project) else []
    return own.own(found, ground(project))


def _can_be(reading: Reading, project: Project) -> bool:
    try:
        own.ratio(reading, ground(project))
    except ValueError:
        return False
    return True


def reading_of(row: ThreadReading, line: LegendLine | None, project: Project) -> Reading:
    """Give a reading as it is reckoned with, on the line it was made on."""
    zone = db.session.get_one(Account, project.stitcher).zone
    made = row.made.astimezone(ZoneInfo(zone)).date()
    read = Reading(row.what, row.stitches or 0, row.length, row.strands or 2, row.method or "rows", made)
    if line is not None:
        how = how_worked(line_of(line), kinds())[0]
        read = read._replace(
            split=int(kinds()[line.parts[0]["kind"]]["strands"]),
            working=line.working or float(lead(line_of(line), kinds())["working_mm"]),
            loop=how.loop and read.strands % 2 == 0,
            scatter=line.scatter,
            patches=line.patches,
        )
    return read
