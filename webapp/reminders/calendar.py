"""The reminder as a calendar (RFC 5545), for whoever would rather have it there. Pure."""

from dataclasses import dataclass
from datetime import date, datetime, timedelta

from icalendar import Alarm, Calendar, Event

LASTS = timedelta(minutes=15)
LOOK_AGAIN = timedelta(hours=1)


@dataclass(frozen=True)
class Evening:
    """One night's reminder."""

    night: date
    begin: datetime
    said: str


def written(whose: str, evenings: list[Evening], now: datetime) -> bytes:
    """Write a calendar of these evenings; on no other is anything in it."""
    calendar = Calendar()
    calendar.add("prodid", "-//Evenrow//Reminders//EN")
    calendar.add("version", "2.0")
    calendar.add("name", "Off the frame")  # RFC 7986
    calendar.add("x-wr-calname", "Off the frame")
    calendar.add("refresh-interval", LOOK_AGAIN, parameters={"VALUE": "DURATION"})  # RFC 7986
    for one in evenings:
        calendar.add_component(_event(whose, one, now))
    return bytes(calendar.to_ical())


def _event(whose: str, one: Evening, now: datetime) -> Event:
    event = Event()
    event.add("uid", f"night-{one.night}@{whose}")
    event.add("dtstamp", now)
    event.add("dtstart", one.begin)
    event.add("duration", LASTS)
    event.add("summary", one.said)
    event.add("transp", "TRANSPARENT")  # it keeps her from nothing
    alarm = Alarm()
    alarm.add("action", "DISPLAY")
    alarm.add("description", one.said)
    alarm.add("trigger", timedelta())
    event.add_component(alarm)
    return event
