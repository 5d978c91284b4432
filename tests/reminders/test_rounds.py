from concurrent.futures import ThreadPoolExecutor
from dataclasses import replace
from datetime import date, timedelta
from itertools import count

import pytest
from sqlalchemy import delete, event, update

from tests.reminders.evening import BEDTIME, titles
from webapp.accounts.models import SignedIn
from webapp.db import db, writing
from webapp.reminders import ledger, rounds
from webapp.reminders.vapid import make_key

MINUTE = timedelta(minutes=1)


def test_it_works(evening):
    browser = evening.subscribe()
    assert evening.round(BEDTIME - MINUTE) == 0
    assert evening.round() == 1
    assert titles(browser) == ["Your work is still on its frame."]
    assert evening.told() == [("bedtime", "sent")]


def test_it_is_said_once_a_night_and_again_the_next(evening):
    browser = evening.subscribe()
    for minutes in (0, 1, 5, 60, 170):
        evening.round(BEDTIME + minutes * MINUTE)
    assert len(browser.came) == 1
    evening.round(BEDTIME + timedelta(days=1))
    assert [came["topic"] for came in browser.came] == ["night-2026-02-13", "night-2026-02-14"]


def test_it_says_nothing_private_unless_she_wants_it(evening):
    browser = evening.subscribe()
    evening.round()
    assert "lanterns" not in str(browser.came)
    evening.choose(show_title=True)
    evening.round(BEDTIME + timedelta(days=1))
    assert titles(browser)[1] == "Harbour lanterns is still on the hoop."


def test_it_keeps_no_longer_than_it_makes_sense(evening):
    browser = evening.subscribe()
    evening.round(BEDTIME + 100 * MINUTE)
    assert browser.came[0]["ttl"] == 80 * 60


def test_a_round_that_takes_long_goes_by_the_clock_and_not_by_when_it_began(evening):
    """What it claims late is its own for a whole lease, and no service keeps it for too long."""
    browser = evening.subscribe()
    times = (BEDTIME + minutes * MINUTE for minutes in count(0, 10))
    assert rounds.run(evening.config, lambda: next(times)) == 1
    (came,) = browser.came
    assert came["ttl"] == (180 - 20) * 60  # put down, claimed, written: each ten minutes later


def test_a_sending_that_breaks_unforeseen_is_noted_and_tried_again(caplog):
    """It would end the round, for everybody, and again after each lease."""
    with ThreadPoolExecutor() as pool:
        assert rounds.came_of(pool.submit(lambda: 1 // 0)).what == "later"
    assert "ZeroDivisionError" in caplog.text


def test_one_that_cannot_be_written_waits_and_holds_up_nobody_elses(evening, caplog):
    browser = evening.subscribe()
    rounds.put_down(BEDTIME)
    with writing():
        claimed = ledger.claim(BEDTIME)
        db.session.commit()
    evening.settle(zone="No/Where")  # the machine has lost a zone
    assert rounds.say(evening.config, claimed, lambda: BEDTIME) == 0
    assert "No/Where" in caplog.text
    evening.settle(zone="Europe/London")
    assert evening.round(BEDTIME) == 0
    assert evening.round(BEDTIME + MINUTE) == 1
    assert len(browser.came) == 1


def test_every_phone_of_hers_is_told(evening):
    browsers = [evening.subscribe() for _ in range(3)]
    assert evening.round() == 1
    assert [len(one.came) for one in browsers] == [1, 1, 1]


def test_taken_off_meanwhile_it_is_not_said_and_put_on_again_it_is(evening, alice, hold):
    browser = evening.subscribe()
    rounds.put_down(BEDTIME)
    project = alice.get("/projects").text.split("/projects/")[1][:36]
    hold(alice, project, "off", at="2026-02-13T21:00:00.000Z")
    assert evening.round() == 0
    assert (evening.told(), browser.came) == ([], [])
    hold(alice, project, "on", at="2026-02-13T22:40:00.000Z")
    assert evening.round(BEDTIME + 69 * MINUTE) == 0
    assert evening.round(BEDTIME + 70 * MINUTE) == 1


@pytest.mark.parametrize("choice", [{"left": date(2026, 2, 13)}, {"away": date(2026, 2, 20)}])
def test_left_in_peace_after_it_came_due_she_hears_nothing(evening, choice):
    browser = evening.subscribe()
    rounds.put_down(BEDTIME)
    evening.choose(**choice)
    evening.round()
    assert (evening.told(), browser.came) == ([], [])


def test_a_phone_she_signed_out_of_is_told_nothing(evening):
    browser = evening.subscribe()
    with writing():
        db.session.execute(delete(SignedIn))
        db.session.commit()
    evening.round()
    assert browser.came == []


def test_signed_out_at_bedtime_and_in_again_after_it_she_is_told(evening):
    evening.subscribe()
    with writing():
        db.session.execute(update(SignedIn).values(expires=BEDTIME - MINUTE))
        db.session.commit()
    evening.round()
    assert evening.told() == []
    with writing():
        db.session.execute(update(SignedIn).values(expires=BEDTIME + timedelta(days=1)))
        db.session.commit()
    assert evening.round(BEDTIME + MINUTE) == 1


@pytest.mark.parametrize("status", [404, 410])
def test_a_phone_that_is_gone_is_forgotten_and_the_app_says_so(evening, status):
    gone, there = evening.subscribe(), evening.subscribe()
    gone.answers = [(status, {})]
    assert evening.round() == 1
    assert (evening.phones(), len(there.came)) == (1, 1)
    assert "No reminder reaches" in evening.trouble()


@pytest.mark.parametrize("status", [429, 500, 503])
def test_what_fails_for_now_is_tried_again_for_that_phone_alone(evening, status):
    weak, there = evening.subscribe(), evening.subscribe()
    weak.answers = [(status, {}), (status, {})]
    for minutes in range(6):
        evening.round(BEDTIME + minutes * MINUTE)
    assert (len(weak.came), len(there.came)) == (3, 1)
    assert evening.told() == [("bedtime", "sent")]
    assert evening.trouble() is None


def test_it_is_tried_no_sooner_than_the_service_asks(evening):
    browser = evening.subscribe()
    browser.answers = [(429, {"Retry-After": "1200"})]
    for minutes in range(20):
        evening.round(BEDTIME + minutes * MINUTE)
    assert len(browser.came) == 1
    evening.round(BEDTIME + 20 * MINUTE)
    assert len(browser.came) == 2


def test_what_never_gets_through_is_given_up_and_after_two_nights_the_app_says_so(evening):
    browser = evening.subscribe()
    for night in range(2):
        assert evening.trouble() is None
        browser.answers = [(503, {})] * 100
        for minutes in range(0, 240, 5):
            evening.round(BEDTIME + timedelta(days=night) + minutes * MINUTE)
    assert evening.told() == [("bedtime", "missed")] * 2
    assert "twice" in evening.trouble()
    assert len(browser.came) < 50


def test_what_is_too_large_is_sent_in_fewer_words(evening):
    browser = evening.subscribe()
    browser.answers = [(413, {})]
    assert evening.round() == 1
    assert browser.came[1]["said"].keys() == {"tag", "open"}
    assert browser.came[1]["said"]["open"].startswith("/shell/tonight?night=2026-02-13&work=")


def test_what_is_refused_for_good_is_not_tried_again_that_night(evening):
    browser = evening.subscribe()
    browser.answers = [(403, {})]
    for minutes in range(5):
        evening.round(BEDTIME + minutes * MINUTE)
    assert len(browser.came) == 1
    assert evening.told() == [("bedtime", "missed")]


def test_killed_between_sending_and_marking_a_second_takes_the_place_of_the_first(evening):
    browser = evening.subscribe()
    rounds.put_down(BEDTIME)
    with writing():
        (claim,) = ledger.claim(BEDTIME)
        db.session.commit()
    (job,) = rounds.compose(evening.config, claim, BEDTIME).jobs.values()
    assert job().what == "taken"  # and then the power went
    assert evening.round(BEDTIME + MINUTE) == 0
    assert evening.round(BEDTIME + ledger.LEASE) == 1
    assert len(browser.came) == 2
    assert list(browser.standing) == ["night-2026-02-13"]


def test_down_at_bedtime_it_is_sent_late_but_not_too_late(evening):
    browser = evening.subscribe()
    evening.round(BEDTIME + timedelta(hours=3))
    assert browser.came == []
    evening.round(BEDTIME + timedelta(days=1, hours=2, minutes=59))
    assert len(browser.came) == 1


def test_another_key_of_the_house_is_noticed_and_said(evening):
    browser = evening.subscribe()
    (evening.config.data / "vapid.pem").unlink()
    make_key(evening.config.data)
    evening.round()
    assert browser.came == []
    assert "another key" in evening.trouble()


def test_who_was_told_costs_no_more_that_night(evening):
    evening.subscribe()
    evening.round()
    asked = []
    event.listen(db.engine, "before_cursor_execute", lambda *given: asked.append(given[2]))
    evening.round(BEDTIME + MINUTE)
    assert len(asked) <= 5  # where it is night, who was not told, what waits; and no one's works
    assert [one for one in asked if one.startswith(("UPDATE", "INSERT", "BEGIN IMMEDIATE"))] == []


def test_indexes_find_whom_to_remind(evening):
    evening.subscribe()
    asked = []
    event.listen(db.engine, "before_cursor_execute", lambda *given: asked.append(given[2:4]))
    rounds.put_down(BEDTIME)
    (who,) = (one for one in asked if "told" in one[0] and "account" in one[0] and "INSERT" not in one[0])
    with db.engine.connect() as connection:
        plan = [str(row[3]) for row in connection.exec_driver_sql("EXPLAIN QUERY PLAN " + who[0], who[1])]
    through = {step.split()[1] for step in plan if step.startswith("SCAN")}
    assert through <= {"account", "reminder_choice", "CONSTANT"}  # once a round; all else by its key
    assert any("frame_by_time" in step for step in plan)


def test_one_who_chose_nothing_costs_nothing(app, config, alice, new_project, hold):
    hold(alice, new_project(alice), "on")
    with app.app_context():
        assert rounds.run(config, lambda: BEDTIME) == 0


def test_without_a_phone_nothing_is_put_down(evening):
    evening.round()
    assert evening.told() == []


def test_a_house_that_does_not_know_the_service_sends_nothing(evening):
    browser = evening.subscribe()
    assert rounds.run(replace(evening.config, push_services=()), lambda: BEDTIME) == 0
    assert browser.came == []
