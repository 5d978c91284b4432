"""Views of accounts."""

from flask import Blueprint

blueprint = Blueprint("accounts", __name__)
