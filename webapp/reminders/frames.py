"""How her works are held now."""

from typing import Any
from uuid import UUID

from sqlalchemy import ColumnElement, Select, exists, or_, select, tuple_
from sqlalchemy.orm import aliased

from webapp.db import db
from webapp.journal.models import LIVE_FRAME, Entry
from webapp.projects.models import Project
from webapp.reminders.bedtime import Held


def held(stitcher: UUID) -> list[Held]:
    """Tell how each of her projects is held, by one statement that the index answers.

    Since when is, as in a snapshot, since the first entry after the last that took it off.
    """
    last, off, put_on = aliased(Entry), aliased(Entry), aliased(Entry)
    state = _frames(last, last.fields["state"].as_string()).order_by(last.at.desc(), last.id.desc())
    is_off = off.fields["state"].as_string() == "off"
    taken_off = _frames(off, off.at, off.id).where(is_off).order_by(off.at.desc(), off.id.desc()).limit(1)
    after = tuple_(put_on.at, put_on.id) > taken_off.scalar_subquery()
    since = _frames(put_on, put_on.at).where(or_(after, ~taken_off.exists())).order_by(put_on.at, put_on.id)
    latest = [one.limit(1).scalar_subquery() for one in (state, since)]
    query = select(Project.id, Project.title, Project.frame, *latest).where(Project.stitcher == stitcher)
    return [Held(str(row[0]), *row[1:]) for row in db.session.execute(query)]


def anything_on_a_frame(stitcher: Any) -> ColumnElement[bool]:
    """Ask, within a statement about stitchers, whether the latest of any work's frame is not "off"."""
    last = aliased(Entry)
    state = _frames(last, last.fields["state"].as_string()).order_by(last.at.desc(), last.id.desc()).limit(1)
    return exists().where(Project.stitcher == stitcher, state.scalar_subquery() != "off")


def _frames(entry: Any, *columns: Any) -> Select[Any]:
    """Ask for live frame entries of the project at hand."""
    of_project = (entry.stitcher == Project.stitcher, entry.project == Project.id)
    return select(*columns).where(*of_project, LIVE_FRAME).correlate(Project)
