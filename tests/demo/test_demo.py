"""The demonstration's house: believable, and everything shown follows from its entries."""

from collections import Counter
from datetime import UTC, datetime, timedelta
from itertools import pairwise

import pytest

from tests.conftest import browser_of
from webapp import create_app
from webapp.config import Config
from webapp.db import db
from webapp.demo.filling import demo_config, diary, fill
from webapp.demo.scenario import NAME, PASSPHRASE
from webapp.journal import moments
from webapp.journal.audit import differences
from webapp.journal.models import Entry, Sitting
from webapp.projects.models import Project
from webapp.threads.models import LegendLine


@pytest.fixture(scope="module")
def house(tmp_path_factory):
    config = demo_config(Config.from_environment({"EVENROW_DATA": str(tmp_path_factory.mktemp("demo"))}))
    fill(config)
    return create_app(config)


@pytest.fixture
def demo(house):
    with house.app_context():
        yield house
        db.engine.dispose()


def test_it_has_projects_in_every_state_by_rows_and_by_blocks(demo):
    projects = list(db.session.query(Project))
    assert {p.state for p in projects} == {"planned", "in hand", "resting", "finished"}
    assert {p.working for p in projects} == {"rows", "blocks"}
    assert any(p.put_away for p in projects)


def test_its_totals_are_what_its_entries_come_to(demo):
    assert list(differences()) == []


def test_it_has_months_of_sittings_none_upon_another_and_none_to_come(demo):
    sittings = sorted(db.session.query(Sitting), key=lambda s: s.begin)
    assert sittings[-1].end - sittings[0].begin > timedelta(days=120)
    assert all(a.end <= b.begin for a, b in pairwise(sittings))
    assert sittings[-1].end <= datetime.now(UTC)


def test_its_pace_is_believable_in_every_sitting_of_half_an_hour_or_more(demo):
    """25 to 150 stitches an hour; published paces lie between 25 and 100 (stitchingsecrets.com/?p=1423,
    readwhat42.blogspot.com/2006/04, cross-stitch.dreamwidth.org/2016/08/17)."""
    stitched = list(db.session.query(Entry).filter(Entry.kind == "stitches", Entry.by > 0))
    for sitting in db.session.query(Sitting):
        hours = (sitting.end - sitting.begin) / timedelta(hours=1)
        laid = sum(
            e.by for e in stitched if e.project == sitting.project and sitting.begin <= e.at <= sitting.end
        )
        if hours >= 0.5:
            assert 25 <= laid / hours <= 150, (sitting.begin, laid, hours)


def test_a_finished_project_is_done_to_its_last_row(demo):
    finished = db.session.query(Project).filter(Project.state == "finished").one()
    done = db.session.query(Entry).filter(Entry.project == finished.id, Entry.kind == "done").count()
    assert done == finished.height


def test_its_sign_in_is_the_one_that_is_printed(house):
    client = browser_of(house)
    answer = client.post("/sign-in", data={"name": NAME, "passphrase": PASSPHRASE})
    assert answer.status_code == 303
    assert "Harbour lanterns" in client.get("/projects").text


def test_its_ids_and_moments_rise_within_a_project():
    for _story, entries in diary(datetime(2026, 2, 8, 12, tzinfo=UTC)):
        ats = [moments.read(e["at"]) for e in entries]
        assert ats == sorted(ats)
        assert max(Counter(e["id"] for e in entries).values(), default=1) == 1


def test_every_project_has_a_legend_that_agrees_with_its_chart(demo):
    for project in db.session.query(Project):
        lines = db.session.query(LegendLine).filter(LegendLine.project == project.id).all()
        assert sum(line.full for line in lines) == project.chart_total
        assert [one["key"] for one in project.legend] == [line.key for line in lines]


def test_every_stitch_is_of_a_thread_of_its_legend_and_none_is_laid_beyond_it(demo):
    for project in db.session.query(Project):
        lines = db.session.query(LegendLine).filter(LegendLine.project == project.id).all()
        laid = Counter()
        for entry in db.session.query(Entry).filter(Entry.project == project.id, Entry.kind == "stitches"):
            laid[entry.fields["thread"]] += entry.by
        assert set(laid) <= {line.key for line in lines}
        if project.state == "finished":
            assert laid == {line.key: line.full for line in lines}
        assert all(laid[line.key] <= line.full for line in lines)
