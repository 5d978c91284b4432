"""The house's key, by which push services know it (RFC 8292): made on first start, kept to itself."""

import contextlib
import os
from functools import cache
from pathlib import Path
from tempfile import mkstemp

from cryptography.hazmat.primitives import serialization
from cryptography.hazmat.primitives.asymmetric import ec

from webapp.reminders.base64url import unpadded

NAME = "vapid.pem"


def make_key(data: Path) -> Path:
    """Make the key where there is none; of two processes that start at once, the first one's stays."""
    path = data / NAME
    if path.exists():
        return path
    key = ec.generate_private_key(ec.SECP256R1())
    pem = key.private_bytes(
        serialization.Encoding.PEM, serialization.PrivateFormat.PKCS8, serialization.NoEncryption()
    )
    handle, name = mkstemp(dir=data, prefix=NAME)  # for its owner alone, from the first byte on
    with os.fdopen(handle, "wb") as file:
        file.write(pem)
        file.flush()
        os.fsync(file.fileno())
    with contextlib.suppress(FileExistsError):
        os.link(name, path)
    os.unlink(name)
    return path


def public_key(data: Path) -> str | None:
    """Give the half of the key that phones are told, as they write it; none before the first start."""
    path = data / NAME
    try:
        return _public(path, path.stat().st_mtime_ns)
    except OSError:
        return None


@cache
def _public(path: Path, _changed: int) -> str:
    key = serialization.load_pem_private_key(path.read_bytes(), password=None)
    point = key.public_key().public_bytes(
        serialization.Encoding.X962, serialization.PublicFormat.UncompressedPoint
    )
    return unpadded(point)
