"""How her works are held now."""

from uuid import UUID

from sqlalchemy import select, text

from webapp.db import db
from webapp.journal.models import Entry
from webapp.projects.models import Project
from webapp.reminders.bedtime import Held


def held(stitcher: UUID) -> list[Held]:
    """Tell how each of her projects is held, by one statement that asks the index for each one's latest."""
    latest = (
        select(Entry.fields["state"].as_string())
        .where(Entry.stitcher == Project.stitcher, Entry.project == Project.id)
        .where(text("kind = 'frame' AND NOT cancelled"))  # word for word as in the index
        .order_by(Entry.at.desc(), Entry.id.desc())
        .limit(1)
        .scalar_subquery()
    )
    query = select(Project.id, Project.title, Project.frame, latest).where(Project.stitcher == stitcher)
    return [Held(str(row[0]), row[1], row[2], row[3]) for row in db.session.execute(query)]
