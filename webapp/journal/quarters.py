"""What was stitched in each quarter of an hour. Pure.

Days and weeks are hers, by her zone, and she may change it; but the days of every zone begin with a quarter
of an hour, as they have since 1980. So sums by quarter serve them all, and a year has a few thousand of them.
"""

from collections import Counter
from collections.abc import Iterable
from datetime import UTC, datetime, timedelta

from webapp.journal import moments
from webapp.journal.keys import Entry, tally

LONG = timedelta(minutes=15)
EPOCH = datetime(1970, 1, 1, tzinfo=UTC)
Key = tuple[int, str]  # which one, counted from the epoch; the pass


def key(tally: str, at: datetime) -> Key:
    """Name the quarter that an entry belongs to."""
    return number(at), tally.split(" ")[0]


def number(at: datetime) -> int:
    """Number the quarter that holds a moment."""
    return (at - EPOCH) // LONG


def bounds(number: int) -> tuple[datetime, datetime]:
    """Give its first and its last moment, as entries are kept."""
    begin = EPOCH + number * LONG
    return begin, begin + (LONG - timedelta(milliseconds=1))


def counted(live: Iterable[Entry]) -> Counter[Key]:
    """Sum what was stitched by quarter: not unpicked, corrected or there before."""
    sums: Counter[Key] = Counter()
    for entry in live:
        if entry["kind"] == "stitches" and entry.get("why") in (None, "stitched"):
            sums[key(tally(entry) or "", moments.read(entry["at"]))] += entry["by"]
    return sums
