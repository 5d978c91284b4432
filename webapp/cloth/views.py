"""Views of cloth."""

from flask import Blueprint

blueprint = Blueprint("cloth", __name__)
