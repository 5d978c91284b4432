"""When something was is said so that it can be told apart: by the weekday, the date, the year."""

from datetime import datetime
from zoneinfo import ZoneInfo

import pytest
from playwright.sync_api import expect

from tests.stitching.conftest import ago

SITTING = "00000000-0000-7000-8000-00000000000a"
LONDON = ZoneInfo("Europe/London")  # her account's
pytestmark = pytest.mark.browser_context_args(locale="en-GB", timezone_id="Europe/London")


def dated(at):
    """Give the moment on her wall, and what its date needs of the year."""
    hers = datetime.fromisoformat(at).astimezone(LONDON)
    return hers, "" if hers.year == datetime.now(LONDON).year else f" {hers.year}"


@pytest.mark.parametrize("days", [20, 400])
def test_where_she_stopped_is_dated_with_the_year_where_it_is_not_this_one(desk, days):
    desk.project()
    at = ago(days=days)
    desk.journal({"kind": "stitches", "row": 37, "by": 52, "at": at})
    desk.journal({"kind": "end", "sitting": SITTING, "note": "lamp next", "at": at})
    hers, year = dated(at)
    said = desk.open().locator("dialog .card .quiet")
    expect(said).to_have_text(f"{hers.day} {hers:%B}{year}")


@pytest.mark.parametrize(("days", "is_dated"), [(5, False), (7, True), (20, True), (400, True)])
def test_a_sitting_left_running_for_over_six_days_is_said_with_its_date(desk, days, is_dated):
    desk.project()
    begin, last = ago(days=days, hours=1), ago(days=days)
    desk.journal({"kind": "begin", "id": SITTING, "at": begin})
    desk.journal({"kind": "stitches", "row": 1, "by": 30, "at": last})
    page = desk.open()
    for where, at in (("p", begin), (".main", last)):
        hers, year = dated(at)
        said = page.locator(f"dialog {where}")
        for part in (f"{hers:%a}", f"{hers:%H:%M}", *([f"{hers.day} {hers:%b}", year] if is_dated else [])):
            expect(said).to_contain_text(part)
        if not is_dated:
            expect(said).not_to_contain_text(f"{hers:%b}")
