from uuid import uuid4

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from sqlalchemy import event, select

from webapp.db import db
from webapp.journal.moments import write
from webapp.projects.models import Project
from webapp.reminders.frames import held

OFF = "is still on the hoop. Take it off for the night."


def said(client):
    """Draw the notices alone, on one line."""
    return " ".join(client.get("/frame/banner").text.split())


@pytest.fixture
def lanterns(alice, new_project):
    return new_project(alice)


def test_it_works(alice, lanterns, hold):
    hold(alice, lanterns, "on")
    assert f'<b data-slot="title">Harbour lanterns</b> {OFF}' in said(alice)


def test_it_stands_above_every_page(alice, lanterns, hold):
    hold(alice, lanterns, "on")
    for address in ("/projects", f"/projects/{lanterns}", "/hours", "/hours/sittings", "/cloth", "/account"):
        page = alice.get(address)
        assert page.status_code == 200, address
        before_main = " ".join(page.text.split("<main")[0].split())
        assert f"Harbour lanterns</b> {OFF}" in before_main, address


@pytest.mark.parametrize(
    ("kind", "state", "words"),
    [
        ("hoop", "on", OFF),
        ("hoop", "slack", OFF),
        ("clamps", "on", "is still in clamps, which can lie on stitches. Take it off for the night."),
        ("scroll", "on", "is still tight on the scroll frame. Slacken it for the night."),
        ("scroll", "slack", ""),
        ("stretched", "on", ""),
        ("hand", "on", ""),
        ("hoop", "off", ""),
    ],
)
def test_its_kind_decides_what_is_asked(alice, new_project, hold, kind, state, words):
    hold(alice, new_project(alice, frame=kind), state)
    assert (words in said(alice)) if words else said(alice) == ""


def test_clamps_are_said_first(alice, new_project, hold):
    for title, kind in (("Quince tree", "scroll"), ("Moth", "hoop"), ("Sampler", "clamps")):
        hold(alice, new_project(alice, title=title, frame=kind), "on")
    notices = said(alice)
    assert notices.index("Sampler") < notices.index("Moth") < notices.index("Quince tree")


def test_before_bedtime_and_after_noon_nothing_is_said(alice, lanterns, hold, at_night):
    hold(alice, lanterns, "on")
    for moment, due in (("13T22:29", False), ("13T22:30", True), ("14T11:59", True), ("14T12:00", False)):
        at_night.move_to(f"2026-02-{moment}:00Z")
        assert (said(alice) != "") == due, moment


def test_what_was_put_on_this_morning_waits_for_the_evening(alice, lanterns, hold, at_night):
    at_night.move_to("2026-02-14T09:05:00Z")
    hold(alice, lanterns, "off", at="2026-02-13T20:00:00.000Z")
    hold(alice, lanterns, "on", at="2026-02-14T09:00:00.000Z")
    hold(alice, lanterns, "slack", at="2026-02-14T09:01:00.000Z")
    assert said(alice) == ""
    at_night.move_to("2026-02-14T22:30:00Z")
    assert OFF in said(alice)


def test_put_on_late_and_slackened_in_the_morning_it_is_still_said(alice, lanterns, hold, at_night):
    at_night.move_to("2026-02-14T09:05:00Z")
    hold(alice, lanterns, "on", at="2026-02-13T23:40:00.000Z")
    hold(alice, lanterns, "slack", at="2026-02-14T09:00:00.000Z")
    assert OFF in said(alice)


@given(st.lists(st.tuples(st.sampled_from(["on", "slack", "off"]), st.integers(0, 5)), max_size=8))
@settings(max_examples=15, suppress_health_check=[HealthCheck.function_scoped_fixture])
def test_house_and_snapshot_agree_since_when(app, alice, new_project, hold, states):
    project = new_project(alice)
    for state, minute in states:  # as they come, in whatever order and at the same moment
        hold(alice, project, state, at=f"2026-02-13T20:0{minute}:00.000Z")
    frame = alice.get(f"/projects/{project}/snapshot").json["frame"]
    with app.app_context():
        owner = db.session.scalar(select(Project.stitcher))
        (one,) = (one for one in held(owner) if one.project == str(project))
    assert one.state == (frame and frame["state"])
    if one.state in ("on", "slack"):
        assert write(one.since) == frame["since"]


def test_the_latest_by_its_own_time_holds(alice, lanterns, hold):
    hold(alice, lanterns, "off", at="2026-02-13T21:00:00.000Z")
    hold(alice, lanterns, "on", at="2026-02-13T20:00:00.000Z")
    assert said(alice) == ""


def test_what_was_undone_is_not_said(alice, lanterns, hold):
    entry = hold(alice, lanterns, "on")
    undo = {"id": str(uuid4()), "project": str(lanterns), "kind": "undo", "entry": entry}
    undo["at"] = "2026-02-13T20:01:00.000Z"
    alice.post("/journal", json={"sent_at": "2026-02-13T23:30:00.000Z", "entries": [undo]})
    assert said(alice) == ""


def test_one_tap_takes_it_off_and_leads_back(alice, lanterns, hold):
    hold(alice, lanterns, "on")
    back = {"Referer": "http://localhost/hours?week=2026-W06"}
    answer = alice.post(f"/frame/{lanterns}", data={"state": "off"}, headers=back)
    assert (answer.status_code, answer.location) == (303, "/hours?week=2026-W06")
    assert said(alice) == ""
    assert alice.get(f"/projects/{lanterns}/snapshot").json["frame"]["state"] == "off"


@pytest.mark.parametrize(
    "referer", ["", "http://elsewhere.example/", "//elsewhere.example", "http://localhost//x.example"]
)
def test_it_never_leads_to_another_site(alice, lanterns, referer):
    answer = alice.post(f"/frame/{lanterns}", data={"state": "off"}, headers={"Referer": referer})
    assert answer.location == "/projects"


@pytest.mark.parametrize(
    "body", [{}, {"state": ""}, {"state": "loose"}, {"state": "<b>"}, {"state": "off" * 9999}]
)
def test_a_state_that_is_none_is_answered_by_a_sentence(alice, lanterns, hold, body):
    hold(alice, lanterns, "on")
    answer = alice.post(f"/frame/{lanterns}", data=body)
    assert answer.status_code == 422
    assert "The frame can be on, slack or off." in answer.text
    assert OFF in said(alice)


def test_charlie_is_told_nothing_and_changes_nothing_of_alices(alice, charlie, lanterns, hold):
    hold(alice, lanterns, "on")
    assert said(charlie) == ""
    assert charlie.post(f"/frame/{lanterns}", data={"state": "off"}).status_code == 404
    assert OFF in said(alice)


def test_one_who_is_signed_out_is_told_nothing_and_not_led_away(client):
    answer = client.get("/frame/banner")
    assert (answer.status_code, answer.text.strip()) == (200, "")


def test_a_title_is_never_markup(alice, new_project, hold):
    hold(alice, new_project(alice, title="<b>Moth</b>"), "on")
    assert "&lt;b&gt;Moth&lt;/b&gt;" in said(alice)


def test_it_costs_nothing_by_day_and_one_statement_that_an_index_answers_by_night(
    app, alice, new_project, hold, at_night
):
    for n in range(3):
        hold(alice, new_project(alice, title=f"Moth {n}"), "on")
    with app.app_context():
        at_night.move_to("2026-02-13T15:00:00Z")
        assert asked(alice) == []
        at_night.move_to("2026-02-13T23:30:00Z")
        (statement,) = asked(alice)
        with db.engine.connect() as connection:
            plan = connection.exec_driver_sql("EXPLAIN QUERY PLAN " + statement[0], statement[1]).all()
    assert "frame_by_time" in str(plan)
    assert "SCAN" not in str(plan)


def asked(client):
    """List the statements that read entries while the notices are drawn."""
    found = []

    def see(_connection, _cursor, statement, parameters, *_):
        if "entry" in statement:
            found.append((statement, parameters))

    event.listen(db.engine, "before_cursor_execute", see)
    said(client)
    event.remove(db.engine, "before_cursor_execute", see)
    return found
