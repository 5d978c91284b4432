"""Her own figure: measured on the cloth, flowing into every estimate, removable; and what a phone carries."""

from uuid import uuid4

import pytest

from tests.threads.legend_forms import keep, load
from webapp.threads.estimate import Counts, estimate
from webapp.threads.geometry import ground_of
from webapp.threads.kinds import worked
from webapp.threads.tables import kinds


def measure(client, project, on, **fields):
    sent = {"id": str(uuid4()), "what": "length", "line": str(on), "stitches": "30", "much": ""}
    return client.post(f"/projects/{project}/thread/readings", data=sent | fields)


def figures(client, project):
    return client.get(f"/projects/{project}/thread.json").json


def test_one_length_stitched_changes_the_estimate_and_is_said(alice, new_project):
    project = new_project(alice)
    line = keep(alice, project, full="12,000")
    before = figures(alice, project)
    assert before["own"] is None
    assert "Reckoned from the drawing of the stitch" in alice.get(f"/projects/{project}/thread").text
    assert measure(alice, project, line, stitches="25").status_code == 303  # few: she takes more thread
    after = figures(alice, project)
    assert after["own"]["factor"] > 1
    usual = [one["lines"][0]["threads"][0]["sold_usual_mm"] for one in (before, after)]
    assert usual[1] > usual[0]
    assert "Reckoned from your own figure: one length on" in alice.get(f"/projects/{project}/thread").text
    assert "25 crosses from one length of 18 in" in alice.get(f"/projects/{project}/thread/readings").text


def test_a_skein_finished_sharpens_it(alice, new_project):
    project = new_project(alice)
    line = keep(alice, project, full="12,000")
    measure(alice, project, line)
    one = figures(alice, project)["own"]
    assert measure(alice, project, line, what="skein", stitches="1,900").status_code == 303
    both = figures(alice, project)["own"]
    assert both["spread"] < one["spread"]
    assert both["rests_on"].startswith("one length and one skein")


@pytest.mark.parametrize(
    ("much", "said", "mm"),
    [
        ("1/2 skein", "4.4 yd left", 4000),
        ("3.5 m", "3.8 yd left", 3500),
        ("2 yd", "2 yd left", 1828.8),
        ("18 in", "0.5 yd left", 457.2),
        ("2", "2 yd left", 1828.8),
        ("0", "0 yd left", 0),
    ],
)
def test_what_is_left_is_kept_and_moves_no_figure(app, alice, new_project, much, said, mm):
    project = new_project(alice)
    line = keep(alice, project)
    assert measure(alice, project, line, what="left", stitches="", much=much).status_code == 303
    assert said in alice.get(f"/projects/{project}/thread/readings").text.replace("\xa0", " ")
    from webapp.db import db
    from webapp.threads.models import ThreadReading

    with app.app_context():
        assert db.session.scalars(db.select(ThreadReading)).one().length == pytest.approx(mm)
    assert figures(alice, project)["own"] is None


def test_a_reading_is_removed_and_the_drawing_holds_again(alice, new_project):
    project = new_project(alice)
    line = keep(alice, project)
    before = figures(alice, project)
    id = uuid4()
    measure(alice, project, line, id=str(id))
    measure(alice, project, line, id=str(id))  # sent twice
    address = f"/projects/{project}/thread/readings"
    assert alice.get(address).text.count("/remove") == 1
    assert alice.post(f"{address}/{id}/remove").status_code == 303
    assert figures(alice, project) == before
    assert alice.post(f"{address}/{id}/remove").status_code == 404


def test_a_reading_outlives_its_line(alice, new_project):
    project = new_project(alice)
    line = keep(alice, project)
    measure(alice, project, line)
    alice.post(f"/projects/{project}/thread/lines/{line}/remove")
    assert "A line that was removed" in alice.get(f"/projects/{project}/thread/readings").text
    assert figures(alice, project)["own"]["factor"] > 0


@pytest.mark.parametrize(
    ("fields", "sentence"),
    [
        ({"stitches": ""}, "Write how many crosses it gave."),
        ({"stitches": "0"}, "Write how many crosses it gave."),
        ({"stitches": "many"}, "Write crosses in whole numbers"),
        ({"stitches": "5000"}, "check the crosses and the length"),
        ({"much": "2 in"}, "A working length is from"),
        ({"much": "long"}, "Write a length"),
        ({"what": "skein", "much": "0"}, "Write how many were finished"),
        ({"what": "skein", "much": "9" * 9}, "Write how much"),
        ({"what": "left", "much": ""}, "Write how much"),
        ({"what": "left", "much": "-2 m"}, "Write how much"),
        ({"what": "left", "much": "99999 m"}, "more than ten kilometres"),
        ({"what": "guess"}, "Choose one of those shown."),
        ({"line": "x"}, "Choose the thread."),
        ({"line": ""}, "Choose the thread."),
        ({"line": str(uuid4())}, "Choose the thread."),
        ({"id": "x"}, "This form was damaged on the way."),
    ],
)
def test_what_cannot_be_meant_is_a_sentence_and_keeps_nothing(alice, new_project, fields, sentence):
    project = new_project(alice)
    answer = measure(alice, project, keep(alice, project), **fields)
    assert answer.status_code == 422
    assert sentence in answer.text
    assert "What you measured" not in alice.get(f"/projects/{project}/thread/readings").text


# What a phone carries


def test_a_phone_carries_of_each_line_what_the_journal_needs(app, alice, new_project):
    project = new_project(alice)
    keep(
        alice,
        project,
        half="3",
        quarter="4",
        three_quarter="5",
        back="6",
        knots="7",
        beads="8",
        instead="Rust",
    )
    how = worked(kinds(), [("cotton", 2)])[0]
    counts = Counts(1240, 3, 4, 5, 6, 7, 8)
    each = estimate(ground_of(14), counts, how, kinds()["cotton"]).each.usual
    (line,) = load(app, project).legend
    assert line.pop("each") == pytest.approx(each, abs=0.006)
    assert line == {
        "key": "Madder",
        "symbol": "X",
        "name": "Rust",
        "colour": "#9b3527",
        "strands": 2,
        "full": 1240,
        "part": 12,
        "back": 6,
        "knot": 15,
        "lasts": None,
    }


def test_what_is_carried_follows_cloth_and_readings_and_raises_the_plans_revision(app, alice, new_project):
    project = new_project(alice)
    line = keep(alice, project)
    seen = [load(app, project)]
    alice.post(f"/projects/{project}", data={"count": "28", "over": "2"})
    assert load(app, project).legend == seen[0].legend  # 28 over two is as 14
    alice.post(f"/projects/{project}", data={"over": "1"})
    seen.append(load(app, project))
    measure(alice, project, line, stitches="40")
    seen.append(load(app, project))
    each = [one.legend[0]["each"] for one in seen]
    assert each[1] < each[0]
    assert each[2] != each[1]
    revisions = [one.plan_revision for one in seen]
    assert revisions == sorted(set(revisions))
    alice.post(f"/projects/{project}/thread/lines/{line}/remove")
    now = load(app, project)
    assert (now.legend, now.plan_revision) == (None, revisions[2] + 1)


def test_a_reading_from_another_cloth_does_not_bring_the_page_down(alice, new_project):
    project = new_project(alice, count=8)
    line = keep(alice, project)
    measure(alice, project, line, stitches="12")
    alice.post(f"/projects/{project}", data={"count": "100"})
    assert alice.get(f"/projects/{project}/thread").status_code == 200
    alice.post(f"/projects/{project}", data={"count": "1", "over": "2"})
    assert alice.get(f"/projects/{project}/thread").status_code == 200
