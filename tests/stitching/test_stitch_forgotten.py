"""A sitting left running: noticed, and its last tap offered as its end."""

from datetime import datetime
from zoneinfo import ZoneInfo

import pytest
from playwright.sync_api import expect

from tests.stitching.conftest import ago

SITTING = "00000000-0000-7000-8000-00000000000a"
LATER = "00000000-0000-7000-8000-00000000000b"


def offered(desk):
    """Open Stitch, and give the end that is offered for a sitting left running, written down by a touch."""
    desk.open().locator("dialog .main").click()
    desk.wait_for("sitting", "Begin")
    return next(entry["end"] for entry in desk.snapshot()["tail"] if entry["kind"] == "amend")


def taps(*ats):
    return [{"kind": "stitches", "row": 1, "by": 30, "at": at} for at in ats]


def test_a_sitting_left_running_is_noticed_and_its_last_tap_offered_as_its_end(desk):
    desk.project()
    begin, last = ago(hours=9), ago(hours=8)
    desk.journal(
        {"kind": "begin", "id": SITTING, "at": begin}, {"kind": "stitches", "row": 1, "by": 30, "at": last}
    )
    page = desk.open()
    page.get_by_role("heading", name="A sitting is still running").wait_for()
    page.locator("dialog .main").click()
    desk.wait_for("sitting", "Begin")
    found = desk.snapshot()
    assert found["sitting"] is None
    amended = found["tail"][-1]
    assert (amended["kind"], amended["begin"], amended["end"]) == ("amend", begin, last)


@pytest.mark.browser_context_args(timezone_id="Asia/Tokyo")  # her account is in London
def test_when_it_ended_is_told_as_her_own_wall_shows_it(desk):
    desk.project()
    last = ago(hours=8)
    desk.journal({"kind": "begin", "id": SITTING, "at": ago(hours=9)})
    desk.journal({"kind": "stitches", "row": 1, "by": 30, "at": last})
    page = desk.open()
    hers = datetime.fromisoformat(last).astimezone(ZoneInfo("Europe/London"))
    expect(page.locator("dialog .main")).to_contain_text(f"{hers:%H:%M}")


def test_what_was_tapped_days_after_one_left_running_is_not_offered_as_its_end(desk):
    desk.project()
    last, later = ago(hours=73), {"kind": "begin", "id": LATER, "at": ago(hours=3)}
    desk.journal({"kind": "begin", "id": SITTING, "at": ago(hours=74)}, *taps(last), later)
    desk.journal(*taps(ago(hours=2)), {"kind": "end", "sitting": LATER, "at": ago(hours=1)})
    assert offered(desk) == last


def test_a_pause_of_over_two_hours_ends_one_left_running(desk):
    desk.project()
    last = ago(hours=8)
    desk.journal({"kind": "begin", "id": SITTING, "at": ago(hours=9)}, *taps(last, ago(hours=5)))
    assert offered(desk) == last


def test_a_tap_dated_ahead_hides_none_left_running(desk):
    desk.project()
    last = ago(hours=8)
    desk.journal({"kind": "begin", "id": SITTING, "at": ago(hours=9)}, *taps(last, ago(days=-400)))
    assert offered(desk) == last


def test_one_whose_taps_this_phone_does_not_have_is_left_to_fix_times(desk):
    desk.project()
    desk.journal({"kind": "begin", "id": SITTING, "at": ago(days=3)}, *taps(ago(days=3)))
    desk.journal(*taps(*(ago(hours=3, seconds=-n) for n in range(60))))
    page = desk.open()
    expect(page.locator("dialog")).to_contain_text("its last tap is not kept here")
    expect(page.locator("dialog").get_by_role("button", name="Strike it out")).to_have_count(0)
    page.get_by_role("link", name="Fix times").click()
    expect(page.get_by_role("heading", name="Fix times")).to_be_visible()


def test_a_sitting_in_which_nothing_was_tapped_can_be_struck_out(desk):
    desk.project()
    desk.journal({"kind": "begin", "id": SITTING, "at": ago(hours=9)})
    desk.open()
    desk.answer("Strike it out")
    desk.wait_for("sitting", "Begin")
    assert desk.snapshot()["tail"][-1]["struck"] is True


def test_a_sitting_that_runs_on_is_not_questioned(desk):
    desk.project()
    desk.journal({"kind": "begin", "id": SITTING, "at": ago(hours=2)})
    desk.journal({"kind": "stitches", "row": 1, "by": 30, "at": ago(minutes=40)})
    page = desk.open()
    page.wait_for_timeout(300)
    assert page.locator("dialog").count() == 0
    assert desk.slot("sitting") == "120 min"
