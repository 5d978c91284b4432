"""Times as the clock on her wall shows them, typed by hand, to moments and back."""

from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

LONGEST = timedelta(hours=24)
EARLIEST, LATEST = datetime(1970, 1, 2, tzinfo=UTC), datetime(2200, 1, 1, tzinfo=UTC)


class NoSuchTime(ValueError):
    """A time that the clocks skipped; the message is a sentence."""


def shown(moment: datetime, zone: ZoneInfo) -> datetime:
    """Give the wall's time for a moment, to the minute, without zone.

    A phone's clock may be wrong by ages: then the nearest that can be shown.
    """
    held = min(max(moment, EARLIEST), LATEST)
    return held.astimezone(zone).replace(second=0, microsecond=0, tzinfo=None, fold=0)


def meant(wall: datetime, zone: ZoneInfo, after: datetime | None = None) -> datetime:
    """Give the moment, in UTC, at which the wall showed ``wall``.

    A time shown twice, as the clocks were turned back, is the earlier one, or the later where the earlier
    would not come after ``after``. A time that was skipped raises NoSuchTime.
    """
    moments = [wall.replace(tzinfo=zone, fold=fold).astimezone(UTC) for fold in (0, 1)]
    real = [moment for moment in moments if moment.astimezone(zone).replace(tzinfo=None, fold=0) == wall]
    if not real:
        raise NoSuchTime(
            f"There was no {wall:%H:%M} that day: the clocks were put forward over it. Give another time."
        )
    return next((moment for moment in real if after is None or moment > after), real[-1])


def wrong_with(begin: datetime, end: datetime, now: datetime) -> dict[str, str]:
    """Give a sentence for each field of a sitting that cannot be right; none if it can."""
    if begin < EARLIEST:
        return {"begin": "That is too long ago to be right. Give a later date."}
    if begin > now:
        return {"begin": "That has not come yet. Give a time that is past."}
    if end <= begin:
        return {"end": "The end must come after the beginning. Give a later time."}
    if end - begin > LONGEST:
        return {"end": "That is over 24 hours. Give an earlier end, or add two sittings."}
    if end > now:
        return {"end": "That has not come yet. Give a time that is past."}
    return {}
