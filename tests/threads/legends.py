"""Legends in the tests: lines as the database has them, where no form is wanted."""

from uuid import UUID, uuid4

from flask import Flask
from sqlalchemy import select

from webapp.db import db
from webapp.projects.models import Project
from webapp.threads.models import LegendLine


def part(thread: str, kind: str = "cotton", strands: int = 2, instead: str = "", lots: tuple = ()) -> dict:
    return {"thread": thread, "kind": kind, "strands": strands, "instead": instead, "lots": list(lots)}


def line(*parts: dict, symbol: str = "", position: int = 1, **counts: int) -> LegendLine:
    """Make a line that stands in no database yet."""
    zero = dict.fromkeys(("full", "half", "quarter", "three_quarter", "back", "knots", "beads"), 0)
    return LegendLine(id=uuid4(), symbol=symbol, parts=list(parts), position=position, **(zero | counts))


def lay_down(app: Flask, project: UUID, *lines: LegendLine) -> None:
    """Give a project these lines, in this order."""
    with app.app_context():
        whose = db.session.scalar(select(Project).where(Project.id == project)).stitcher
        for position, one in enumerate(lines, 1):
            one.stitcher, one.project, one.position = whose, project, position
            one.key, one.scatter, one.note = f"{position} {one.parts[0]['thread']}", "mixed", ""
            db.session.add(one)
        db.session.commit()
