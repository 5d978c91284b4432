"""The journal's door: batches in, snapshots out."""

import json
from datetime import timedelta
from typing import Any
from uuid import UUID

from flask import Blueprint, Response, abort, jsonify, request

from webapp import clock
from webapp.accounts.bringing import is_hers
from webapp.accounts.guard import current_session, signed_in, stitcher
from webapp.db import db
from webapp.house import house_id
from webapp.journal import moments
from webapp.journal.batch import take
from webapp.journal.snapshot import snapshot_of
from webapp.projects.models import Project

blueprint = Blueprint("journal", __name__)
MOST = 500
DELAY = timedelta(minutes=2)


@blueprint.post("/journal")
@signed_in
def create() -> Response:
    """Take a batch of entries; answer what became of each, and where their projects stand now."""
    batch = read_batch(request.get_data())
    me = stitcher().id
    if not is_hers(batch.get("account"), me):
        abort(409, "These entries are another stitcher's; they stay on the phone until she signs in.")
    offset = settle_offset(batch.get("sent_at"))
    taken = take(me, batch["entries"], offset)
    known = batch["known"] if isinstance(batch.get("known"), dict) else {}
    snapshots = {str(p): snapshot_of(me, p, _revision(known.get(str(p)))) for p in taken.projects}
    answer = {
        "house": str(house_id()),
        "offset": offset,
        "accepted": taken.accepted,
        "refused": taken.refused,
    }
    db.session.commit()
    return jsonify(**answer, projects=snapshots)


@blueprint.get("/projects/<uuid:project>/snapshot")
@signed_in
def show(project: UUID) -> Response:
    """Give the snapshot of one project; its revision is the ETag.

    A phone may say which ``plan`` it has, and of which ``house``: another one is sent even where no entry
    was added.
    """
    me = stitcher().id
    if db.session.get(Project, (me, project)) is None:
        abort(404)
    snapshot = snapshot_of(me, project, _revision(request.args.get("known")))
    response = jsonify(snapshot)
    response.set_etag(str(snapshot["revision"]))
    held = {"plan": str(snapshot["plan"]["revision"]), "house": snapshot["house"]}
    if all(request.args.get(name) in (None, value) for name, value in held.items()):
        response.make_conditional(request)
    return response


def read_batch(body: bytes) -> dict[str, Any]:
    """Read a batch; 422 if there is no telling what its entries are."""
    try:
        batch = json.loads(body.decode())
    except (ValueError, RecursionError):
        batch = None
    entries = batch.get("entries") if isinstance(batch, dict) else None
    if not isinstance(batch, dict) or not isinstance(entries, list) or not 1 <= len(entries) <= MOST:
        abort(422, f"A batch is a JSON object with a list of 1 to {MOST} entries.")
    return batch


def settle_offset(sent_at: object) -> int:
    """Tell how far this phone's clock is off, in milliseconds: kept, unless it is over two minutes away."""
    session = current_session()
    assert session is not None
    try:
        off = clock.now() - moments.read(sent_at)
    except ValueError:
        return session.offset_ms
    if abs(off - timedelta(milliseconds=session.offset_ms)) > DELAY:
        session.offset_ms = off // timedelta(milliseconds=1)
    return session.offset_ms


def _revision(known: object) -> int:
    text = str(known)
    return int(text) if text.isascii() and text.isdigit() and len(text) < 16 else 0
