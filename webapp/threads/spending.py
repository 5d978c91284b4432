"""What was spent of each thread: in all, as the journal worked it out, or by entries since a moment."""

from collections import defaultdict
from collections.abc import Iterable
from datetime import datetime
from typing import NamedTuple
from uuid import UUID

from sqlalchemy import select

from webapp.db import db
from webapp.journal.models import LIVE_STITCHES, Entry, ThreadTotal

Of = tuple[UUID, str]  # a project, and the key of a line of its legend


class Spent(NamedTuple):
    """One entry that spent thread."""

    at: datetime
    pass_: str
    by: int


def laid_and_spent(stitcher: UUID) -> dict[Of, dict[str, tuple[int, int]]]:
    """Give for each line, by pass, what was laid, whatever for, and what of it spent thread."""
    columns = (
        ThreadTotal.project,
        ThreadTotal.thread,
        ThreadTotal.pass_,
        ThreadTotal.stitches,
        ThreadTotal.spent,
    )
    query = select(*columns).where(ThreadTotal.stitcher == stitcher, ThreadTotal.touches > 0)
    found: dict[Of, dict[str, tuple[int, int]]] = defaultdict(dict)
    for project, key, pass_, laid, spent in db.session.execute(query):
        found[project, key][pass_] = (laid, spent)
    return found


def since(stitcher: UUID, moment: datetime | None, wanted: Iterable[Of]) -> dict[Of, list[Spent]]:
    """List what was spent of lines after a moment, in order."""
    found: dict[Of, list[Spent]] = {of: [] for of in wanted}
    if moment is None or not found:
        return found
    query = (
        select(Entry.project, Entry.thread, Entry.tally, Entry.at, Entry.spent)
        .where(Entry.stitcher == stitcher, LIVE_STITCHES, Entry.at > moment, Entry.spent != 0)
        .order_by(Entry.at)
    )
    for project, key, tally, at, by in db.session.execute(query):
        of = (project, key or "")
        if of in found and tally:
            found[of].append(Spent(at, tally.split(" ")[0], by or 0))
    return found
