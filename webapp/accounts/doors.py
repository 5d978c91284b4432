"""Who may come in: the house's owner, its setting for signing up, invitations."""

from uuid import UUID, uuid4

from sqlalchemy import select

from webapp import clock
from webapp.accounts import names
from webapp.accounts.models import Account, House, Invitation
from webapp.accounts.tokens import hash_token, new_token
from webapp.config import SignUp
from webapp.db import db
from webapp.house import house
from webapp.ids import new_id


class NameTaken(Exception):
    """Somebody of this house has that name."""


class DoorShut(Exception):
    """The house takes nobody in who asks like that."""


def may_sign_up(setting: SignUp, owned: bool, invited: bool, begun: bool) -> bool:
    """Decide whether one more may have a name here.

    A house without an owner takes its first. An account begun while the house was open is of this house
    already, and giving it a name adds nobody: that is allowed whatever the setting has become, or her work
    would be lost with her phone.
    """
    return not owned or begun or setting == "open" or (setting == "invite" and invited)


def is_owned() -> bool:
    """Tell whether the house has its owner."""
    return house().owner is not None


def begin_unclaimed(zone: str) -> Account:
    """Add an account without a name."""
    account = Account(id=uuid4(), zone=zone, created=clock.now())
    db.session.add(account)
    db.session.flush()
    return account


def claim(
    setting: SignUp, begun: Account | None, *, name: str, passphrase_hash: str, zone: str, invitation: str
) -> Account:
    """Give the account ``begun``, or a new one, its name; within a transaction that may write.

    The house's row is locked first, so that two who sign up at once take turns: one owner, one of a name.
    """
    home = db.session.get_one(House, 1, with_for_update=True, populate_existing=True)
    place = find_invitation(invitation)
    if not may_sign_up(setting, home.owner is not None, place is not None, begun is not None):
        raise DoorShut
    if find_by_name(name) is not None:
        raise NameTaken
    account = begun or begin_unclaimed(zone)
    account.name, account.name_key = name, names.key(name)
    account.passphrase_hash = passphrase_hash
    db.session.flush()
    if home.owner is None:
        home.owner = account.id
    elif place is not None and begun is None and setting == "invite":
        place.used = clock.now()
    return account


def find_by_name(name: str) -> Account | None:
    """Find the claimed account of that name, however it is written."""
    return db.session.scalar(select(Account).where(Account.name_key == names.key(name)))


def find_invitation(token: str) -> Invitation | None:
    """Find an invitation that has not been used."""
    query = select(Invitation).where(Invitation.token_hash == hash_token(token), Invitation.used.is_(None))
    return db.session.scalar(query) if token else None


def invite(owner: UUID) -> str:
    """Keep a place for one more stitcher; gives the token, which is kept nowhere on this side."""
    token = new_token()
    db.session.add(Invitation(stitcher=owner, id=new_id(), token_hash=hash_token(token), created=clock.now()))
    return token


def open_invitations(owner: UUID) -> list[Invitation]:
    """List the invitations nobody has used yet, oldest first."""
    query = select(Invitation).where(Invitation.stitcher == owner, Invitation.used.is_(None))
    return list(db.session.scalars(query.order_by(Invitation.created)))
