"""When she is reminded, of what, and until when: pure.

A night is named by the date of the noon before it, so that a bedtime after midnight is of the evening
before. What is asked of a work, and when it is bedtime through both changes of the clocks, stands in
``bedtime.py``.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date, datetime, time, timedelta
from zoneinfo import ZoneInfo

from webapp.reminders.bedtime import KINDS, NOON, Held, asked, due, night_at, shown_at, span

LATE = timedelta(hours=3)  # sent so late if not before; later she sleeps, and the pages say it
SETTLED = timedelta(hours=1)  # what she puts on after bedtime is left in peace so long
BEFORE_BED = timedelta(minutes=30)  # hours on the frame that are over then wait for bedtime
HALF_AN_HOUR = timedelta(minutes=30)
ITSELF = timedelta(hours=1)  # so late may come what she asked to hear again
LEAST_HOURS, MOST_HOURS = 1, 72

Works = tuple[tuple[Held, str], ...]


@dataclass(frozen=True)
class Choices:
    """What she chose of reminders."""

    bedtime: time
    zone: ZoneInfo
    at_bedtime: bool = True
    hours: int | None = None  # so many on the frame without a break; none: not counted
    left: date | None = None  # the night of which she said "leave it tonight"
    away: date | None = None  # away until then: the first night that is said again


@dataclass(frozen=True)
class Reminder:
    """One reminder: what it is of, from when, and past which moment it is of no use."""

    night: date
    kind: str  # bedtime, hours; in the ledger also again: asked for by day, of whatever is on a frame then
    at: datetime
    until: datetime
    works: Works


def night_of(moment: datetime, zone: ZoneInfo) -> date:
    """Name the night of a moment by the date of the noon before it."""
    today = moment.astimezone(zone).date()
    return today if shown_at(datetime.combine(today, NOON), zone) <= moment else today - timedelta(days=1)


def is_quiet(night: date, choices: Choices) -> bool:
    """Tell whether she wants no word that night."""
    return night == choices.left or (choices.away is not None and night < choices.away)


def reminders(held: Iterable[Held], moment: datetime, choices: Choices) -> list[Reminder]:
    """List what she is to be reminded of now, if it was not done yet: one a night and kind at most."""
    held = list(held)
    found = [*_at_bedtime(held, moment, choices), *_after_hours(held, moment, choices)]
    return [one for one in found if not is_quiet(one.night, choices)]


def last_moment(begin: datetime, noon: datetime) -> datetime:
    """Tell from when on nothing is said of a night any more, whenever the work was put on in it."""
    return min(noon, begin + (noon - begin) / 2 + SETTLED + LATE)


def next_bedtime(moment: datetime, choices: Choices) -> tuple[date, datetime]:
    """Give the night it is now until noon, else the coming one, and her bedtime in it."""
    today = moment.astimezone(choices.zone).date()
    nights = [today + timedelta(days=n) for n in range(-1, 4)]  # the clocks may skip a day
    spans = [(night, *span(night, choices.bedtime, choices.zone)) for night in nights]
    return next((night, begin) for night, begin, noon in spans if moment < noon and begin < noon)


def still(held: Iterable[Held]) -> Works:
    """List what stands on a frame as it should not for a night: clamps first, then by project."""
    found = [(one, state) for one in held if (state := asked(one.kind, one.state))]
    return tuple(sorted(found, key=lambda pair: (KINDS.index(pair[0].kind), pair[0].project)))


def over_hours(works: Works, moment: datetime, hours: int | None) -> Works:
    """List of these works those that have been on for so many hours by now."""
    if hours is None:
        return ()
    length = timedelta(hours=hours)
    return tuple((one, ask) for one, ask in works if (begun := _begun(one, ask)) and begun + length <= moment)


def _begun(one: Held, ask: str) -> datetime | None:
    """Tell from when its hours count: for a scroll frame, since it is tight."""
    return one.tight if ask == "slack" and one.tight else one.since


def _at_bedtime(held: list[Held], moment: datetime, choices: Choices) -> list[Reminder]:
    night = night_at(moment, choices.bedtime, choices.zone)
    if night is None or not choices.at_bedtime:
        return []
    begin, noon = night

    def from_when(one: Held) -> datetime:
        assert one.since is not None
        return begin if one.since <= begin else one.since + SETTLED

    works = due(held, moment, choices.bedtime, choices.zone)
    now = [(one, ask) for one, ask in works if from_when(one) <= moment < from_when(one) + LATE]
    if not now:
        return []
    times = [from_when(one) for one, _ in now]
    name = night_of(begin, choices.zone)
    return [Reminder(name, "bedtime", min(times), min(noon, max(times) + LATE), tuple(now))]


def _after_hours(held: list[Held], moment: datetime, choices: Choices) -> list[Reminder]:
    if choices.hours is None:
        return []
    waits = _said_at_bed(moment, choices)
    length = timedelta(hours=choices.hours)
    by_night: dict[date, list[tuple[datetime, Held, str]]] = {}
    for one, ask in still(held):
        begun = _begun(one, ask)
        if begun is None or (waits and one.since is not None and one.since < waits):
            continue
        if begun + length <= moment < begun + length + LATE:
            over = begun + length
            by_night.setdefault(night_of(over, choices.zone), []).append((over, one, ask))
    return [_of_hours(night, works) for night, works in sorted(by_night.items())]


def _of_hours(night: date, works: list[tuple[datetime, Held, str]]) -> Reminder:
    times = [over for over, _, _ in works]
    named = tuple((one, ask) for _, one, ask in works)
    return Reminder(night, "hours", min(times), max(times) + LATE, named)


def _said_at_bed(moment: datetime, choices: Choices) -> datetime | None:
    """Tell, from half an hour before bedtime to noon, what the reminder at bedtime will say as well.

    That is what was put on before the moment given; what is put on later is the next night's.
    """
    if not choices.at_bedtime:
        return None
    at = (choices.bedtime, choices.zone)
    night = night_at(moment, *at) or night_at(moment + BEFORE_BED, *at)
    return night and night[0] + (night[1] - night[0]) / 2
