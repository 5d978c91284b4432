"""Views of the shopping list."""

from dataclasses import dataclass
from typing import Any
from uuid import UUID

from flask import Blueprint, abort, render_template, request
from sqlalchemy import select

from webapp.accounts.guard import signed_in, stitcher
from webapp.db import db
from webapp.journal.snapshot import snapshot_of
from webapp.projects.models import Project
from webapp.projects.whose import hers
from webapp.stitching.views import DRAWN
from webapp.threads import shopping_words
from webapp.threads.called import alike
from webapp.threads.models import LegendLine
from webapp.threads.reach import at_hand
from webapp.threads.shopping import Had, Need, Wanted, is_ticked, shop
from webapp.threads.tables import kinds
from webapp.threads.uses import together

blueprint = Blueprint("shopping", __name__)
MOST = 30  # projects on one list


@dataclass(frozen=True)
class Shown:
    """A line of the list, with what it says."""

    at: int  # its place on the list
    wanted: Wanted
    ticked: bool
    buy: str
    why: str
    lots: str
    text: str
    kind: str
    colour: str | None


@blueprint.get("/thread/shopping")
@signed_in
def show() -> str:
    """Show the list for the projects chosen, or ask which."""
    offered = _offered(stitcher().id)
    chosen = _chosen(offered)
    values: dict[str, Any] = {"offered": offered, "chosen": chosen}
    if chosen:
        values |= _list(chosen)
    return render_template("threads/shopping.html", **values)


def _offered(me: UUID) -> list[Project]:
    """List her projects that have a legend and are not done with."""
    with_lines = select(LegendLine.project).where(LegendLine.stitcher == me).distinct()
    query = (
        select(Project)
        .where(Project.stitcher == me, Project.id.in_(with_lines))
        .where(Project.put_away.is_(None), Project.state != "finished")
        .order_by(Project.created, Project.id)
    )
    return list(db.session.scalars(query))


def _chosen(offered: list[Project]) -> list[Project]:
    """Load the projects the address names; another's is not there. With only one there is no question."""
    named = request.args.getlist("project")
    if not named:
        return offered if len(offered) == 1 else []
    try:
        ids = dict.fromkeys(UUID(one) for one in named[:MOST])
    except ValueError:
        abort(404)
    return [hers(one) for one in ids]


def _list(chosen: list[Project]) -> dict[str, Any]:
    me, ids = stitcher(), {project.id for project in chosen}
    mine, everything = together(me.id, ids)
    hands = at_hand(me.id, everything)
    needs = [
        Need(str(use.project.id), use.name, use.printed, use.kind, *use.to_come, use.lots)
        for use in mine
        if use.to_come[1] > 0
    ]
    had = {thread: Had(*hand.now, hand.lots) for thread, hand in hands.items()}
    snapshots = [snapshot_of(me.id, project.id) for project in chosen]
    have = {one["project"]: _have(one) for one in snapshots}
    colours = {use.thread: use.line.colour for use in mine if len(use.line.parts) == 1}
    lines = [
        _shown(at, one, is_ticked(one, have), colours.get((alike(one.name), one.kind)))
        for at, one in enumerate(shop(needs, had, kinds()))
    ]
    short = [line for line in lines if line.wanted.buy[1]]
    title = shopping_words.title_of([project.title for project in chosen])
    return {
        "title": title,
        "lines": [line for line in short if not line.ticked],
        "ticked": [line for line in short if line.ticked],
        "enough": [line for line in lines if not line.wanted.buy[1]],
        "text": shopping_words.as_text(title, [line.text for line in short if not line.ticked]),
        "carried": [{k: v for k, v in one.items() if k == "project" or k not in DRAWN} for one in snapshots],
    }


def _have(snapshot: dict[str, Any]) -> dict[str, bool]:
    """Give what is ticked of a project, as the fold has it."""
    latest = snapshot["latest"].items()
    return {key[5:]: held[2] for key, held in latest if held and key.startswith("have ")}


def _shown(at: int, wanted: Wanted, ticked: bool, colour: str | None) -> Shown:
    kind = kinds()[wanted.kind]
    return Shown(
        at=at,
        wanted=wanted,
        ticked=ticked,
        buy=shopping_words.to_buy(wanted, kind),
        why=shopping_words.why(wanted, kind, stitcher().unit),
        lots=shopping_words.of_lots(wanted),
        text=shopping_words.line_of(wanted, kind),
        kind="" if wanted.kind == "cotton" else kind["name"],
        colour=colour,
    )
