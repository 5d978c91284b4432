"""What the server works out by statements is what all entries come to, in any order and any batches."""

import json
from collections.abc import Iterator
from uuid import UUID, uuid4

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from sqlalchemy import update

from tests.journal import worlds
from webapp import clock
from webapp.accounts.models import Account
from webapp.db import db
from webapp.journal.audit import differences
from webapp.journal.batch import take
from webapp.journal.models import Total
from webapp.journal.snapshot import plan_of, snapshot_of
from webapp.journal.whole import snapshot
from webapp.projects.models import Project

MANY = settings(
    max_examples=60,
    suppress_health_check=[HealthCheck.function_scoped_fixture, HealthCheck.too_slow],
)


@pytest.fixture
def stitcher(app) -> Iterator[UUID]:
    with app.app_context():
        account = Account(id=uuid4(), zone="Europe/London", created=clock.now())
        db.session.add(account)
        db.session.commit()
        yield account.id


def project_of(stitcher: UUID, plan: dict) -> Project:
    project = Project(
        stitcher=stitcher, id=uuid4(), title="Harbour lanterns", count=14, created=clock.now(), **plan
    )
    db.session.add(project)
    db.session.flush()
    return project


def sent(project: Project, journal: list[dict]) -> list[dict]:
    """Ids are a stitcher's own, so each example gets its own by the project's."""
    text = json.dumps(journal).replace("00000000-0000-7000-8000", str(project.id)[:23])
    return [e | {"project": str(project.id)} for e in json.loads(text)]


@MANY
@given(worlds.plans, worlds.journals | worlds.long_journals, st.integers(1, 40))
def test_statements_come_to_what_the_fold_says(stitcher, plan, journal, size):
    project = project_of(stitcher, plan)
    journal = sent(project, journal)
    for start in range(0, len(journal), size):
        assert not take(stitcher, journal[start : start + size]).refused
    kept = snapshot_of(stitcher, project.id)
    right = snapshot(plan_of(project), journal)
    assert {key: kept[key] for key in right} == right
    assert list(differences()) == []
    db.session.rollback()


@MANY
@given(worlds.plans, worlds.journals, worlds.journals)
def test_what_changed_since_a_revision_makes_the_old_snapshot_new(stitcher, plan, first, second):
    project = project_of(stitcher, plan)
    first, second = sent(project, first), sent(project, second)
    take(stitcher, first)
    old = snapshot_of(stitcher, project.id)
    take(stitcher, second)
    delta, new = snapshot_of(stitcher, project.id, old["revision"]), snapshot_of(stitcher, project.id)
    for part in ("rows", "blocks", "sums", "latest"):
        merged = old[part] | delta[part]
        assert {key: value for key, value in merged.items() if value is not None} == new[part]
    rest = new.keys() - {"rows", "blocks", "sums", "latest", "since"}
    assert {key: delta[key] for key in rest} == {key: new[key] for key in rest}
    db.session.rollback()


def test_the_audit_finds_a_total_that_is_not_what_the_entries_come_to(stitcher):
    project = project_of(stitcher, {"width": 20, "height": 20})
    entry = {"id": worlds.uuid(1), "kind": "stitches", "at": "2026-02-03T20:00:00.000Z", "row": 3, "by": 7}
    take(stitcher, [entry | {"project": str(project.id)}])
    db.session.commit()
    assert list(differences()) == []
    db.session.execute(update(Total).values(stitches=8))
    db.session.commit()
    assert any("'cross 3'" in said for said in differences())
