"""Views of reminders."""

from flask import Blueprint

blueprint = Blueprint("reminders", __name__)
