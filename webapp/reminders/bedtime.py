"""What to do with the work for the night: pure, and the same in ``static/js/reminders/bedtime.js``.

``shared/vectors/bedtime.json`` binds the two.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import UTC, date, datetime, time, timedelta
from zoneinfo import ZoneInfo

NOON = time(12)
KINDS = ("clamps", "hoop", "scroll")  # in the order they are said: clamps may lie on stitches


@dataclass(frozen=True)
class Held:
    """How one project's work is held now."""

    project: str
    title: str
    kind: str  # hoop, clamps, scroll, stretched, hand
    state: str | None  # on, slack, off; none: never on a frame
    since: datetime | None  # when it was put on; none: it is on no frame
    tight: datetime | None = None  # since when it is not slack either


def shown_at(wall: datetime, zone: ZoneInfo) -> datetime:
    """Give the moment at which her clock shows ``wall``.

    Of two the first; a time that the clocks skip counts by the offset before, as in RFC 5545, section 3.3.5.
    """
    return wall.replace(tzinfo=zone, fold=0).astimezone(UTC)


def span(night: date, bedtime: time, zone: ZoneInfo) -> tuple[datetime, datetime]:
    """Give her bedtime and the noon after it, of the night named by the date of the noon before it."""
    begin = datetime.combine(night + timedelta(days=bedtime < NOON), bedtime)
    return shown_at(begin, zone), shown_at(datetime.combine(night + timedelta(days=1), NOON), zone)


def night_at(moment: datetime, bedtime: time, zone: ZoneInfo) -> tuple[datetime, datetime] | None:
    """Give her bedtime and the noon after it, if ``moment`` lies between them."""
    today = moment.astimezone(zone).date()
    for night in (today - timedelta(days=1), today):
        begin, noon = span(night, bedtime, zone)
        if begin <= moment < noon:
            return begin, noon
    return None


def asked(kind: str, state: str | None) -> str | None:
    """Tell the state the work should be brought to for the night: off, slack, or none where it may stay.

    Even a loose hoop marks cloth, so off is off; a scroll frame needs only be slackened.
    """
    if state not in ("on", "slack"):
        return None
    if kind == "scroll":
        return "slack" if state == "on" else None
    return "off" if kind in ("hoop", "clamps") else None


def due(held: Iterable[Held], moment: datetime, bedtime: time, zone: ZoneInfo) -> list[tuple[Held, str]]:
    """List what must be said now, each with the state asked for: clamps first, then by project.

    What was put on past the middle of the night is tomorrow's: by then she is up again and at it.
    """
    night = night_at(moment, bedtime, zone)
    if night is None:
        return []
    middle = night[0] + (night[1] - night[0]) / 2
    tonight = (one for one in held if one.since is not None and one.since < middle)
    found = [(one, state) for one in tonight if (state := asked(one.kind, one.state))]
    return sorted(found, key=lambda pair: (KINDS.index(pair[0].kind), pair[0].project))
