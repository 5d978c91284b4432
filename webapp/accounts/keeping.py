"""What only whoever keeps the house can do: replace a passphrase that was lost."""

from sqlalchemy import delete

from webapp.accounts import names, passphrases
from webapp.accounts.doors import find_by_name
from webapp.accounts.models import Account, SignedIn
from webapp.db import db, writing


class CannotReplace(Exception):
    """A passphrase cannot be replaced; the message says why and what to do."""


def find_claimed(name: str) -> Account:
    """Find the account of that name, however it is written; raise CannotReplace."""
    found = find_by_name(name)
    if found is None:
        raise CannotReplace(f"Nobody here is called {name!r}. Give the name she signs in with.")
    return found


def replace_passphrase(name: str, passphrase: str) -> None:
    """Give the stitcher of that name another passphrase, and sign her out everywhere; raise CannotReplace."""
    prepared = passphrases.prepare(passphrase)
    fault = passphrases.fault(prepared) if prepared.strip() else "Give a passphrase, not only spaces."
    if fault is None and names.key(prepared) == names.key(name):
        fault = "Choose something other than the name."
    if fault:
        raise CannotReplace(fault)
    hashed = passphrases.hash_passphrase(prepared)
    with writing():
        account = find_claimed(name)
        account.passphrase_hash = hashed
        db.session.execute(delete(SignedIn).where(SignedIn.stitcher == account.id))
        db.session.commit()
