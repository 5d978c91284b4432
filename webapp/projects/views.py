"""Views of projects."""

from flask import Blueprint

blueprint = Blueprint("projects", __name__)
