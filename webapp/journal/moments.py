"""Moments as the journal writes them: UTC to the millisecond, as text that sorts.

Pure. Phones' clocks may be wrong by years, so a corrected moment is held inside what can be written.
"""

import re
from datetime import UTC, datetime, timedelta

_SHAPE = re.compile(r"\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d{1,9})?(Z|[+-]\d\d:\d\d)", re.ASCII)
EARLIEST = datetime(1, 1, 1, tzinfo=UTC)
LATEST = datetime(9999, 12, 31, 23, 59, 59, 999000, tzinfo=UTC)


def read(text: object) -> datetime:
    """Read a moment with its zone, to the millisecond, in UTC; ValueError if it is none."""
    if not isinstance(text, str) or not _SHAPE.fullmatch(text):
        raise ValueError("not a moment like 2026-02-03T20:14:05.120Z")
    moment = datetime.fromisoformat(_six_digits(text))
    try:
        return _whole(moment.astimezone(UTC))
    except OverflowError:
        return EARLIEST if moment.year < 5000 else LATEST


def _six_digits(text: str) -> str:
    return re.sub(r"\.(\d+)", lambda found: "." + found.group(1)[:6].ljust(6, "0"), text)


def _whole(moment: datetime) -> datetime:
    return moment.replace(microsecond=moment.microsecond // 1000 * 1000)


def write(moment: datetime) -> str:
    """Write a moment in UTC as ``2026-02-03T20:14:05.120Z``."""
    moment = moment.astimezone(UTC)
    return f"{moment.replace(tzinfo=None).isoformat(timespec='milliseconds')}Z"


def corrected(said: datetime, offset_ms: int) -> datetime:
    """Move a phone's own time by how far its clock is off, in milliseconds."""
    try:
        return said + timedelta(milliseconds=offset_ms)
    except OverflowError:
        return EARLIEST if offset_ms < 0 else LATEST
