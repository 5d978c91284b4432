import json
from datetime import UTC, date, datetime, time, timedelta
from pathlib import Path
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st

from webapp.reminders.bedtime import Held, due, night_at, shown_at

VECTORS = Path(__file__).parents[2] / "shared" / "vectors" / "bedtime.json"
CASES = json.loads(VECTORS.read_text())
ZONES = ["Europe/London", "Australia/Lord_Howe", "Africa/Cairo", "America/Havana", "Asia/Kathmandu"]


def moment_of(text):
    return text and datetime.fromisoformat(text)


@pytest.mark.parametrize("case", CASES, ids=lambda case: case["description"])
def test_bedtime(case):
    given = case["given"]
    held = [
        Held(one["project"], "", one["kind"], one["state"], moment_of(one["since"])) for one in given["held"]
    ]
    moment = datetime.fromisoformat(given["moment"])
    said = due(held, moment, time.fromisoformat(given["bedtime"]), ZoneInfo(given["zone"]))
    assert [{"project": one.project, "ask": state} for one, state in said] == case["expect"]


bedtimes = st.times().map(lambda t: t.replace(second=0, microsecond=0))
moments = st.datetimes(datetime(1990, 1, 1), datetime(2037, 1, 1)).map(lambda m: m.replace(tzinfo=UTC))
zones = st.sampled_from(ZONES).map(ZoneInfo)


@given(moments, bedtimes, zones)
def test_away_from_changes_of_the_clock_the_wall_alone_decides(moment, bedtime, zone):
    offsets = {(moment + timedelta(hours=h)).astimezone(zone).utcoffset() for h in range(-36, 37, 6)}
    wall = moment.astimezone(zone).time()
    noon = time(12)
    by_the_wall = bedtime <= wall < noon if bedtime < noon else wall >= bedtime or wall < noon
    assert len(offsets) > 1 or bool(night_at(moment, bedtime, zone)) == by_the_wall


@given(st.dates(date(1990, 1, 1), date(2036, 1, 1)), bedtimes, zones)
def test_once_begun_a_night_goes_on_to_noon(day, bedtime, zone):
    moment = shown_at(datetime.combine(day, bedtime), zone)
    noon = shown_at(datetime.combine(day + timedelta(days=bedtime >= time(12)), time(12)), zone)
    while moment < noon:
        assert night_at(moment, bedtime, zone)
        moment += timedelta(minutes=20)
    assert bedtime == time(12) or not night_at(noon, bedtime, zone)


@given(moments, moments, bedtimes, zones)
def test_of_a_night_what_is_said_once_is_said_to_noon(since, moment, bedtime, zone):
    """Never does a work come to be named in the middle of a night though nobody touched it."""
    held = [Held("a", "", "hoop", "on", since)]
    if since <= moment and due(held, moment, bedtime, zone):
        begin, noon = night_at(moment, bedtime, zone)
        assert due(held, noon - timedelta(seconds=1), bedtime, zone)
        assert due(held, max(since, begin), bedtime, zone)
