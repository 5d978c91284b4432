"""Passphrases: prepared as RFC 8265 (OpaqueString) has it, kept as Argon2id hashes.

Hashing takes a good part of a tenth of a second on purpose: never do it inside a write transaction.
"""

import secrets
import unicodedata
from functools import cache

from argon2 import PasswordHasher
from argon2.exceptions import InvalidHashError, VerificationError

SHORTEST = 8
LONGEST = 200
_hasher = PasswordHasher()


def prepare(passphrase: str) -> str:
    """Make one text of all the ways keyboards spell the same passphrase: NFC, every space a plain one."""
    plain = "".join(" " if unicodedata.category(sign) == "Zs" else sign for sign in passphrase)
    return unicodedata.normalize("NFC", plain)


def fault(passphrase: str) -> str | None:
    """Say what keeps a prepared passphrase from being used, or give nothing."""
    if len(passphrase) < SHORTEST:
        return f"That is too short: at least {SHORTEST} characters. A few words make a good one."
    if len(passphrase) > LONGEST:
        return f"That is too long: {LONGEST} characters at most."
    if any(sign == "\ufffd" or unicodedata.category(sign) == "Cc" for sign in passphrase):
        return "This passphrase has signs that could not be read. Type it anew."
    return None


def hash_passphrase(passphrase: str) -> str:
    """Hash a prepared passphrase, with a salt of its own."""
    return _hasher.hash(passphrase)


def is_right(stored: str | None, passphrase: str) -> bool:
    """Check a prepared passphrase; where there is none to check against, take as long about it."""
    decoy = _decoy()
    try:
        return _hasher.verify(stored or decoy, passphrase) and stored is not None
    except (VerificationError, InvalidHashError):
        return False


def is_dated(stored: str) -> bool:
    """Tell whether a hash was made with other parameters than today's."""
    return _hasher.check_needs_rehash(stored)


@cache
def _decoy() -> str:
    return _hasher.hash(secrets.token_urlsafe(32))
