"""The only clock: everything that asks for the time asks here."""

from datetime import UTC, datetime


def now() -> datetime:
    """Tell the time in UTC, to the millisecond, as entries are kept."""
    moment = datetime.now(UTC)
    return moment.replace(microsecond=moment.microsecond // 1000 * 1000)
