"""Times put right: each time by one more entry, with nothing rewritten.

A form has an id of its own, and the id of its entry follows from that and from what it says: sent twice it
counts once, and gone back to, changed and sent again it counts anew.
"""

from datetime import datetime, timedelta
from typing import Any
from uuid import UUID, uuid5
from zoneinfo import ZoneInfo

from sqlalchemy import select, tuple_

from webapp import clock
from webapp.db import db
from webapp.forms import Errors
from webapp.hours import records
from webapp.hours.amends import latest_change, moved_to
from webapp.hours.wall import NoSuchTime, meant, shown, wrong_with
from webapp.journal import moments
from webapp.journal.batch import write_down
from webapp.journal.models import Sitting

TICK = timedelta(milliseconds=1)
Times = tuple[datetime, datetime]


def times_of(
    given: dict[str, Any], zone: ZoneInfo, now: datetime, before: Sitting | None = None
) -> tuple[Times | None, Errors]:
    """Take what was typed to moments, or say what is wrong beside its field.

    A time that is left as it was shown keeps its seconds, and its place in an hour that came twice.
    """
    name = "begin"
    try:
        begin = _moment(given["begin"], zone, before.begin if before else None)
        name = "end"
        end = _moment(given["end"], zone, before.end if before else None, begin)
    except NoSuchTime as error:
        return None, {name: [str(error)]}
    wrong = wrong_with(begin, end, now)
    return (None if wrong else (begin, end)), {field: [sentence] for field, sentence in wrong.items()}


def _moment(wall: datetime, zone: ZoneInfo, was: datetime | None, after: datetime | None = None) -> datetime:
    if was is not None and shown(was, zone) == wall and (after is None or was > after):
        return was
    return meant(wall, zone, after)


def move(stitcher: UUID, before: Sitting, project: UUID, times: Times, once: UUID) -> None:
    """Move a sitting to another project: added here, struck out there; the caller commits.

    What that project cannot take is refused before anything is struck.
    """
    set_times(stitcher, project, moved_to(before.id, project), times, once)
    strike(stitcher, before.project, before.id, once)


def set_times(stitcher: UUID, project: UUID, sitting: UUID, times: Times, once: UUID) -> None:
    """Set a sitting's times, or add it; the caller commits."""
    begin, end = (moments.write(moment) for moment in times)
    entry_id = _entry_id(once, f"{sitting} {begin} {end}")
    _amend(stitcher, project, sitting, entry_id, {"begin": begin, "end": end})


def strike(stitcher: UUID, project: UUID, sitting: UUID, once: UUID) -> None:
    """Strike a sitting out; the caller commits."""
    _amend(stitcher, project, sitting, _entry_id(once, f"{sitting} struck"), {"struck": True})


def put_back(stitcher: UUID, project: UUID, sitting: UUID, once: UUID) -> None:
    """Undo what put a sitting right last, so that it is as it was before; the caller commits.

    Where that moved it to another project, what it became there goes.
    """
    struck = db.session.get_one(Sitting, (stitcher, project, sitting)).struck
    _undo(stitcher, project, sitting, once)
    if struck:
        for other, became in became_of(stitcher, sitting):
            _undo(stitcher, other, became, once)


def became_of(stitcher: UUID, sitting: UUID) -> list[tuple[UUID, UUID]]:
    """List as what, and of which project, a sitting counts that was moved there."""
    named = {project: moved_to(sitting, project) for project in records.titles(stitcher)}
    query = select(Sitting.project, Sitting.id).where(
        Sitting.stitcher == stitcher, tuple_(Sitting.project, Sitting.id).in_(named.items()), ~Sitting.struck
    )
    rows = db.session.execute(query.where(Sitting.begin.is_not(None)))
    return [(project, became) for project, became in rows]


def _undo(stitcher: UUID, project: UUID, sitting: UUID, once: UUID) -> None:
    changed = latest_change(records.named(stitcher, project, sitting))
    # Sent twice, the form finds another change to be the latest; by its own number it is the same undo.
    undos = [
        {"id": _entry_id(once, f"undo {n} {sitting}"), "kind": "undo", "entry": id}
        for n, id in enumerate(changed)
    ]
    write_down(stitcher, project, undos)


def _amend(stitcher: UUID, project: UUID, sitting: UUID, entry_id: str, says: dict[str, Any]) -> None:
    about = {"sitting": str(sitting), "at": _after_all_of_it(stitcher, project, sitting)}
    write_down(stitcher, project, [{"id": entry_id, "kind": "amend", **about, **says}])


def _after_all_of_it(stitcher: UUID, project: UUID, sitting: UUID) -> str:
    """Give the time to write it down at: now, or after what a clock that is fast said of this sitting."""
    named = records.entries(stitcher, project, sitting)
    latest = max((entry.at for entry in named), default=moments.EARLIEST)
    return moments.write(max(clock.now(), min(latest, moments.LATEST - TICK) + TICK))


def _entry_id(once: UUID, says: str) -> str:
    return str(uuid5(once, says))
