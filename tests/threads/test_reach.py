"""How far thread reaches for a project: out of her stash, what she said is left, and the journal."""

from datetime import UTC, datetime, timedelta

import pytest
import time_machine
from sqlalchemy import event

from tests.threads.lines import skeins
from tests.threads.stashed import asked, keep, left, legend, line, part, stitched
from webapp.db import db
from webapp.threads.reach import of, reaching

NOON = datetime(2026, 2, 3, 12, tzinfo=UTC)


@pytest.fixture
def project(alice, new_project):
    return new_project(alice, state="in hand")


@pytest.fixture
def evening():
    with time_machine.travel(NOON, tick=False) as traveller:
        yield traveller


def test_what_nothing_is_known_of_is_left_out(app, project):
    legend(app, project, line("Moss 12", 2000))
    assert asked(app, project, of) == {}


def test_a_skein_of_the_stash_reaches_as_far_as_it_is_estimated_to(app, project):
    legend(app, project, line("Moss 12", 2000))
    keep(app, project, "MOSS 12")
    assert asked(app, project, of) == {"Moss 12": pytest.approx(skeins(1), abs=1)}


def test_it_stays_where_it_is_as_she_stitches_and_what_was_spent_before_the_count_comes_to_it(
    app, project, evening
):
    legend(app, project, line("Moss 12", 2000))
    stitched(app, project, "Moss 12", 300)
    evening.shift(timedelta(hours=1))
    keep(app, project, "Moss 12")
    reach = [300 + crosses for crosses in skeins(1)]
    assert asked(app, project, of) == {"Moss 12": pytest.approx(reach, abs=1)}
    evening.shift(timedelta(hours=1))
    stitched(app, project, "Moss 12", 500)
    stitched(app, project, "Moss 12", -40, why="unpicked")
    assert asked(app, project, of) == {"Moss 12": pytest.approx(reach, abs=1)}


def test_done_before_and_put_right_spends_no_thread(app, project, evening):
    legend(app, project, line("Moss 12", 2000))
    keep(app, project, "Moss 12")
    evening.shift(timedelta(hours=1))
    stitched(app, project, "Moss 12", 300, why="before")
    stitched(app, project, "Moss 12", -100, why="corrected")
    assert asked(app, project, of) == {"Moss 12": pytest.approx(skeins(1), abs=1)}


def test_the_later_of_count_and_reading_holds(app, project, evening):
    (moss,) = legend(app, project, line("Moss 12", 2000))
    keep(app, project, "Moss 12", 2)
    evening.shift(timedelta(hours=1))
    left(app, project, moss, 4000)
    assert asked(app, project, of) == {"Moss 12": pytest.approx(skeins(0.5), abs=1)}
    evening.shift(timedelta(hours=1))
    keep(app, project, "Moss 12", 1)
    assert asked(app, project, of) == {"Moss 12": pytest.approx(skeins(1.5), abs=1)}


def test_backstitch_of_the_same_thread_is_set_aside(app, project):
    legend(app, project, line("Moss 12", 2000, back=600))
    keep(app, project, "Moss 12")
    sure, perhaps = asked(app, project, of)["Moss 12"]
    assert sure < skeins(1)[0] - 100
    stitched(app, project, "Moss 12", 600, **{"pass": "back", "why": "before"})  # done, by other thread
    assert asked(app, project, of)["Moss 12"][0] > sure
    assert perhaps < skeins(1)[1] - 100


def test_a_blend_reaches_as_far_as_its_shortest_part_and_not_where_one_is_unknown(app, project):
    blend = {"parts": [part("Moss 12", strands=1), part("Frost", "filament", 1)], "full": 500}
    legend(app, project, blend)
    keep(app, project, "Moss 12")
    assert asked(app, project, of) == {}
    keep(app, project, "Frost", 0, kind="filament", lengths=1000)
    (reach,) = asked(app, project, reaching)
    assert reach.lasts.verdict == "not"
    assert reach.lasts.crosses == reach.parts[1][1].crosses
    assert reach.parts[0][1].verdict == "surely"


def test_what_is_left_of_a_blend_is_said_of_its_shortest_part(app, project):
    blend = {"parts": [part("Moss 12", strands=1), part("Frost", "filament", 1)], "full": 500}
    (both,) = legend(app, project, blend)
    left(app, project, both, 500)
    (reach,) = asked(app, project, reaching)
    assert reach.lasts.crosses == min(lasts.crosses for _use, lasts, _hand in reach.parts)


def test_a_thread_is_shared_with_lines_here_and_projects_in_hand_but_not_with_those_only_planned(
    app, alice, project, new_project
):
    resting, planned = (
        new_project(alice, title=t, state=s) for t, s in (("Jug", "resting"), ("Gate", "planned"))
    )
    legend(
        app, project, line("Moss 12", 2000, symbol="●"), line("Fern 3", 2000, instead="moss 12", symbol="+")
    )
    keep(app, project, "Moss 12", 2)
    halves = asked(app, project, of)
    assert halves == {name: pytest.approx(skeins(1), abs=1) for name in ("Moss 12", "Fern 3")}
    legend(app, planned, line("Moss 12", 2000))
    assert asked(app, project, of) == halves
    legend(app, resting, line("Moss 12", 2000))
    assert asked(app, project, of)["Moss 12"] == pytest.approx(skeins(2 / 3), abs=1)
    assert asked(app, project, reaching)[0].others == ["+", "Jug"]


def test_what_another_project_spent_is_gone(app, alice, project, new_project, evening):
    other = new_project(alice, title="Jug", state="finished")
    legend(app, other, line("Moss 12", 1000))
    legend(app, project, line("Moss 12", 2000))
    keep(app, project, "Moss 12")
    evening.shift(timedelta(hours=1))
    stitched(app, other, "Moss 12", 500)
    sure, perhaps = asked(app, project, of)["Moss 12"]
    assert sure == pytest.approx(skeins(1)[0] - 500, abs=25)
    assert perhaps == pytest.approx(skeins(1)[1] - 500, abs=25)


def test_another_stitchers_stash_is_not_hers(app, alice, charlie, project, new_project):
    theirs = new_project(charlie)
    legend(app, project, line("Moss 12", 2000))
    keep(app, theirs, "Moss 12")
    assert asked(app, project, of) == {}


def test_what_a_project_put_away_spent_is_gone_too(app, alice, project, new_project, evening):
    other = new_project(alice, title="Jug", state="in hand")
    legend(app, other, line("Moss 12", 1000))
    legend(app, project, line("Moss 12", 2000))
    keep(app, project, "Moss 12")
    shared = asked(app, project, of)["Moss 12"]
    evening.shift(timedelta(hours=1))
    stitched(app, other, "Moss 12", 500)
    alice.post(f"/projects/{other}/away", data={"away": "yes"})
    alone = asked(app, project, of)["Moss 12"]
    assert alone[0] == pytest.approx(skeins(1)[0] - 500, abs=25)
    assert alone[0] > shared[0], "it has no claim any more"


def test_what_was_spent_is_found_by_an_index(app, project):
    legend(app, project, line("Moss 12", 2000))
    keep(app, project, "Moss 12")
    ran = []

    def note(_connection, _cursor, statement, parameters, _context, _many):
        if "FROM entry" in statement:
            ran.append((statement, parameters))

    with app.app_context():
        event.listen(db.engine, "before_cursor_execute", note)
    asked(app, project, of)
    with app.app_context(), db.engine.connect() as connection:
        event.remove(db.engine, "before_cursor_execute", note)
        plans = [
            " ".join(row[3] for row in connection.exec_driver_sql(f"EXPLAIN QUERY PLAN {said}", values))
            for said, values in ran
        ]
    assert plans
    assert [plan for plan in plans if "SEARCH entry USING INDEX" not in plan] == []
