"""An evening of Alice's as reminders see it: her choices, her phones, her work on a frame."""

from dataclasses import dataclass, replace
from datetime import UTC, datetime
from uuid import UUID

from sqlalchemy import select

from tests.reminders.service import Browser, PushService
from webapp.accounts.models import Account, SignedIn
from webapp.config import Config
from webapp.db import db, writing
from webapp.ids import new_id
from webapp.reminders import phones, rounds
from webapp.reminders.endpoints import Where
from webapp.reminders.models import PushPhone, ReminderChoice, Told
from webapp.reminders.vapid import make_key, public_key

BEDTIME = datetime(2026, 2, 13, 22, 30, tzinfo=UTC)


@dataclass
class Evening:
    """Within the application's context, with a push service on loopback that the operator vouches for."""

    config: Config
    service: PushService
    stitcher: UUID
    session: UUID

    @classmethod
    def begin(cls, config: Config, service: PushService) -> "Evening":
        make_key(config.data)
        signed_in = db.session.scalars(select(SignedIn).order_by(SignedIn.created)).first()
        evening = cls(
            replace(config, push_services=(service.origin,)), service, signed_in.stitcher, signed_in.id
        )
        evening.choose()
        return evening

    def choose(self, **values: object) -> None:
        with writing():
            choice = db.session.get(ReminderChoice, self.stitcher) or ReminderChoice(stitcher=self.stitcher)
            for name, value in values.items():
                setattr(choice, name, value)
            db.session.add(choice)
            db.session.commit()

    def settle(self, **values: object) -> None:
        with writing():
            account = db.session.get_one(Account, self.stitcher)
            for name, value in values.items():
                setattr(account, name, value)
            db.session.commit()

    def subscribe(self) -> Browser:
        browser = self.service.subscribe()
        key = public_key(self.config.data)
        house = phones.House(Where.of([self.service.origin]), key, "https://stitch.example", BEDTIME)
        another = self.another_session()
        with writing():
            session = db.session.get_one(SignedIn, (self.stitcher, another))
            phones.take(session, browser.subscription(key), house)
            db.session.commit()
        return browser

    def round(self, now: datetime = BEDTIME) -> int:
        return rounds.run(self.config, lambda: now)

    def told(self) -> list[tuple[str, str]]:
        """List what the ledger has, by night: kind and state."""
        db.session.rollback()
        rows = db.session.scalars(select(Told).order_by(Told.night, Told.kind))
        return [(one.kind, one.state) for one in rows]

    def trouble(self) -> str | None:
        db.session.rollback()
        return db.session.get_one(ReminderChoice, self.stitcher).trouble

    def phones(self) -> int:
        db.session.rollback()
        return len(db.session.scalars(select(PushPhone.id)).all())

    def another_session(self) -> UUID:
        """Sign her in on another device."""
        with writing():
            one = db.session.get_one(SignedIn, (self.stitcher, self.session))
            names = ("stitcher", "device", "offset_ms", "created", "seen", "expires")
            same = {name: getattr(one, name) for name in names}
            other = SignedIn(id=new_id(), token_hash=new_id().hex, **same)
            db.session.add(other)
            db.session.commit()
            return other.id


def titles(browser: Browser) -> list[str]:
    """List the titles of what came to one phone."""
    return [came["said"]["title"] for came in browser.came]
