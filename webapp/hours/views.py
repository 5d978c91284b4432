"""Views of hours."""

from flask import Blueprint

blueprint = Blueprint("hours", __name__)
