"""Her sessions: on which devices she is signed in."""

from dataclasses import dataclass
from uuid import UUID
from zoneinfo import ZoneInfo

from sqlalchemy import delete, select

from webapp import clock
from webapp.accounts.devices import last_seen
from webapp.accounts.guard import current_session
from webapp.accounts.models import SignedIn
from webapp.db import db


@dataclass(frozen=True)
class Device:
    """One signed-in browser, as she is shown it."""

    id: UUID
    name: str
    seen: str
    here: bool


def devices(account: UUID, zone: str) -> list[Device]:
    """List where she is signed in, this browser first, then the latest seen."""
    here = current_session()
    query = select(SignedIn).where(SignedIn.stitcher == account, SignedIn.expires > clock.now())
    found = [
        Device(one.id, one.device, last_seen(one.seen, clock.now(), ZoneInfo(zone)), one is here)
        for one in db.session.scalars(query.order_by(SignedIn.seen.desc()))
    ]
    return sorted(found, key=lambda device: not device.here)


def end(account: UUID, session: UUID) -> bool:
    """End one session of hers that is not this browser's; tells whether there was one."""
    here = current_session()
    found = db.session.get(SignedIn, (account, session))
    if found is None or found is here:
        return False
    db.session.delete(found)
    return True


def end_others(account: UUID) -> None:
    """End every session of hers but this browser's."""
    here = current_session()
    kept = here.id if here is not None else None
    db.session.execute(delete(SignedIn).where(SignedIn.stitcher == account, SignedIn.id != kept))
