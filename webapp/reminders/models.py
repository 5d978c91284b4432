"""What she chose of reminders, the phones they go to, and the ledger of what was sent."""

from datetime import date, datetime
from uuid import UUID

from sqlalchemy import JSON, ForeignKey, Index, String, UniqueConstraint, text
from sqlalchemy.orm import Mapped, mapped_column

from webapp.db import Base

WAITING = text("state = 'waiting'")  # word for word in index and query


class ReminderChoice(Base):
    """What one stitcher chose; who never chose has no row, and is reminded by the pages alone."""

    __tablename__ = "reminder_choice"
    __table_args__ = (UniqueConstraint("feed"),)

    stitcher: Mapped[UUID] = mapped_column(ForeignKey("account.id"), primary_key=True)
    at_bedtime: Mapped[bool] = mapped_column(default=True)
    hours: Mapped[int | None]  # so many on the frame without a break; none: not counted
    left: Mapped[date | None]  # the night of which she said "leave it tonight"
    answered: Mapped[datetime | None]  # when she last said "leave it tonight" or "in half an hour"
    away: Mapped[date | None]  # away until then
    show_title: Mapped[bool] = mapped_column(default=False)  # on a lock screen others read too
    email: Mapped[str | None] = mapped_column(String(254))  # confirmed
    email_asked: Mapped[str | None] = mapped_column(String(254))  # not confirmed yet
    email_token: Mapped[str | None] = mapped_column(String(64))  # the hash of what confirms it
    email_failures: Mapped[int] = mapped_column(default=0)  # nights in a row
    feed: Mapped[str | None] = mapped_column(String(64))  # the hash of her calendar's secret
    origin: Mapped[str] = mapped_column(String(200), default="")  # of the page she chose on: where links lead
    tested: Mapped[datetime | None]  # when something was last sent for a trial
    trouble: Mapped[str | None] = mapped_column(String(120))  # which way failed her, until she has seen it


class PushPhone(Base):
    """One browser that takes reminders, as long as the session it asked in."""

    __tablename__ = "push_phone"
    __table_args__ = (Index("push_phone_by_endpoint", "endpoint_hash"),)

    stitcher: Mapped[UUID] = mapped_column(ForeignKey("account.id"), primary_key=True)
    id: Mapped[UUID] = mapped_column(primary_key=True)
    session: Mapped[UUID]
    endpoint: Mapped[str] = mapped_column(String(1000))
    endpoint_hash: Mapped[str] = mapped_column(String(64))
    p256dh: Mapped[str] = mapped_column(String(100))
    auth: Mapped[str] = mapped_column(String(30))
    key: Mapped[str] = mapped_column(String(100))  # of ours, which it was told to expect
    origin: Mapped[str] = mapped_column(String(200))
    device: Mapped[str] = mapped_column(String(80))
    created: Mapped[datetime]
    reached: Mapped[datetime | None]
    failures: Mapped[int] = mapped_column(default=0)  # in a row


class Told(Base):
    """One reminder of one night: waiting, sent, or missed."""

    __tablename__ = "told"
    __table_args__ = (Index("told_waiting", "next_try", sqlite_where=WAITING, postgresql_where=WAITING),)

    stitcher: Mapped[UUID] = mapped_column(ForeignKey("account.id"), primary_key=True)
    night: Mapped[date] = mapped_column(primary_key=True)
    kind: Mapped[str] = mapped_column(String(8), primary_key=True)
    state: Mapped[str] = mapped_column(String(8), default="waiting")
    due: Mapped[datetime]
    until: Mapped[datetime]  # given up then
    next_try: Mapped[datetime]
    lease: Mapped[datetime | None]  # whoever has it has it until then
    tries: Mapped[int] = mapped_column(default=0)
    reached: Mapped[list[str]] = mapped_column(JSON, default=list)  # phones by id, "email"
