"""How far thread reaches for a project: out of her stash, what she said is left, and the journal."""

import re
from datetime import UTC, datetime, timedelta

import pytest
import time_machine
from sqlalchemy import event

from tests.threads.lines import COTTON, ON_14, TWO
from tests.threads.stashed import asked, keep, left, legend, line, part, stitched
from webapp.db import db
from webapp.threads.estimate import Counts, estimate
from webapp.threads.reach import of, reaching

NOON = datetime(2026, 2, 3, 12, tzinfo=UTC)
TAKES = estimate(
    ON_14, Counts(full=2000), TWO._replace(loop=True), COTTON
).each  # of the needle's two strands


def skeins(number):
    """Work out to how many crosses so many skeins reach, surely and perhaps."""
    as_sold = [mm * 2 / 6 for mm in (TAKES.high, TAKES.low)]
    return [int(number * 8000 / each) for each in as_sold]  # a skein of 8 m: TRADE [M1]


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


# The page


def test_the_page_says_what_reaches_and_what_to_buy_of_the_same_lot_now(app, alice, project):
    legend(
        app,
        project,
        line("Moss 12", 2000, symbol="●"),
        line("Plum", 300, kind="silk"),
        line("Ecru", 50),
    )
    keep(app, project, "Moss 12", 0.75, lot="7A")
    keep(app, project, "Ecru")
    page = alice.get(f"/projects/{project}/thread/running").text
    found = re.findall(r"<h2>(.*?)</h2>", page)
    assert found == ["Not enough", "Not known", "Surely enough"]
    assert "Buy one more skein of the same lot now (7A)." in page
    assert "What there is of it is not known." in page
    for words in ("does not touch the old", "one strand of each", "unpick to an edge"):
        assert words in page


def test_what_is_left_is_entered_as_lengths(app, alice, project):
    (moss,) = legend(app, project, line("Moss 12", 2000))
    readings, address = (f"/projects/{project}/thread/{page}" for page in ("readings", "running"))
    answer = alice.post(readings, data={"what": "left", "line": str(moss), "much": "4 m"})
    assert (answer.status_code, answer.location) == (303, address)
    assert asked(app, project, of) == {"Moss 12": pytest.approx(skeins(0.5), abs=1)}
    assert "4.3\N{NO-BREAK SPACE}yd left" in alice.get(address).text


def test_another_stitchers_project_is_not_there(app, charlie, project):
    legend(app, project, line("Moss 12", 2000))
    assert charlie.get(f"/projects/{project}/thread/running").status_code == 404


# What a phone carries of it


def carried(client, project):
    return {
        one["key"]: one["lasts"] for one in client.get(f"/projects/{project}/snapshot").json["plan"]["legend"]
    }


def test_a_phone_is_told_when_thread_is_kept_counted_or_put_away(app, alice, project):
    legend(app, project, line("Moss 12", 2000))
    assert alice.post("/thread/stash", data={"thread": "moss 12"}).status_code == 303
    assert carried(alice, project) == {"Moss 12": pytest.approx(skeins(1), abs=1)}
    before = alice.get(f"/projects/{project}/snapshot").json["plan"]["revision"]
    id = re.search(r"/thread/stash/([0-9a-f-]{36})", alice.get("/thread/stash").text).group(1)
    alice.post(f"/thread/stash/{id}", data={"skeins": "2"})
    assert carried(alice, project) == {"Moss 12": pytest.approx(skeins(2), abs=1)}
    assert alice.get(f"/projects/{project}/snapshot").json["plan"]["revision"] > before
    alice.post(f"/thread/stash/{id}", data={"thread": "Fern 3"})
    assert carried(alice, project) == {"Moss 12": None}
    alice.post(f"/thread/stash/{id}", data={"thread": "Moss 12"})
    alice.post(f"/thread/stash/{id}/away", data={"away": "yes"})
    assert carried(alice, project) == {"Moss 12": None}


def test_a_phone_is_told_when_another_project_comes_to_share_a_thread(app, alice, project, new_project):
    other = new_project(alice, title="Jug", state="in hand")
    legend(app, project, line("Moss 12", 2000))
    alice.post("/thread/stash", data={"thread": "Moss 12", "skeins": "2"})
    assert carried(alice, project) == {"Moss 12": pytest.approx(skeins(2), abs=1)}
    (theirs,) = legend(app, other, line("Moss 12", 2000))
    alice.post(
        f"/projects/{other}/thread/readings", data={"what": "left", "line": str(theirs), "much": "2 skeins"}
    )
    assert carried(alice, project) == {"Moss 12": pytest.approx(skeins(1), abs=1)}


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


def test_a_phone_is_told_when_another_project_is_taken_in_hand_or_put_away(app, alice, project, new_project):
    other = new_project(alice, title="Jug")
    for one in (project, other):
        legend(app, one, line("Moss 12", 2000))
    alice.post("/thread/stash", data={"thread": "Moss 12", "skeins": "2"})
    assert carried(alice, project) == {"Moss 12": pytest.approx(skeins(2), abs=1)}
    alice.post(f"/projects/{other}/state", data={"state": "in hand"})
    assert carried(alice, project) == {"Moss 12": pytest.approx(skeins(1), abs=1)}
    alice.post(f"/projects/{other}/away", data={"away": "yes"})
    assert carried(alice, project) == {"Moss 12": pytest.approx(skeins(2), abs=1)}
