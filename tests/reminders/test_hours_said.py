"""Hours on the frame without a break, and what she asks to hear again."""

from datetime import time, timedelta

import pytest

from tests.reminders.evening import BEDTIME, titles
from webapp.accounts.models import Account
from webapp.db import db, writing
from webapp.reminders import choosing
from webapp.reminders.models import ReminderChoice

MINUTE = timedelta(minutes=1)


def test_hours_on_the_frame_are_said_too(evening):
    evening.choose(hours=2, at_bedtime=False)
    browser = evening.subscribe()
    evening.round(BEDTIME - 31 * MINUTE)
    assert browser.came == []
    evening.round(BEDTIME - 30 * MINUTE)
    assert browser.came[0]["said"]["body"].startswith("It has been on for hours")
    assert evening.told() == [("hours", "sent")]


def test_hours_tried_again_are_not_said_of_what_was_put_on_just_now(evening, alice, new_project, hold):
    """It was of whatever was on a frame by then: "it has been on for hours", of two minutes."""
    evening.choose(hours=2, show_title=True)
    evening.settle(bedtime=time(1))
    browser = evening.subscribe()
    browser.answers = [(503, {})]
    evening.round(BEDTIME - 30 * MINUTE)
    hold(alice, new_project(alice, title="Moth"), "on", at="2026-02-13T22:01:00.000Z")
    assert evening.round(BEDTIME - 27 * MINUTE) == 1
    assert titles(browser) == ["Harbour lanterns is still on the hoop."] * 2


def test_hours_tried_again_after_it_came_off_are_not_said_at_all(evening, alice, new_project, hold):
    evening.choose(hours=2)
    evening.settle(bedtime=time(1))
    browser = evening.subscribe()
    browser.answers = [(503, {})]
    evening.round(BEDTIME - 30 * MINUTE)
    project = alice.get("/projects").text.split("/projects/")[1][:36]
    hold(alice, project, "off", at="2026-02-13T22:01:00.000Z")
    hold(alice, new_project(alice, title="Moth"), "on", at="2026-02-13T22:02:00.000Z")
    assert evening.round(BEDTIME - 27 * MINUTE) == 0
    assert (len(browser.came), evening.told()) == (1, [])


@pytest.mark.parametrize("hours", [2, None])
def test_in_half_an_hour_said_by_day_leaves_bedtime_its_own_word(evening, hours):
    browser = evening.subscribe()
    evening.choose(hours=hours)
    afternoon = BEDTIME - timedelta(hours=4)
    with writing():
        account, choice = (db.session.get_one(one, evening.stitcher) for one in (Account, ReminderChoice))
        choosing.hear_again(account, choice, afternoon, afternoon)
        db.session.commit()
    evening.round(afternoon + 30 * MINUTE)
    assert len(browser.came) == 1
    evening.round()
    assert browser.came[-1]["said"]["body"] == "Take it off for the night."
