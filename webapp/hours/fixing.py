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
from webapp.hours.amends import before_change, latest_change, moved_to
from webapp.hours.wall import NoSuchTime, meant, shown, wrong_with
from webapp.journal import moments
from webapp.journal.batch import write_down
from webapp.journal.models import Entry, Sitting

TICK = timedelta(milliseconds=1)
Times = tuple[datetime, datetime]


class Stale(ValueError):
    """The sitting that a form shows does not count any more; the message is a sentence that says why."""


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
    became = moved_to(before.id, project)
    entry_id, says = _to_these(became, times, once)
    if not _is_taken(stitcher, entry_id, before):
        _amend(stitcher, project, became, entry_id, says)
        strike(stitcher, before.project, before.id, once)


def set_times(stitcher: UUID, project: UUID, sitting: UUID, times: Times, once: UUID) -> None:
    """Set a sitting's times, or add it; times that it has already write nothing. The caller commits."""
    before = db.session.get(Sitting, (stitcher, project, sitting))
    entry_id, says = _to_these(sitting, times, once)
    if before is not None and times == (before.begin, before.end):
        return
    if not _is_taken(stitcher, entry_id, before):
        _amend(stitcher, project, sitting, entry_id, says)


def strike(stitcher: UUID, project: UUID, sitting: UUID, once: UUID) -> None:
    """Strike a sitting out; the caller commits."""
    entry_id = _entry_id(once, f"{sitting} struck")
    if not _is_taken(stitcher, entry_id, db.session.get_one(Sitting, (stitcher, project, sitting))):
        _amend(stitcher, project, sitting, entry_id, {"struck": True})


def put_back(stitcher: UUID, project: UUID, sitting: UUID, once: UUID) -> None:
    """Undo what put a sitting right last, so that it is as it was before; the caller commits.

    Where that moved it to another project, what it became there goes, and what that became in turn.
    """
    before = db.session.get_one(Sitting, (stitcher, project, sitting))
    named = records.named(stitcher, project, sitting)
    if before.struck:
        _undo(stitcher, project, sitting, latest_change(named), once)
        for way in ways_of(stitcher, sitting):
            _undo_all(stitcher, way[-1], once)
    elif before.begin is None:
        raise Stale(_why(before))
    elif before_change(named) is not None:
        # Sent twice, the form finds another change to be the latest; by its own number it is the same undo.
        _undo(stitcher, project, sitting, latest_change(named), once)


def _is_taken(stitcher: UUID, entry_id: str, before: Sitting | None) -> bool:
    """Tell whether the form was taken already; raise Stale if it was not, and its sitting does not count."""
    if db.session.get(Entry, (stitcher, UUID(entry_id))) is not None:
        return True
    if before is not None and before.begin is None:
        raise Stale(_why(before))
    return False


def _why(before: Sitting) -> str:
    if not before.struck:
        return "This sitting is not there any more: it was taken back, or put back where it came from."
    where = went_to(before.stitcher, before.id)
    if where:
        title = records.titles(before.stitcher)[where[-1]]
        return f"This sitting was moved to {title} meanwhile. Change it there, or put this one back first."
    return "This sitting was struck out meanwhile. Put it back first."


def went_to(stitcher: UUID, sitting: UUID) -> list[UUID]:
    """List the projects that a sitting was moved to, one after the other, if it still counts at the last."""
    ways = ways_of(stitcher, sitting)
    return next(([one.project for one in way] for way in ways if way[-1].begin is not None), [])


def ways_of(stitcher: UUID, sitting: UUID) -> list[list[Sitting]]:
    """List what a sitting became by moves, and what that became in turn, each with all that lie between."""
    projects = list(records.titles(stitcher))
    ways: list[list[Sitting]] = []
    todo: list[list[Sitting]] = [[]]
    for way in todo:
        id = way[-1].id if way else sitting
        named = [(project, moved_to(id, project)) for project in projects]
        query = select(Sitting).where(
            Sitting.stitcher == stitcher, tuple_(Sitting.project, Sitting.id).in_(named)
        )
        further = [[*way, became] for became in db.session.scalars(query)]
        todo += further
        ways += further
    return ways


def _undo_all(stitcher: UUID, one: Sitting, once: UUID) -> None:
    named = records.named(stitcher, one.project, one.id)
    amends = [entry["id"] for entry, dead in named if entry["kind"] == "amend" and not dead]
    _undo(stitcher, one.project, one.id, amends, once)


def _undo(stitcher: UUID, project: UUID, sitting: UUID, changed: list[str], once: UUID) -> None:
    undos = [
        {"id": _entry_id(once, f"undo {n} {sitting}"), "kind": "undo", "entry": id}
        for n, id in enumerate(changed)
    ]
    write_down(stitcher, project, undos)


def _to_these(sitting: UUID, times: Times, once: UUID) -> tuple[str, dict[str, str]]:
    begin, end = (moments.write(moment) for moment in times)
    return _entry_id(once, f"{sitting} {begin} {end}"), {"begin": begin, "end": end}


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
