"""The phones that take her reminders: each asked for itself, and only as long as she is signed in on it."""

import hashlib
import re
from dataclasses import dataclass
from datetime import datetime
from urllib.parse import urlsplit
from uuid import UUID

from cryptography.hazmat.primitives.asymmetric import ec
from sqlalchemy import ColumnElement, delete, exists, select

from webapp.accounts.models import SignedIn
from webapp.db import db
from webapp.ids import new_id
from webapp.reminders import push
from webapp.reminders.base64url import read
from webapp.reminders.endpoints import Where, fault
from webapp.reminders.models import PushPhone

MOST = 10
TOO_MANY = f"{MOST} phones take your reminders already. Turn one of them off first."
NO_KEYS = "This browser gave no keys to write to it with. Turn reminders on again."
OLD_KEY = "The house has another key by now. Open the page again and turn reminders on."
NOBODY = "mailto:evenrow@localhost"


class CannotTake(ValueError):
    """A phone cannot be taken; the message says why and what to do."""


@dataclass(frozen=True)
class House:
    """Who takes phones in: whom they may name, for which key of ours, at which origin, when."""

    where: Where
    key: str | None
    origin: str
    now: datetime


def take(session: SignedIn, asked: dict[str, object], house: House) -> PushPhone:
    """Let the browser of this session take reminders, once however often it asks; raise CannotTake.

    ``asked`` is a subscription as browsers write it, with the key of ours it was made for.
    """
    endpoint, p256dh, auth = _read(asked, house.where)
    if house.key is None or asked.get("key") != house.key:
        raise CannotTake(OLD_KEY)
    named, mine = _named(endpoint), PushPhone.stitcher == session.stitcher
    same = PushPhone.endpoint_hash == named
    db.session.execute(delete(PushPhone).where(same, ~mine))  # a browser is one stitcher's at a time,
    here = PushPhone.session == session.id
    db.session.execute(delete(PushPhone).where(mine, here, ~same))  # and has one address at a time
    phone = db.session.scalar(select(PushPhone).where(mine, same))
    if phone is None:
        if _many(mine) >= MOST:
            db.session.execute(delete(PushPhone).where(mine, ~is_signed_in(house.now)))
        if _many(mine) >= MOST:
            raise CannotTake(TOO_MANY)
        phone = PushPhone(stitcher=session.stitcher, id=new_id(), endpoint_hash=named, created=house.now)
        db.session.add(phone)
    phone.session, phone.device, phone.origin, phone.failures = session.id, session.device, house.origin, 0
    phone.endpoint, phone.p256dh, phone.auth, phone.key = endpoint, p256dh, auth, house.key
    return phone


def was_on(stitcher: UUID, endpoint: object) -> bool:
    """Tell whether a browser took her reminders, and still does but that she signed out of it."""
    if not isinstance(endpoint, str):
        return False
    hers = (PushPhone.stitcher == stitcher, PushPhone.endpoint_hash == _named(endpoint))
    return db.session.scalar(select(PushPhone.id).where(*hers)) is not None


def phones_of(stitcher: UUID, now: datetime) -> list[PushPhone]:
    """List the phones she is signed in on and that take reminders, those that fail last."""
    query = select(PushPhone).where(PushPhone.stitcher == stitcher, is_signed_in(now))
    return list(db.session.scalars(query.order_by(PushPhone.failures, PushPhone.created)))


def as_sent(phone: PushPhone) -> push.Phone:
    """Give what a sending needs of it."""
    return push.Phone(phone.endpoint, phone.p256dh, phone.auth)


def contact(origin: str) -> str:
    """Give whom a push service may turn to: the house's own address, if it has one to the world."""
    try:
        parts = urlsplit(origin)
        host = parts.hostname or ""
    except ValueError:
        return NOBODY
    is_named = parts.scheme == "https" and re.fullmatch(r"[\w-]+(\.[\w-]+)*\.[a-z][\w-]*", host)
    return f"https://{host}" if is_named else NOBODY


def _named(endpoint: str) -> str:
    return hashlib.sha256(endpoint.encode(errors="surrogatepass")).hexdigest()


def _many(mine: ColumnElement[bool]) -> int:
    return len(db.session.scalars(select(PushPhone.id).where(mine)).all())


def is_signed_in(now: datetime) -> ColumnElement[bool]:
    """Ask, within a statement about phones, whether she is signed in there."""
    hers = (SignedIn.stitcher == PushPhone.stitcher, SignedIn.id == PushPhone.session)
    return exists().where(*hers, SignedIn.expires > now)


def _read(asked: dict[str, object], where: Where) -> tuple[str, str, str]:
    endpoint, keys = asked.get("endpoint"), asked.get("keys")
    if not isinstance(endpoint, str) or not isinstance(keys, dict):
        raise CannotTake(NO_KEYS)
    if said := fault(endpoint, where):
        raise CannotTake(said)
    p256dh, auth = keys.get("p256dh"), keys.get("auth")
    if not isinstance(p256dh, str) or not isinstance(auth, str) or not _are_keys(p256dh, auth):
        raise CannotTake(NO_KEYS)
    return endpoint, p256dh.rstrip("="), auth.rstrip("=")


def _are_keys(p256dh: str, auth: str) -> bool:
    """Tell whether they are a point on the curve, uncompressed, and sixteen bytes (RFC 8291, section 3.1)."""
    try:
        point = read(p256dh)
        ec.EllipticCurvePublicKey.from_encoded_point(ec.SECP256R1(), point)
        return len(point) == 65 and len(read(auth)) == 16
    except ValueError:
        return False
