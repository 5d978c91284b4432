"""What was stitched in each quarter of an hour. Pure.

Days and weeks are hers, by her zone, and she may change it; but the days of every zone begin with a quarter
of an hour, as they have since 1980. So sums by quarter serve them all, and a year has a few thousand of them.
"""

from collections import Counter
from collections.abc import Iterable
from datetime import datetime, timedelta

from webapp.journal import moments
from webapp.journal.keys import Entry, tally

LAST = timedelta(minutes=15) - timedelta(milliseconds=1)  # its last moment, as entries are kept
Key = tuple[datetime, str]  # its beginning, the pass


def key(tally: str, at: datetime) -> Key:
    """Name the quarter that an entry belongs to."""
    begin = at.replace(minute=at.minute // 15 * 15, second=0, microsecond=0)
    return begin, tally.split(" ")[0]


def counted(live: Iterable[Entry]) -> Counter[Key]:
    """Sum what was stitched by quarter: not unpicked, corrected or there before."""
    sums: Counter[Key] = Counter()
    for entry in live:
        if entry["kind"] == "stitches" and entry.get("why") in (None, "stitched"):
            sums[key(tally(entry) or "", moments.read(entry["at"]))] += entry["by"]
    return sums
