"""Her stash of thread: kept, and what the threads of her legends are called."""

from dataclasses import dataclass
from uuid import UUID

from sqlalchemy import func, select

from webapp.db import db
from webapp.projects.models import Project
from webapp.threads.called import alike
from webapp.threads.models import KeptThread, LegendLine

OFFERED = 500  # names, at most


@dataclass(frozen=True)
class Printed:
    """A thread as one of her legends has it."""

    name: str
    kind: str
    colour: str | None


def kept(stitcher: UUID, *, put_away: bool = False) -> list[KeptThread]:
    """List her thread by name, of one name the lot kept first first."""
    query = select(KeptThread).where(
        KeptThread.stitcher == stitcher, KeptThread.put_away.is_not(None) == put_away
    )
    return sorted(db.session.scalars(query), key=lambda one: (alike(one.thread), one.kind, one.created))


def how_many_put_away(stitcher: UUID) -> int:
    """Count the thread she has put away."""
    query = select(func.count()).where(KeptThread.stitcher == stitcher, KeptThread.put_away.is_not(None))
    return db.session.scalar(query) or 0


def printed(stitcher: UUID) -> dict[str, Printed]:
    """Give the threads of her legends by their names, what she uses instead too; of one name the newest."""
    query = (
        select(LegendLine.parts, LegendLine.colour)
        .join(Project, (Project.stitcher == LegendLine.stitcher) & (Project.id == LegendLine.project))
        .where(LegendLine.stitcher == stitcher, Project.put_away.is_(None))
        .order_by(Project.created, LegendLine.position)
    )
    found = {}
    for parts, colour in db.session.execute(query):
        for part in parts:
            hers = colour if len(parts) == 1 and not part.get("instead") else None
            for name in {part["thread"], part.get("instead") or part["thread"]}:
                found[alike(name)] = Printed(name, part["kind"], hers)
    return found


def offered(stitcher: UUID) -> list[str]:
    """List the names to offer as she types one: of her legends, and of what is kept."""
    names = {alike(one.thread): one.thread for one in kept(stitcher)}
    names |= {key: one.name for key, one in printed(stitcher).items()}
    return [names[key] for key in sorted(names)][:OFFERED]
