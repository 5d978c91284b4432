"""The oldest and the newest pages there are lead to none that is not there."""

import re
from html import unescape

import pytest

from tests.hours.test_hours_week import week_starts_on

OLDEST = [
    "/hours?week=1971-W01",
    "/hours?week=1971-W04",
    "/hours/week?week=1971-W01",
    "/hours/sittings?week=1971-W01",
    "/hours/month?month=1971-01",
    "/hours/month/part?month=1971-01",
    "/hours/year?year=1971",
    "/hours/year/part?year=1971",
]
NEWEST = ["/hours?week=2198-W52", "/hours/month?month=2198-12", "/hours/year?year=2198"]


@pytest.fixture
def sat(alice, new_project, sit):
    """Sittings before the oldest week there is, and in it."""
    lanterns = new_project(alice)
    for day in ("1970-12-30", "1971-01-02", "1971-01-06", "2026-02-10"):
        sit(alice, lanterns, f"{day}T20:00", f"{day}T21:00", stitches=40)


def links(text):
    return {unescape(link) for link in re.findall(r'(?:href|hx-get)="(/hours[^"]*)"', text)}


@pytest.mark.parametrize("first", [0, 3, 6])
@pytest.mark.parametrize("page", [*OLDEST, *NEWEST])
def test_every_link_of_it_leads_somewhere(app, alice, sat, page, first):
    week_starts_on(app, first)
    answer = alice.get(page)
    assert answer.status_code == 200
    assert links(answer.text) != set()
    assert [link for link in links(answer.text) if alice.get(link).status_code != 200] == []


@pytest.mark.parametrize("page", OLDEST)
def test_the_oldest_has_none_earlier(alice, page):
    assert ("Earlier" in alice.get(page).text) == (page == "/hours?week=1971-W04")
    assert "Later" in alice.get(page).text


@pytest.mark.parametrize(
    "page", ["/hours?week=1971-W02", "/hours/month?month=1971-02", "/hours/year?year=1972"]
)
def test_the_one_after_it_leads_back_to_it(alice, page):
    assert "Earlier" in alice.get(page).text
