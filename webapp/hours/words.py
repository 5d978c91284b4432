"""Times and dates in words, as Hours says them."""

from datetime import date, datetime, timedelta

from webapp.hours.pace import Finish

MONTHS = [
    *("January", "February", "March", "April", "May", "June"),
    *("July", "August", "September", "October", "November", "December"),
]
DAYS = ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"]
MINUTE = timedelta(minutes=1)
HALF_A_YEAR = timedelta(days=183)  # a range wider than this is not told to the day


def minutes(time: timedelta) -> int:
    """Round to minutes; what is there at all is at least one."""
    return max(round(time / MINUTE), 1) if time > timedelta() else 0


def clock(time: timedelta) -> str:
    """Say 6:50 for six hours and fifty minutes."""
    hours, rest = divmod(minutes(time), 60)
    return f"{hours}:{rest:02}"


def spoken(time: timedelta) -> str:
    """Say 1 h 10, 2 h or 35 min."""
    hours, rest = divmod(minutes(time), 60)
    if not hours:
        return f"{rest} min"
    return f"{hours} h {rest:02}" if rest else f"{hours} h"


def against(time: timedelta, usual: timedelta | None, running: bool) -> list[str]:
    """Compare a week with the usual one, a few words a line; nothing where there is none to compare with."""
    if usual is None:
        return []
    by_now = ["by now"] if running else []
    difference = time - usual
    if abs(difference) < 5 * MINUTE:
        return ["as usual", *by_now]
    more = "more" if difference > timedelta() else "less"
    return [f"{spoken(abs(difference))} {more}", "than usual", *by_now]


def short_date(day: date) -> str:
    """Say Tue 3 February."""
    return f"{DAYS[day.weekday()]} {day.day} {MONTHS[day.month - 1]}"


def span(first: date, last: date, today: date) -> str:
    """Say 2 to 8 February, or 29 January to 4 February; the year where it is not this one."""
    year = "" if last.year == today.year else f" {last.year}"
    begin = str(first.day)
    if first.month != last.month:
        begin += f" {MONTHS[first.month - 1]}"
    return f"{begin} to {last.day} {MONTHS[last.month - 1]}{year}"


def moment(wall: datetime, today: date) -> str:
    """Say 20:10, with its date where that is not today; the year where it is not this one."""
    time, day = f"{wall:%H:%M}", wall.date()
    year = "" if day.year == today.year else f" {day.year}"
    return time if day == today else f"{time} on {short_date(day)}{year}"


def day_of(day: date, today: date) -> str:
    """Say 8 July; with its year where that is not this one."""
    year = "" if day.year == today.year else f" {day.year}"
    return f"{day.day} {MONTHS[day.month - 1]}{year}"


def range_of(finish: Finish, today: date) -> str:
    """Say between which dates it will be done, 10 and 90 of 100; months alone where they lie far apart."""
    early, late = finish.early, finish.late
    if early == late:
        return f"on {day_of(late, today)}"
    if _far_apart(finish):
        return f"between {_month_of(early)} and {_month_of(late)}"
    begin = day_of(early, date(late.year, 1, 1) if early.year == late.year else today)
    if (early.year, early.month) == (late.year, late.month):
        begin = str(early.day)
    return f"between {begin} and {day_of(late, today)}"


def likely(finish: Finish, today: date) -> str:
    """Say about when it will be done most likely."""
    middle = _month_of(finish.middle) if _far_apart(finish) else day_of(finish.middle, today)
    return f"most likely about {middle}"


def _far_apart(finish: Finish) -> bool:
    return finish.late - finish.early > HALF_A_YEAR


def _month_of(day: date) -> str:
    return f"{MONTHS[day.month - 1]} {day.year}"


def short_day(day: date, today: date) -> str:
    """Say 8 Jul; with its year where that is not this one: it stands under a small drawing."""
    year = "" if day.year == today.year else f" {day.year}"
    return f"{day.day} {MONTHS[day.month - 1][:3]}{year}"


def short_span(first: date, last: date) -> str:
    """Say 2–8 Feb, or 29 Jan–4 Feb."""
    end = f"{last.day} {MONTHS[last.month - 1][:3]}"
    if first == last:
        return end
    begin = f"{first.day}" if first.month == last.month else f"{first.day} {MONTHS[first.month - 1][:3]}"
    return f"{begin}–{end}"


def spoken_minutes(count: int) -> str:
    """Say 20 minutes, or 1 h 30."""
    return f"{count} minutes" if count < 60 else spoken(count * MINUTE)
