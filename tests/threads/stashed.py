"""Legends, stashes and what was stitched, as the tests of shopping and running out have them."""

from collections.abc import Callable
from typing import Any
from uuid import UUID, uuid4

from flask import Flask
from sqlalchemy import select

from webapp import clock
from webapp.db import db
from webapp.journal.batch import write_down
from webapp.projects.models import Project
from webapp.threads.models import KeptThread, LegendLine, ThreadReading


def part(thread: str, kind: str = "cotton", strands: int = 2, **more: Any) -> dict[str, Any]:
    return {"thread": thread, "kind": kind, "strands": strands, "instead": "", "lots": [], **more}


def legend(app: Flask, project: UUID | str, *lines: dict[str, Any]) -> list[UUID]:
    """Write lines of a legend, each a dict of its columns with at least ``parts``; gives their ids."""
    of = UUID(str(project))
    with app.app_context():
        whose = db.session.scalar(select(Project.stitcher).where(Project.id == of))
        ids = [uuid4() for _line in lines]
        for position, (id, line) in enumerate(zip(ids, lines, strict=True), 1):
            key = line["parts"][0]["thread"]
            columns = {"stitcher": whose, "project": of, "id": id, "key": key, "position": position}
            db.session.add(LegendLine(**columns | line))
        db.session.commit()
    return ids


def line(thread: str, full: int = 1000, **more: Any) -> dict[str, Any]:
    """Give a line of one thread."""
    of_part = {name: more.pop(name) for name in ("kind", "strands", "instead", "lots") if name in more}
    return {"parts": [part(thread, **of_part)], "full": full, **more}


def keep(app: Flask, project: UUID | str, thread: str, skeins: float = 1.0, **more: Any) -> UUID:
    """Put thread into the stash of whose project it is; gives its id."""
    with app.app_context():
        whose = db.session.scalar(select(Project.stitcher).where(Project.id == UUID(str(project))))
        now = clock.now()
        columns = {"kind": "cotton", "counted": now, "created": now} | more
        row = KeptThread(stitcher=whose, id=uuid4(), thread=thread, skeins=skeins, **columns)
        db.session.add(row)
        db.session.commit()
        return row.id


def left(app: Flask, project: UUID | str, line: UUID, mm: float, **more: Any) -> None:
    """Say how much is left of a line's thread."""
    of = UUID(str(project))
    with app.app_context():
        whose = db.session.scalar(select(Project.stitcher).where(Project.id == of))
        columns = {"id": uuid4(), "line": line, "what": "left", "length": mm, "made": clock.now()} | more
        db.session.add(ThreadReading(stitcher=whose, project=of, **columns))
        db.session.commit()


def stitched(app: Flask, project: UUID | str, thread: str, by: int, **more: Any) -> None:
    """Lay stitches of a thread, as a phone's entries do."""
    of = UUID(str(project))
    with app.app_context():
        whose = db.session.scalar(select(Project.stitcher).where(Project.id == of))
        assert whose is not None
        place = {} if more.get("pass", "cross") != "cross" else {"row": 1}
        write_down(whose, of, [{"kind": "stitches", "by": by, "thread": thread, **place, **more}])
        db.session.commit()


def asked(app: Flask, project: UUID | str, ask: Callable[[Project], Any]) -> Any:
    """Ask something of a project."""
    with app.app_context():
        found = db.session.scalar(select(Project).where(Project.id == UUID(str(project))))
        assert found is not None
        return ask(found)


def plain(text: str) -> str:
    """Give a text with plain spaces between lengths and their units."""
    return text.replace("\N{NO-BREAK SPACE}", " ")
