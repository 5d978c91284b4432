"""Recognise a stitcher by name and passphrase, and settle what was begun on her phone."""

from webapp.accounts import passphrases
from webapp.accounts.bringing import bring, has_work, part_with
from webapp.accounts.doors import find_by_name
from webapp.accounts.guard import forget
from webapp.accounts.models import Account
from webapp.db import begin_writing, db


def recognise(name: str, passphrase: str) -> Account | None:
    """Find the stitcher whose name and passphrase these are; begins to write once they are found right.

    An unknown name takes as long as a wrong passphrase. Hashing is done before the write transaction, so
    what was checked is looked at again within it.
    """
    found = find_by_name(name)
    stored = found.passphrase_hash if found is not None else None
    if not passphrases.is_right(stored, passphrase) or found is None or stored is None:
        return None
    return _set_passphrase(found, stored, passphrase if passphrases.is_dated(stored) else None)


def change_passphrase(account: Account, current: str, new: str) -> bool:
    """Give her another passphrase if ``current`` is hers now, and tell whether it is; begins to write."""
    stored = account.passphrase_hash
    if not passphrases.is_right(stored, current) or stored is None:
        return False
    return _set_passphrase(account, stored, new) is not None


def _set_passphrase(account: Account, stored: str, passphrase: str | None) -> Account | None:
    """Begin to write, and keep a new hash if there is a passphrase to hash and the old hash still stands."""
    hashed = passphrases.hash_passphrase(passphrase) if passphrase is not None else stored
    account_id = account.id
    begin_writing()
    forget()
    again = db.session.get(Account, account_id)
    if again is None or again.passphrase_hash != stored:
        return None
    again.passphrase_hash = hashed
    return again


def settle_begun(begun: Account | None, account: Account, along: bool) -> None:
    """Bring what was begun on this phone along to ``account``, or leave it where it is."""
    if begun is None:
        return
    if not has_work(begun.id):
        along = True  # nothing to leave
    if along:
        bring(begun.id, account.id)
        part_with(begun, account.id)
    db.session.flush()
