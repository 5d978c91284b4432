"""Time by day against a reference that looks at every minute, over changes of the clocks in 20 zones."""

from collections import Counter
from datetime import UTC, date, datetime, timedelta
from random import Random
from uuid import UUID
from zoneinfo import ZoneInfo

import pytest

from webapp.hours.figures import Laid, work_out
from webapp.hours.split import Stretch
from webapp.hours.week import week_from

MINUTE = timedelta(minutes=1)

# A zone and a day on which its clocks change, by the public-domain tz database.
CHANGES = [
    ("Europe/London", "2026-03-29"),
    ("Europe/London", "2026-10-25"),
    ("Europe/Berlin", "2026-03-29"),
    ("Europe/Lisbon", "2026-10-25"),
    ("America/New_York", "2026-03-08"),
    ("America/New_York", "2026-11-01"),
    ("America/Los_Angeles", "2026-11-01"),
    ("America/St_Johns", "2006-10-29"),
    ("America/Havana", "2025-11-02"),
    ("America/Santiago", "2026-04-05"),
    ("America/Asuncion", "2024-03-24"),
    ("America/Sao_Paulo", "2018-11-04"),
    ("Africa/Cairo", "2024-04-26"),
    ("Africa/Cairo", "2024-10-31"),
    ("Africa/Casablanca", "2026-02-15"),
    ("Asia/Beirut", "2026-03-29"),
    ("Asia/Tehran", "2022-03-22"),
    ("Asia/Amman", "2021-03-26"),
    ("Asia/Pyongyang", "2018-05-05"),
    ("Asia/Gaza", "2022-10-29"),
    ("Australia/Lord_Howe", "2026-04-05"),
    ("Australia/Sydney", "2026-10-04"),
    ("Pacific/Chatham", "2026-04-05"),
    ("Pacific/Auckland", "2026-09-27"),
    ("Pacific/Apia", "2011-12-30"),
]


def test_these_are_twenty_zones():
    assert len({zone for zone, _ in CHANGES}) >= 20


def reference(zone, stretches):
    """Look at each minute: whose sitting it is, and the earliest date her clocks show from then on."""
    sums = Counter()
    moment = min(one.begin for one in stretches)
    while moment < max(one.end for one in stretches):
        at_it = [one for one in stretches if one.begin <= moment < one.end]
        if at_it:
            latest = max(at_it, key=lambda one: (one.begin, one.project))
            shown = [(moment + n * MINUTE).astimezone(zone).date() for n in range(180)]
            sums[min(shown), latest.project] += 1
        moment += MINUTE
    return sums


@pytest.mark.parametrize(("zone", "day"), CHANGES)
def test_every_minute_is_on_the_day_her_clocks_say(zone, day):
    zone, luck = ZoneInfo(zone), Random(day)
    middle = datetime.combine(date.fromisoformat(day), datetime.min.time(), UTC)
    stretches = []
    for n in range(9):
        begin = middle + luck.randint(-1800, 1800) * MINUTE
        stretches.append(Stretch(UUID(int=n % 3), begin, begin + luck.randint(0, 400) * MINUTE))
    first = date.fromisoformat(day) - timedelta(days=3)
    worked = work_out(week_from(first, zone), stretches, [])
    found = {
        (one.date, project): share.time // MINUTE
        for one, shares in worked.days
        for project, share in shares.items()
    }
    assert found == reference(zone, stretches)
    assert worked.total.time // MINUTE == sum(found.values())


@pytest.mark.parametrize(("zone", "day"), CHANGES)
def test_a_quarters_stitches_are_on_the_day_that_its_every_moment_is_on(zone, day):
    zone = ZoneInfo(zone)
    week = week_from(date.fromisoformat(day) - timedelta(days=3), zone)
    assert all((one.begin.minute % 15, one.begin.second) == (0, 0) for one in week.days)
    quarters = int((week.end - week.begin) / timedelta(minutes=15))
    laid = [Laid(UUID(int=1), week.begin + n * timedelta(minutes=15), 1) for n in range(quarters)]
    worked = work_out(week, [], laid)
    for one, shares in worked.days:
        assert sum(share.stitches for share in shares.values()) == (one.end - one.begin) / timedelta(
            minutes=15
        )
