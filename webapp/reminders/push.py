"""Send one push: encrypted for the phone alone (RFC 8291), signed by the house (RFC 8292)."""

import json
from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime, timedelta
from email.utils import parsedate_to_datetime
from pathlib import Path
from typing import Any

import requests
from py_vapid import VapidException
from pywebpush import WebPushException
from pywebpush import webpush as send_one

from webapp.reminders.endpoints import Where, origin_of
from webapp.reminders.outward import PATIENCE, Outward

HOURS_SIGNED = timedelta(hours=12)  # a service takes no signature for more than 24 (RFC 8292, section 2)
LONGEST_ASKED = timedelta(hours=1)  # to wait, by a service


@dataclass(frozen=True)
class Phone:
    """Where a push goes, and for whom it is encrypted."""

    endpoint: str
    p256dh: str
    auth: str


@dataclass(frozen=True)
class Push:
    """What is sent: a later one of the same topic takes the place of one that was not delivered yet."""

    payload: dict[str, Any]
    topic: str
    until: datetime


@dataclass(frozen=True)
class Outcome:
    """What came of it: taken, gone (nobody is there any more), too large, refused, or later."""

    what: str
    after: timedelta = timedelta()
    status: int | None = None


@dataclass(frozen=True)
class House:
    """Who sends: whose key signs, whom a service may ask (RFC 8292, section 2.1), and who may be sent to."""

    key: Path
    contact: str
    where: Where
    session: Callable[[Where], requests.Session] = Outward


def send(phone: Phone, push: Push, house: House, now: datetime) -> Outcome:
    """Send once. Nothing is raised: a service that fails is an outcome too."""
    keys = {"p256dh": phone.p256dh, "auth": phone.auth}
    lasts = int((push.until - now).total_seconds())
    if lasts <= 0:
        return Outcome("refused")
    claims: dict[str, Any] = {"sub": house.contact, "aud": origin_of(phone.endpoint)}
    try:
        answer: Any = send_one(
            {"endpoint": phone.endpoint, "keys": keys},
            json.dumps(push.payload, ensure_ascii=False, separators=(",", ":")),
            vapid_private_key=str(house.key),
            vapid_claims={**claims, "exp": int((now + HOURS_SIGNED).timestamp())},
            ttl=lasts,
            timeout=PATIENCE,
            headers={"topic": push.topic, "urgency": "high"},
            requests_session=house.session(house.where),
        )
    except WebPushException as error:
        return understand(error.status_code, error.retry_after, now)
    except requests.RequestException:
        return Outcome("later")
    except (VapidException, ValueError, LookupError, OSError):
        return Outcome("refused")
    return understand(answer.status_code, None, now)


def understand(status: int | None, after: str | None, now: datetime) -> Outcome:
    """Tell what a service's answer means (RFC 8030, sections 5 and 7.3)."""
    if status is None:
        return Outcome("refused")
    if 200 <= status < 300:
        return Outcome("taken", status=status)
    if status in (404, 410):
        return Outcome("gone", status=status)
    if status == 413:
        return Outcome("too large", status=status)
    if status == 429 or status >= 500:
        return Outcome("later", asked_to_wait(after, now), status)
    return Outcome("refused", status=status)


def asked_to_wait(text: str | None, now: datetime) -> timedelta:
    """Read Retry-After: seconds or a date (RFC 9110, section 10.2.3); nothing where it says neither."""
    text = (text or "").strip()
    if text.isascii() and text.isdigit():
        return min(LONGEST_ASKED, timedelta(seconds=int(text[:6])))
    try:
        wait = parsedate_to_datetime(text) - now
    except (ValueError, TypeError):
        return timedelta()
    return min(LONGEST_ASKED, max(timedelta(), wait))
