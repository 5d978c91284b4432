"""A plain name for the thing a browser runs on, from what it says of itself, and when it was last seen."""

from datetime import datetime
from zoneinfo import ZoneInfo

KINDS = (
    ("ipad", "iPhone or iPad"),
    ("iphone", "iPhone or iPad"),
    ("android", "Android tablet"),
    ("cros", "Computer"),
    ("windows", "Computer"),
    ("macintosh", "Computer"),
    ("linux", "Computer"),
)


def device_name(user_agent: str) -> str:
    """Name the device; "mobile" is what browsers on Android say on phones and not on tablets."""
    said = user_agent.lower()
    if "android" in said and "mobile" in said:
        return "Android phone"
    return next((name for mark, name in KINDS if mark in said), "Another device")


def last_seen(seen: datetime, now: datetime, zone: ZoneInfo) -> str:
    """Say on which of her days something was, no more exactly than sessions are kept."""
    day, today = seen.astimezone(zone).date(), now.astimezone(zone).date()
    ago = (today - day).days
    if ago < 2:
        return "yesterday" if ago == 1 else "today"
    if ago < 7:
        return f"{ago} days ago"
    return f"{day.day} {day:%B}" + (f" {day.year}" if day.year != today.year else "")
