"""The ledger: one row a stitcher, night and kind, so that any number of processes say a thing once.

A row is put down when its time has come, claimed in one statement, and settled when it was said. Who claims
it has it for the length of a lease; whoever dies with it leaves it to the next. The caller commits.
"""

from collections.abc import Iterable
from datetime import date, datetime, timedelta
from typing import Any, NamedTuple
from uuid import UUID

from sqlalchemy import Select, delete, or_, select, tuple_, update
from sqlalchemy.dialects import postgresql, sqlite

from webapp.db import db
from webapp.reminders.models import WAITING, Told

LEASE = timedelta(minutes=2)
FIRST_WAIT, LONGEST_WAIT = timedelta(seconds=30), timedelta(minutes=15)
MOST_AT_ONCE = 20

_told: Any = Told.__table__
_key = tuple_(_told.c.stitcher, _told.c.night, _told.c.kind)


class Key(NamedTuple):
    """Which row."""

    stitcher: UUID
    night: date
    kind: str


class Claim(NamedTuple):
    """A row that is ours until its lease is over."""

    key: Key
    until: datetime
    lease: datetime
    tries: int
    reached: list[str]


def put_down(rows: Iterable[tuple[Key, datetime, datetime]]) -> None:
    """Put down what has come due, (key, due, until); what stands there already stays as it is."""
    values = [
        {
            **key._asdict(),
            "state": "waiting",
            "due": due,
            "until": until,
            "next_try": due,
            "tries": 0,
            "reached": [],
        }
        for key, due, until in rows
    ]
    if values:
        insert = (postgresql if db.engine.dialect.name == "postgresql" else sqlite).insert
        db.session.execute(insert(_told).values(values).on_conflict_do_nothing())


def claim(now: datetime, most: int = MOST_AT_ONCE) -> list[Claim]:
    """Take what waits and is nobody's, in one statement: of two who ask at once only one is given a row."""
    free = _free(now).order_by(_told.c.next_try).limit(most).with_for_update(skip_locked=True)
    taken = (
        update(_told)
        .where(_key.in_(free))
        .values(lease=now + LEASE, tries=_told.c.tries + 1)
        .returning(*_told.c)
    )
    rows = db.session.execute(taken).all()
    return [Claim(Key(r.stitcher, r.night, r.kind), r.until, r.lease, r.tries, list(r.reached)) for r in rows]


def is_any_free(now: datetime) -> bool:
    """Tell, without the writer's turn, whether there is anything to claim: mostly there is not."""
    return db.session.execute(_free(now).limit(1)).first() is not None


def note(one: Claim, reached: list[str]) -> bool:
    """Note which ways have it by now; tells whether the row is still ours."""
    return _change(one, reached=reached)


def settle(one: Claim, state: str) -> bool:
    """Close a row: sent or missed; tells whether it was still ours."""
    return _change(one, state=state, lease=None)


def take_back(one: Claim) -> bool:
    """Take a row out again of which nothing was said: it may come due anew; tells whether it was ours."""
    changed: Any = db.session.execute(delete(_told).where(*_ours(one)))
    return bool(changed.rowcount)


def wait(one: Claim, now: datetime, at_least: timedelta = timedelta()) -> bool:
    """Let a row be tried again, later each time, unless that would be too late; tells whether it will be."""
    later = now + max(at_least, min(LONGEST_WAIT, FIRST_WAIT * 2 ** min(one.tries - 1, 10)))
    if later >= one.until:
        return False
    return _change(one, next_try=later, lease=None)


def say_again(key: Key, at: datetime, until: datetime) -> None:
    """Open a row anew, for her who asks to hear it again."""
    row = db.session.get(Told, tuple(key))
    if row is None:
        row = Told(**key._asdict())
        db.session.add(row)
    row.state, row.due, row.until, row.next_try = "waiting", at, until, at
    row.lease, row.tries, row.reached = None, 0, []


def settled(nights: Iterable[date]) -> set[Key]:
    """List the rows there are of some nights, waiting or not."""
    rows = db.session.execute(
        select(Told.stitcher, Told.night, Told.kind).where(Told.night.in_(list(nights)))
    )
    return {Key(*row) for row in rows}


def _free(now: datetime) -> Select[Any]:
    """Ask for what waits, has come due, and is nobody's."""
    nobodys = or_(_told.c.lease.is_(None), _told.c.lease <= now)
    columns = (_told.c.stitcher, _told.c.night, _told.c.kind)
    return select(*columns).where(WAITING, _told.c.next_try <= now, nobodys)


def _change(one: Claim, **values: Any) -> bool:
    changed: Any = db.session.execute(update(_told).where(*_ours(one)).values(**values))
    return bool(changed.rowcount)


def _ours(one: Claim) -> tuple[Any, ...]:
    return _key == tuple_(*one.key), WAITING, _told.c.lease == one.lease
