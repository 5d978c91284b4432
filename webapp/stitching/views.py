"""Views of Stitch: the page with her values, and its shell with nobody's."""

from typing import Any
from uuid import UUID

from flask import Blueprint, abort, g, render_template

from webapp import clock
from webapp.accounts.guard import signed_in, stitcher
from webapp.journal.moments import read
from webapp.journal.snapshot import snapshot_of
from webapp.projects.models import Project
from webapp.reminders.bedtime import KINDS
from webapp.stitching.place import scene

blueprint = Blueprint("stitching", __name__)

# What a page's snapshot does without: what the fold draws from the rest, and the project in the address.
DRAWN = {"project", "since", "row", "row_stitches", "block", "block_stitches", "stitches", "rows_done"}
DRAWN |= {"blocks_done", "rows", "blocks", "passes", "sitting", "note"}


@blueprint.get("/projects/<uuid:project_id>/stitch")
@signed_in
def show(project_id: UUID) -> str:
    """Show the row or block in hand."""
    try:
        snapshot = snapshot_of(stitcher().id, project_id)
    except LookupError:
        abort(404)
    return render_template(
        "stitching/show.html",
        snapshot=snapshot,
        carried={n: value for n, value in snapshot.items() if n not in DRAWN and (value or n != "threads")},
        scene=scene_of(snapshot),
        minutes=minutes_of(snapshot),
    )


@blueprint.get("/shell/stitch")
def shell() -> str:
    """Show the page with nobody's values, to be filled on the phone of whoever opens it without network."""
    g.account = None  # whoever fetches it, it is drawn for nobody
    return render_template("stitching/show.html", snapshot=None, scene=None, minutes=None)


@blueprint.app_context_processor
def give_left_open() -> dict[str, Any]:
    """Give the page of a project what to say when it is finished and something is still open."""
    return {"left_open": left_open}


def left_open(project: Project) -> str:
    """Say what is still open of a project: a sitting, the work on its frame, or nothing."""
    snapshot = snapshot_of(project.stitcher, project.id)
    is_held = project.frame in KINDS and (snapshot["frame"] or {}).get("state") in ("on", "slack")
    if not snapshot["sitting"]:
        return "The work is still on its frame." if is_held else ""
    return f"A sitting is still running{', and the work is on its frame' if is_held else ''}."


def scene_of(snapshot: dict[str, Any]) -> dict[str, Any] | None:
    """Work out what is shown of the place in hand; none when every place is done."""
    plan = snapshot["plan"]
    if plan["working"] == "blocks":
        return snapshot["block"] and scene(plan, snapshot["block"], snapshot["block_stitches"])
    row = snapshot["row"]
    if row is None:
        return None
    bare = (snapshot["sums"].get(f"cross {row}") or (0, 0))[1]
    start = snapshot["latest"].get(f"start {row}")
    return scene(plan, row, snapshot["row_stitches"], bare, start and start[2])


def minutes_of(snapshot: dict[str, Any]) -> int | None:
    """Count the whole minutes of the sitting that is open."""
    sitting = snapshot["sitting"]
    return sitting and max(0, int((clock.now() - read(sitting["begin"])).total_seconds() // 60))
