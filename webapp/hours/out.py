"""All her sittings and days as tables, to take away."""

from datetime import date, datetime, timedelta
from zoneinfo import ZoneInfo

from sqlalchemy import bindparam, func, select

from webapp import clock
from webapp.accounts.models import Account
from webapp.db import db
from webapp.hours import records, wall
from webapp.hours.figures import work_out
from webapp.hours.laid import laid
from webapp.hours.sheets import as_csv
from webapp.hours.week import days_from
from webapp.journal.models import Quarter, Sitting
from webapp.journal.quarters import bounds

SITTINGS = ("project_id", "project", "sitting_id", "began", "ended", "seconds")
DAYS = ("date", "project_id", "project", "seconds", "stitches")
FIRST_BEGIN = select(func.min(Sitting.begin)).where(
    Sitting.stitcher == bindparam("stitcher"), Sitting.begin >= bindparam("since")
)
FIRST_QUARTER = select(func.min(Quarter.quarter)).where(
    Quarter.stitcher == bindparam("stitcher"), Quarter.quarter >= 96
)


def sittings_csv(account: Account) -> str:
    """List every sitting that counts, by her clocks with their offset from UTC; an open one without end."""
    zone, now, titles = ZoneInfo(account.zone), clock.now(), records.titles(account.id)
    found = records.sittings(account.id, wall.EARLIEST, wall.LATEST, now)
    rows = (
        (
            *(one.project, titles[one.project], one.id, _said(one.begin, zone)),
            *(_said(one.end, zone) if one.end else None, one.counts.length.total_seconds()),
        )
        for one in found
    )
    return as_csv(SITTINGS, rows)


def days_csv(account: Account) -> str:
    """List every day of hers that has anything, by project; each moment counted once."""
    zone, now, titles = ZoneInfo(account.zone), clock.now(), records.titles(account.id)
    first = _first_day(account, zone)
    today = now.astimezone(zone).date()
    if first is None or first > today:
        return as_csv(DAYS, [])
    days = days_from(first, today + timedelta(days=1), zone)
    counts = [one.counts for one in records.sittings(account.id, days.begin, days.end, now)]
    figures = work_out(days, counts, laid(account.id, days))
    rows = (
        (day.date, project, titles[project], share.time.total_seconds(), share.stitches)
        for day, shares in figures.days
        for project, share in shares.items()
    )
    return as_csv(DAYS, rows)


def _first_day(account: Account, zone: ZoneInfo) -> date | None:
    """Give the first day of anything; what a phone's clock dated to before 1970 is left out."""
    asked = {"stitcher": account.id}
    begin: datetime | None = db.session.scalar(FIRST_BEGIN, asked | {"since": wall.EARLIEST})
    quarter = db.session.scalar(FIRST_QUARTER, asked)
    moments = [begin] if begin else []
    moments += [bounds(quarter)[0]] if quarter is not None else []
    return wall.shown(min(moments), zone).date() if moments else None


def _said(moment: datetime, zone: ZoneInfo) -> str:
    held = min(max(moment, wall.EARLIEST), wall.LATEST)  # a phone's clock may be wrong by ages
    return held.astimezone(zone).isoformat(timespec="seconds")
