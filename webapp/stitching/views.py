"""Views of stitching."""

from flask import Blueprint

blueprint = Blueprint("stitching", __name__)
