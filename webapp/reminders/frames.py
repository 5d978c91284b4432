"""How her works are held now."""

from typing import Any
from uuid import UUID

from sqlalchemy import ColumnElement, Select, exists, or_, select, tuple_
from sqlalchemy.orm import aliased

from webapp.db import db
from webapp.journal.models import LIVE_FRAME, Entry
from webapp.projects.models import Project
from webapp.reminders.bedtime import Held, asked


def held(stitcher: UUID) -> list[Held]:
    """Tell how each of her projects is held that is not put away, by one statement that the index answers."""
    return _held(Project.stitcher == stitcher, Project.put_away.is_(None))


def ask_of(project: Project) -> str | None:
    """Tell the state one project's work should be brought to if it is not at work; put away or not."""
    (one,) = _held(Project.stitcher == project.stitcher, Project.id == project.id)
    return asked(one.kind, one.state)


def _held(*which: ColumnElement[bool]) -> list[Held]:
    """Of some; since when is, as in a snapshot, since the first entry after the last that took it off."""
    last = aliased(Entry)
    state = _frames(last, last.fields["state"].as_string()).order_by(last.at.desc(), last.id.desc())
    since = (state, _first_after("off"), _first_after("off", "slack"))
    latest = [one.limit(1).scalar_subquery() for one in since]
    query = select(Project.id, Project.title, Project.frame, *latest).where(*which)
    return [Held(str(row[0]), *row[1:]) for row in db.session.execute(query)]


def _first_after(*states: str) -> Select[Any]:
    """Ask when the first frame entry after the last of these states was."""
    ended, put_on = aliased(Entry), aliased(Entry)
    is_one = ended.fields["state"].as_string().in_(states)
    end = _frames(ended, ended.at, ended.id).where(is_one).order_by(ended.at.desc(), ended.id.desc()).limit(1)
    after = tuple_(put_on.at, put_on.id) > end.scalar_subquery()
    return _frames(put_on, put_on.at).where(or_(after, ~end.exists())).order_by(put_on.at, put_on.id)


def anything_on_a_frame(stitcher: Any) -> ColumnElement[bool]:
    """Ask, within a statement about stitchers, whether any work's frame, but one put away, is not "off"."""
    last = aliased(Entry)
    state = _frames(last, last.fields["state"].as_string()).order_by(last.at.desc(), last.id.desc()).limit(1)
    hers = (Project.stitcher == stitcher, Project.put_away.is_(None))
    return exists().where(*hers, state.scalar_subquery() != "off")


def _frames(entry: Any, *columns: Any) -> Select[Any]:
    """Ask for live frame entries of the project at hand."""
    of_project = (entry.stitcher == Project.stitcher, entry.project == Project.id)
    return select(*columns).where(*of_project, LIVE_FRAME).correlate(Project)
