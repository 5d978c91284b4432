"""Times fixed on one phone while the other taps on, a while without network: both agree, nothing is lost."""

from datetime import UTC, datetime, timedelta
from uuid import uuid4
from zoneinfo import ZoneInfo

import pytest
from playwright.sync_api import expect

from tests.browser.phones import OURS, Stitcher, go, shown, tap_on, until, waiting
from tests.stitching.conftest import ago

ZONE = ZoneInfo("Europe/London")
TODAY = datetime.now(ZONE).date()
MONDAY = TODAY - timedelta(days=TODAY.weekday() + 7)
FIELD = "%Y-%m-%dT%H:%M"


def week_of(moment):
    return "{:04}-W{:02}".format(*moment.astimezone(ZONE).isocalendar()[:2])


LAST_WEEK = "{:04}-W{:02}".format(*MONDAY.isocalendar()[:2])


@pytest.fixture
def alice(context, server):
    return Stitcher.begin(context, server)


@pytest.fixture
def tablet(alice, new_context):
    """Her other phone, signed in."""
    return alice.sign_in_on(new_context()).context


def write(alice, *entries):
    """Send entries as a phone would."""
    whole = [{"id": str(uuid4()), "project": alice.project, **entry} for entry in entries]
    body = {"sent_at": ago(), "entries": whole}
    assert alice.context.request.post(f"{alice.url}/journal", data=body, headers=OURS).json()["refused"] == []


def sat(hour, minutes, stitches):
    """Write one of last Monday's sittings, its stitches laid as it ended."""
    begin = datetime(MONDAY.year, MONDAY.month, MONDAY.day, hour, tzinfo=ZONE).astimezone(UTC)
    at, end = (f"{moment:%Y-%m-%dT%H:%M:%S}.000Z" for moment in (begin, begin + timedelta(minutes=minutes)))
    sitting = str(uuid4())
    return (
        {"kind": "begin", "id": sitting, "at": at},
        {"kind": "stitches", "row": 1, "by": stitches, "at": end},
        {"kind": "end", "sitting": sitting, "at": end},
    )


def week(context, alice, name):
    """Give a week as one phone is told it: seconds, stitches, sittings; and its page's table of projects."""
    told = context.request.get(f"{alice.url}/hours.json?week={name}").json()
    page = context.request.get(f"{alice.url}/hours?week={name}").text()
    table = page.split("data-projects")[1].split("</table>")[0] if "data-projects" in page else ""
    return told["total_seconds"], told["stitches"], told["sittings"], table


def state(page, project):
    """Give what a phone shows of the project."""
    names = ["stitches", "rows_done", "rows", "sitting", "frame", "note"]
    return page.evaluate(
        """([of, names]) => {
          const view = phone.view(of);
          return Object.fromEntries(names.map((name) => [name, view[name] ?? null]));
        }""",
        [project, names],
    )


def settled(page):
    """Have a phone send what waits, and look up what the other did."""
    page.evaluate("dispatchEvent(new Event('online'))")
    until(page, lambda: waiting(page) == 0)


def test_times_are_fixed_on_one_phone_while_the_other_taps_on(alice, tablet, server, context):
    write(alice, *sat(10, 60, 50), *sat(20, 70, 84))
    running, begun = str(uuid4()), datetime.now(UTC) - timedelta(minutes=40)
    write(
        alice,
        {"kind": "begin", "id": running, "at": ago(minutes=40)},
        {"kind": "stitches", "row": 2, "by": 20, "at": ago(minutes=20)},
    )
    phone, fixing = alice.open(), tablet.new_page()
    tap_on(phone, 5)
    settled(phone)

    # The phone is without network and taps on; on the tablet the sitting that runs there is given an end.
    context.set_offline(True)
    tap_on(phone, 7)
    fixing.goto(f"{alice.url}/hours/sittings?week={week_of(begun)}")
    changed = fixing.locator("details", has_text="still running")
    changed.get_by_text("Change").click()
    hers = begun.astimezone(ZONE)
    changed.get_by_label("Began").fill((hers - timedelta(minutes=10)).strftime(FIELD))
    changed.get_by_label("Ended").fill((hers + timedelta(minutes=30)).strftime(FIELD))
    changed.get_by_role("button", name="Keep these times").click()
    expect(fixing.get_by_role("status")).to_have_text("Kept.")
    tap_on(phone, 3)
    assert shown(phone, alice.project) == 50 + 84 + 20 + 15  # counted on, with no network
    assert state(phone, alice.project)["sitting"]["id"] == running
    context.set_offline(False)
    settled(phone)
    until(phone, lambda: state(phone, alice.project)["sitting"] is None)  # as it was fixed elsewhere
    tap_on(phone, 2)  # so this begins another
    settled(phone)
    another = state(phone, alice.project)["sitting"]["id"]
    assert another != running

    # Meanwhile a forgotten sitting is added, one is struck out, and of the changed one all is put back.
    fixing.goto(f"{alice.url}/hours/sittings?week={LAST_WEEK}")
    fixing.get_by_text("Add a forgotten one").click()
    fixing.get_by_label("Began").first.fill(f"{MONDAY}T15:00")
    fixing.get_by_label("Ended").first.fill(f"{MONDAY}T15:30")
    fixing.get_by_role("button", name="Add it").click()
    expect(fixing.get_by_role("status")).to_have_text("Added.")
    tap_on(phone, 4)
    struck = fixing.locator("details", has_text="10:00 to 11:00")
    struck.get_by_text("Change").click()
    struck.get_by_role("button", name="Strike it out").click()
    expect(fixing.get_by_role("status")).to_have_text("Struck out.")
    phone.locator(".stitch [data-act=undo]").click()  # the last tap, not what the tablet did
    settled(phone)
    assert week(tablet, alice, LAST_WEEK)[:3] == ((70 + 30) * 60, 50 + 84, 2)
    fixing.get_by_role("button", name="Put back").click()
    expect(fixing.get_by_role("status")).to_have_text("Put back.")
    fixing.goto(f"{alice.url}/hours/sittings?week={week_of(begun - timedelta(minutes=10))}")
    fixing.get_by_text("Change").first.click()
    fixing.get_by_role("button", name="Put back").first.click()
    expect(fixing.get_by_role("status")).to_have_text("Put back.")

    # She ends the evening on the phone: the one that runs again and the one begun after it, both.
    settled(phone)
    until(phone, lambda: state(phone, alice.project)["sitting"] is not None)
    phone.locator(".stitch [data-act=sitting]").click()
    phone.get_by_label("Where I stopped").fill("at the lamp")
    phone.locator("dialog .main").click()
    until(phone, lambda: state(phone, alice.project)["sitting"] is None)
    settled(phone)

    go(fixing, f"{alice.url}/projects/{alice.project}/stitch")
    snapshot = alice.sums()
    laid = 50 + 84 + 20 + 15 + 2 + 3
    assert snapshot["stitches"] == laid
    assert snapshot["note"]["text"] == "at the lamp"
    one, other = (state(page, alice.project) for page in (phone, fixing))
    assert one == other
    assert {name: snapshot[name] for name in one} == one
    weeks = {LAST_WEEK, week_of(begun), week_of(datetime.now(UTC))}
    told = {name: week(context, alice, name) for name in weeks}
    assert told == {name: week(tablet, alice, name) for name in weeks}
    assert told[LAST_WEEK][:3] == ((60 + 70 + 30) * 60, 50 + 84, 3)
    assert sum(stitches for _, stitches, _, _ in told.values()) == laid
    assert server.audit() == "No difference."
