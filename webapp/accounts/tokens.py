"""Tokens: what a browser or a link proves itself by, and what is kept of it."""

import hashlib
import secrets


def new_token() -> str:
    """Make a token of 256 random bits."""
    return secrets.token_urlsafe(32)


def hash_token(token: str) -> str:
    """Hash a token; being random, it needs no salt."""
    return hashlib.sha256(token.encode("utf-8", "surrogatepass")).hexdigest()
