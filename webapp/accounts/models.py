"""Accounts, their sessions, and the house they are in."""

from datetime import datetime, time
from uuid import UUID

from sqlalchemy import ForeignKey, String, UniqueConstraint
from sqlalchemy.orm import Mapped, mapped_column

from webapp.db import Base


class House(Base):
    """One installation; a restore renews ``id``, so that phones notice."""

    __tablename__ = "house"

    one: Mapped[int] = mapped_column(primary_key=True, default=1)
    id: Mapped[UUID]
    owner: Mapped[UUID | None] = mapped_column(ForeignKey("account.id"))


class Account(Base):
    """A stitcher. Unclaimed while she has neither name nor passphrase."""

    __tablename__ = "account"
    __table_args__ = (UniqueConstraint("name_key"),)

    id: Mapped[UUID] = mapped_column(primary_key=True)
    name: Mapped[str | None] = mapped_column(String(60))
    name_key: Mapped[str | None] = mapped_column(String(200))
    passphrase_hash: Mapped[str | None] = mapped_column(String(200))
    zone: Mapped[str] = mapped_column(String(64))
    unit: Mapped[str] = mapped_column(String(2), default="in")
    week_start: Mapped[int] = mapped_column(default=0)
    bedtime: Mapped[time] = mapped_column(default=time(22, 30))
    hand: Mapped[str] = mapped_column(String(5), default="right")
    created: Mapped[datetime]
    given_to: Mapped[UUID | None] = mapped_column(ForeignKey("account.id"))  # whose its work became

    @property
    def claimed(self) -> bool:
        """Tell whether she has given a name and passphrase."""
        return self.name is not None


class SignedIn(Base):
    """One signed-in browser: the hash of its token, and how far its clock is off."""

    __tablename__ = "signed_in"
    __table_args__ = (UniqueConstraint("token_hash"),)

    stitcher: Mapped[UUID] = mapped_column(ForeignKey("account.id"), primary_key=True)
    id: Mapped[UUID] = mapped_column(primary_key=True)
    token_hash: Mapped[str] = mapped_column(String(64))
    device: Mapped[str] = mapped_column(String(80))
    offset_ms: Mapped[int] = mapped_column(default=0)
    created: Mapped[datetime]
    seen: Mapped[datetime]
    expires: Mapped[datetime]


class Invitation(Base):
    """A place kept for one more stitcher, by the hash of its token."""

    __tablename__ = "invitation"
    __table_args__ = (UniqueConstraint("token_hash"),)

    stitcher: Mapped[UUID] = mapped_column(ForeignKey("account.id"), primary_key=True)
    id: Mapped[UUID] = mapped_column(primary_key=True)
    token_hash: Mapped[str] = mapped_column(String(64))
    created: Mapped[datetime]
    used: Mapped[datetime | None]
