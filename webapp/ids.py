"""Ids that rise with time (UUID version 7, RFC 9562), made on the server as on a phone."""

import secrets
from uuid import UUID

from webapp import clock


def new_id() -> UUID:
    """Make a version 7 UUID for this moment."""
    milliseconds = int(clock.now().timestamp() * 1000)
    value = milliseconds << 80 | 0x7 << 76 | secrets.randbits(12) << 64 | 0b10 << 62 | secrets.randbits(62)
    return UUID(int=value)
