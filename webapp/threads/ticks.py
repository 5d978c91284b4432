"""What she ticked on a project's sheets, and the lines she wrote on them herself, in the database."""

from collections.abc import Mapping

from sqlalchemy import select, update

from webapp import clock
from webapp.db import db
from webapp.projects.models import Project
from webapp.threads.models import SheetLine
from webapp.threads.sheet import OWN

MOST = 60  # lines of her own on a sheet
FULL = f"The sheet is full: {MOST} lines of your own fit. Remove one first."


def kept(project: Project, sheet: str) -> Mapping[str, SheetLine]:
    """Load what is kept of a sheet, the oldest first."""
    query = select(SheetLine).where(
        SheetLine.stitcher == project.stitcher, SheetLine.project == project.id, SheetLine.sheet == sheet
    )
    return {line.item: line for line in db.session.scalars(query.order_by(SheetLine.created, SheetLine.item))}


def tick(project: Project, sheet: str, item: str, *, ticked: bool) -> None:
    """Tick a line or not: said twice, it is as said once."""
    _line(project, sheet, item).ticked = ticked


def add(project: Project, sheet: str, text: str) -> str | None:
    """Write a line of her own on a sheet, once; gives the sentence on why it cannot be, if so."""
    here = kept(project, sheet)
    if f"{OWN}{text}" not in here and sum(line.own for line in here.values()) >= MOST:
        return FULL
    _line(project, sheet, f"{OWN}{text}").own = True
    return None


def remove(project: Project, sheet: str, item: str) -> None:
    """Take a line of her own off a sheet, if it is there."""
    found = kept(project, sheet).get(item)  # looked for here: a database may refuse to look for any text
    if found is not None and found.own:
        db.session.delete(found)


def start_over(project: Project, sheet: str) -> None:
    """Untick everything on a sheet; her own lines stay."""
    db.session.execute(
        update(SheetLine)
        .where(
            SheetLine.stitcher == project.stitcher, SheetLine.project == project.id, SheetLine.sheet == sheet
        )
        .values(ticked=False)
    )


def _line(project: Project, sheet: str, item: str) -> SheetLine:
    key = (project.stitcher, project.id, sheet, item)
    found = db.session.get(SheetLine, key)
    if found is None:
        found = SheetLine(stitcher=key[0], project=key[1], sheet=sheet, item=item, created=clock.now())
        found.own = found.ticked = False
        db.session.add(found)
    return found
