"""Views of what leaves: all sittings and all days, as CSV."""

from flask import Blueprint, Response

from webapp.accounts.guard import signed_in, stitcher
from webapp.hours import out

blueprint = Blueprint("out", __name__, url_prefix="/hours")


@blueprint.get("/sittings.csv")
@signed_in
def sittings() -> Response:
    """Give every sitting."""
    return _file("sittings.csv", out.sittings_csv(stitcher()))


@blueprint.get("/days.csv")
@signed_in
def days() -> Response:
    """Give every day."""
    return _file("days.csv", out.days_csv(stitcher()))


def _file(name: str, text: str) -> Response:
    headers = {"Content-Disposition": f'attachment; filename="{name}"'}
    return Response(text, content_type="text/csv; charset=utf-8; header=present", headers=headers)
