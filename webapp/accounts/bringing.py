"""Bring what was begun without a name into an account that has one, entry by entry."""

from uuid import UUID

from sqlalchemy import Table, Update, delete, exists, literal, select, update
from sqlalchemy.exc import IntegrityError

from webapp.accounts.models import Account
from webapp.cloth.models import KeptCloth
from webapp.db import Base, db
from webapp.projects.models import Project
from webapp.threads.models import KeptThread

STAYS = {"signed_in", "invitation"}  # what belongs to a browser or to the house's owner, not to the work
HERS_STANDS = {"reminder_choice", "told"}  # one a stitcher, or a night: what the account has is not touched


class AlreadyThere(Exception):
    """Something of the work has the id of something the account has."""


def has_work(account: UUID) -> bool:
    """Tell whether anything was begun."""
    return any(
        db.session.scalar(select(table.id).where(table.stitcher == account).limit(1)) is not None
        for table in (Project, KeptCloth, KeptThread)
    )


def bring(begun: UUID, account: UUID) -> None:
    """Make every row of ``begun`` a row of ``account``, within a transaction that may write.

    Rows are copied under the new key before the old ones go, since they name each other. Ids are unique by
    stitcher, so nothing can be overwritten: where one is there already, nothing is brought at all.
    """
    tables = _tables()
    try:
        for table in tables:
            db.session.execute(
                _move(table, begun, account) if table.name in HERS_STANDS else _copy(table, begun, account)
            )
    except IntegrityError as error:
        db.session.rollback()
        raise AlreadyThere from error
    for table in reversed(tables):
        db.session.execute(delete(table).where(table.c.stitcher == begun))


def part_with(begun: Account, account: UUID) -> None:
    """Shut an account whose work is another's now; it stays as a name for what a phone still holds for it."""
    begun.given_to = account


def is_hers(said: object, account: UUID) -> bool:
    """Tell whether entries ``said`` to be of an account are ``account``'s.

    They are also hers if that account had no name and was brought along before all that waited was sent.
    """
    if said in (None, str(account)):
        return True
    try:
        former = db.session.get(Account, UUID(str(said)))
    except ValueError:
        return False
    return former is not None and former.given_to == account


def _tables() -> list[Table]:
    """List the tables keyed by stitcher, those that others name first."""
    return [t for t in Base.metadata.sorted_tables if "stitcher" in t.c and t.name not in STAYS]


def _move(table: Table, begun: UUID, account: UUID) -> Update:
    """Give rows that no other names to the account, except where it has its own; those go with the rest."""
    own = table.alias()
    same = [own.c[c.name] == c for c in table.primary_key if c.name != "stitcher"]
    is_there = exists().where(own.c.stitcher == account, *same)
    return update(table).where(table.c.stitcher == begun, ~is_there).values(stitcher=account)


def _copy(table: Table, begun: UUID, account: UUID):  # type: ignore[no-untyped-def]
    columns = [literal(account, c.type).label(c.name) if c.name == "stitcher" else c for c in table.c]
    rows = select(*columns).where(table.c.stitcher == begun)
    return table.insert().from_select([c.name for c in table.c], rows)
