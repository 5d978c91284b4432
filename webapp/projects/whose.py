"""A project as its views load it: hers, or none."""

from uuid import UUID

from flask import abort

from webapp.accounts.guard import stitcher
from webapp.db import db
from webapp.projects.models import Project


def hers(project_id: UUID) -> Project:
    """Load a project of the stitcher who asks; another's is not there."""
    return db.session.get(Project, (stitcher().id, project_id)) or abort(404)
