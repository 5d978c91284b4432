"""Views of journal."""

from flask import Blueprint

blueprint = Blueprint("journal", __name__)
