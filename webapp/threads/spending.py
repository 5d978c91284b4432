"""What entries of the journal spent of each thread: by indexed statements, in all or since a moment."""

from collections import defaultdict
from collections.abc import Iterable
from datetime import datetime
from typing import Any, NamedTuple
from uuid import UUID

from sqlalchemy import func, select

from webapp.db import db
from webapp.journal.models import LIVE_STITCHES, Entry

Of = tuple[UUID, str]  # a project, and the key of a line of its legend
_THREAD, _PASS, _WHY = (Entry.fields[name].as_string() for name in ("thread", "pass", "why"))


class Spent(NamedTuple):
    """One entry that spent thread."""

    at: datetime
    pass_: str
    by: int


def laid_and_spent(stitcher: UUID) -> dict[Of, dict[str, tuple[int, int]]]:
    """Give for each line, by pass, what was laid, whatever for, and what of it spent thread."""
    query = (
        select(Entry.project, _THREAD, _PASS, _WHY, func.sum(Entry.by))
        .where(Entry.stitcher == stitcher, LIVE_STITCHES, _THREAD.is_not(None))
        .group_by(Entry.project, _THREAD, _PASS, _WHY)
    )
    found: dict[Of, dict[str, tuple[int, int]]] = defaultdict(dict)
    for project, key, pass_, why, by in db.session.execute(query):
        of = found[project, key]
        laid, spent = of.get(pass_ or "cross", (0, 0))
        of[pass_ or "cross"] = (laid + int(by), spent + (int(by) if _spends(why) else 0))
    return found


def since(stitcher: UUID, moment: datetime | None, wanted: Iterable[Of]) -> dict[Of, list[Spent]]:
    """List what was spent of lines after a moment, in order."""
    found: dict[Of, list[Spent]] = {of: [] for of in wanted}
    if moment is None or not found:
        return found
    query = (
        select(Entry.project, _THREAD, _PASS, _WHY, Entry.at, Entry.by)
        .where(Entry.stitcher == stitcher, LIVE_STITCHES, Entry.at > moment, _THREAD.is_not(None))
        .order_by(Entry.at)
    )
    for project, key, pass_, why, at, by in db.session.execute(query):
        if (project, key) in found and _spends(why):
            found[project, key].append(Spent(at, pass_ or "cross", by))
    return found


def _spends(why: Any) -> bool:
    return why in (None, "stitched")
