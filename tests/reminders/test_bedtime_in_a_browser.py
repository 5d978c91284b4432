"""The phone's rule of bedtime, run in a real browser, against the same vectors as the server's."""

from datetime import UTC, datetime, time
from zoneinfo import ZoneInfo

from tests.reminders.test_bedtime import CASES, ZONES
from webapp.reminders.bedtime import night_at, span
from webapp.reminders.schedule import Choices, next_bedtime

SAID = """async ([path, cases]) => {
  const { due } = await import(path);
  const said = ({ moment, bedtime, zone, held }) => due(held, Date.parse(moment), bedtime, zone);
  return cases.map((given) => said(given).map(({ project, ask }) => ({ project, ask })));
}"""
NIGHTS = """async ([path, cases]) => {
  const { nightAt } = await import(path);
  return cases.map(([moment, bedtime, zone]) => nightAt(moment, bedtime, zone));
}"""

NOONS = """async ([path, cases]) => {
  const { noonAfter } = await import(path);
  return cases.map(([moment, , zone]) => noonAfter(moment, zone));
}"""


def module(server, page):
    page.goto(f"{server.url}/health")
    digest = page.request.get(f"{server.url}/sign-in").text().split("/static/")[1].split("/")[0]
    return f"/static/{digest}/js/reminders/bedtime.js"


def test_the_phone_says_what_the_vectors_say(server, page):
    said = page.evaluate(SAID, [module(server, page), [case["given"] for case in CASES]])
    for case, one in zip(CASES, said, strict=True):
        assert one == case["expect"], case["description"]


def test_phone_and_server_agree_through_every_change_of_the_clocks(server, page):
    """Each half hour of the days around the changes of 2026, for bedtimes in and out of them."""
    begins = [datetime(2026, *day, tzinfo=UTC).timestamp() for day in ((3, 28), (4, 4), (10, 3), (10, 24))]
    cases = [
        [(begin + step * 1800) * 1000, bedtime, zone]
        for begin in begins
        for step in range(2 * 48)
        for bedtime in ("22:30", "01:45", "11:59")
        for zone in (*ZONES, "America/New_York", "Pacific/Chatham")
    ]
    nights, noons = (page.evaluate(asked, [module(server, page), cases]) for asked in (NIGHTS, NOONS))
    for (moment, bedtime, zone), night, noon in zip(cases, nights, noons, strict=True):
        at = datetime.fromtimestamp(moment / 1000, UTC)
        said = night_at(at, time.fromisoformat(bedtime), ZoneInfo(zone))
        as_ms = said and [one.timestamp() * 1000 for one in said]
        assert night == as_ms, (at, bedtime, zone)
        rules = Choices(time.fromisoformat(bedtime), ZoneInfo(zone))
        name, _ = next_bedtime(at, rules)  # the one she leaves when she says so now
        assert noon == span(name, rules.bedtime, rules.zone)[1].timestamp() * 1000, (at, bedtime, zone)
