"""What was put right of a sitting last, what it was before, and when one left running may have ended."""

from collections.abc import Iterable, Sequence
from datetime import datetime, timedelta
from itertools import pairwise
from statistics import median
from uuid import UUID, uuid5

from webapp.hours.split import PAUSE
from webapp.journal.keys import Entry, mark
from webapp.journal.sittings import Counted, counted

Named = Iterable[tuple[Entry, bool]]  # the entries that name a sitting, each with whether it is cancelled


def latest_change(named: Named) -> list[str]:
    """Give the ids of what put it right last: the latest amend; where it was struck out twice, both."""
    amends = sorted((one for one, dead in named if one["kind"] == "amend" and not dead), key=mark)
    latest: list[str] = []
    for one in reversed(amends):
        if latest and not (one.get("struck") and amends[-1].get("struck")):
            break
        latest.append(one["id"])
    return latest


def before_change(named: Named) -> Counted | None:
    """Tell how it counted before it was put right last; none if it never was, or was not there before."""
    named = list(named)
    changed = latest_change(named)
    was = counted((one, dead) for one, dead in named if one["id"] not in changed)
    return was if changed and was.begin is not None else None


def usual_gap(stitched: Sequence[datetime]) -> timedelta:
    """Tell how long she takes from tap to tap: the median, pauses between sittings left out."""
    gaps = [later - earlier for earlier, later in pairwise(sorted(stitched))]
    within = [gap.total_seconds() for gap in gaps if timedelta() < gap < PAUSE]
    return timedelta(seconds=median(within)) if within else timedelta()


def offered_end(begin: datetime, last_stitch: datetime, gap: timedelta, now: datetime) -> datetime:
    """Offer the end of a sitting left running: its last tap, and the gap to the one she did not tap."""
    return max(begin, min(last_stitch + gap, now))


def moved_to(sitting: UUID, project: UUID) -> UUID:
    """Name the sitting that one becomes when it is moved to another project."""
    return uuid5(sitting, str(project))
