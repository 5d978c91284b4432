"""A project's legend in the database: its lines, in her order."""

from uuid import UUID

from sqlalchemy import select

from webapp.cloth.tables import read
from webapp.db import db
from webapp.projects.models import Project
from webapp.threads.estimate import Counts
from webapp.threads.geometry import Ground, ground_of
from webapp.threads.legend import MOST_LINES, Line, Part, new_key
from webapp.threads.legend_needs import usual_strands
from webapp.threads.models import LegendLine
from webapp.threads.tables import kinds

PLAIN = (*Counts._fields, "symbol", "colour", "method", "scatter", "patches", "working", "note")
FULL = f"The legend is full: {MOST_LINES} lines fit. Remove one first."


def ground(project: Project) -> Ground:
    """Give a project's cloth as stitches lie on it."""
    return ground_of(project.count, project.over, project.across)


def usual(project: Project, kind: str) -> int:
    """Give the strands of a kind that are usual on a project's cloth."""
    return usual_strands(kind, max(1.0, project.count / project.over), kinds(), read("strands"))


def legend(project: Project) -> list[LegendLine]:
    """Load the lines."""
    query = select(LegendLine).where(
        LegendLine.stitcher == project.stitcher, LegendLine.project == project.id
    )
    return list(db.session.scalars(query.order_by(LegendLine.position, LegendLine.id)))


def line_of(row: LegendLine) -> Line:
    """Read a line out of the database."""
    parts = tuple(Part(**{**part, "lots": tuple(part.get("lots") or ())}) for part in row.parts)
    return Line(parts, **{name: getattr(row, name) for name in PLAIN})


def put(row: LegendLine, line: Line) -> None:
    """Write a line into its row, only what differs; its key stays."""
    parts = [
        {
            "thread": part.thread,
            "kind": part.kind,
            "strands": part.strands,
            "instead": part.instead,
            "lots": list(part.lots),
        }
        for part in line.parts
    ]
    for name, value in {"parts": parts, **{name: getattr(line, name) for name in PLAIN}}.items():
        if getattr(row, name, None) != value:
            setattr(row, name, value)


def add(project: Project, line: Line, id: UUID, there: list[LegendLine]) -> LegendLine | None:
    """Add a line at the end of those that are ``there``, once for each id; None where no more fit."""
    if found := next((row for row in there if row.id == id), None):
        return found
    if len(there) >= MOST_LINES:
        return None
    row = LegendLine(stitcher=project.stitcher, project=project.id, id=id)
    row.key = new_key(line.parts[0].thread, {other.key for other in there})
    row.position = max((other.position for other in there), default=0) + 1
    put(row, line)
    db.session.add(row)
    there.append(row)
    return row


def take_in(project: Project, lines: list[tuple[UUID, Line]]) -> bool:
    """Take in lines that were pasted: one whose symbol and thread are there changes it, others are added.

    Tells whether all of them fitted; if not, nothing is to be kept.
    """
    there = legend(project)
    before = list(there)
    for id, line in lines:
        row = next((row for row in before if line_of(row).same == line.same), None)
        if row is not None:
            put(row, line.beside(line_of(row)))
            before.remove(row)
        elif add(project, line, id, there) is None:
            return False
    return True


def move(project: Project, row: LegendLine, way: str) -> None:
    """Move a line up or down by one; at the end it stays."""
    there = legend(project)
    at = there.index(row)
    to = at + (-1 if way == "up" else 1)
    if 0 <= to < len(there):
        there[at], there[to] = there[to], there[at]
    for n, one in enumerate(there, 1):
        one.position = n
