"""Views of a project's two sheets: the bag before she leaves the house, and how the work is finished.

Each form is answered twice: at its own address plainly, and at that with ``/part`` by what it changed.
"""

from collections.abc import Callable
from typing import Any
from uuid import UUID

from flask import Blueprint, redirect, render_template, url_for
from marshmallow import Schema
from werkzeug.wrappers import Response

from webapp.accounts.guard import signed_in, stitcher
from webapp.cloth import size_answer, size_asking, size_saying, tables
from webapp.cloth.project_slip import asked_by
from webapp.db import db
from webapp.forms import Errors, FormSchema, load_form
from webapp.fragments import render_block
from webapp.projects.models import Project
from webapp.projects.whose import hers
from webapp.projects.words import cloth_in_words
from webapp.threads import bag, finishing, ticks
from webapp.threads.legend_kept import legend
from webapp.threads.sheet import PRACTICE, Item, own
from webapp.threads.sheet_schemas import GONE, ItemForm, OwnForm, TickForm
from webapp.threads.tables import kinds

blueprint = Blueprint("sheets", __name__)
PAGE = "threads/sheet.html"
ADDRESS = "/projects/<uuid:project_id>/<any(bag, finishing):sheet>"

Answer = str | tuple[str, int] | Response
View = Callable[..., Answer]


def answered_twice(path: str) -> Callable[[View], View]:
    """Take a form at ``path`` of a sheet, and at that with ``/part``; tell the view which."""

    def at_both(view: View) -> View:
        guarded = signed_in(view)
        for address, part in ((path, False), (f"{path}/part", True)):
            blueprint.post(f"{ADDRESS}{address}", defaults={"part": part})(guarded)
        return guarded

    return at_both


@blueprint.get(ADDRESS)
@signed_in
def show(project_id: UUID, sheet: str) -> Answer:
    """Show a sheet."""
    return render_template(PAGE, **drawn(hers(project_id), sheet))


@answered_twice("/ticks")
def tick(project_id: UUID, sheet: str, part: bool) -> Answer:
    """Tick one line, or untick it; its part is that line, with the sum beside it."""
    project = hers(project_id)
    sent, errors = load_form(TickForm())
    item = sent.get("item", "")
    if not errors and item not in {one.key for one in drawn(project, sheet)["items"]}:
        errors = {"item": [GONE]}
    if errors:
        return whole(project, sheet, part, errors)
    ticks.tick(project, sheet, item, ticked=sent["ticked"] == "yes")
    db.session.commit()
    if not part:
        return redirect(url_for(".show", project_id=project_id, sheet=sheet), 303)
    shown = drawn(project, sheet)
    line = next(one for one in shown["items"] if one.key == item)
    return render_block(PAGE, "line", item=line, swapped=True, **shown)


@answered_twice("/lines")
def add(project_id: UUID, sheet: str, part: bool) -> Answer:
    """Write a line of her own on a sheet."""
    return write(project_id, sheet, part, OwnForm(), lambda of, sent: ticks.add(of, sheet, sent["words"]))


@answered_twice("/lines/remove")
def remove(project_id: UUID, sheet: str, part: bool) -> Answer:
    """Take a line of her own off a sheet."""
    return write(project_id, sheet, part, ItemForm(), lambda of, sent: ticks.remove(of, sheet, sent["item"]))


@answered_twice("/over")
def start_over(project_id: UUID, sheet: str, part: bool) -> Answer:
    """Untick all; her own lines stay."""
    return write(project_id, sheet, part, FormSchema(), lambda of, _sent: ticks.start_over(of, sheet))


Written = Callable[[Project, dict[str, Any]], str | None]


def write(project_id: UUID, sheet: str, part: bool, schema: Schema, written: Written) -> Answer:
    """Load a form, write what it says, and show the sheet; or what is wrong, with what was typed."""
    project = hers(project_id)
    sent, errors = load_form(schema)
    wrong = None if errors else written(project, sent)
    if errors or wrong:
        return whole(project, sheet, part, errors or {"words": [wrong or ""]})
    db.session.commit()
    return whole(project, sheet, part, {})


def whole(project: Project, sheet: str, part: bool, errors: Errors) -> Answer:
    """Show the whole sheet, alone or as its page."""
    if not errors and not part:
        return redirect(url_for(".show", project_id=project.id, sheet=sheet), 303)
    values = drawn(project, sheet, errors)
    page = render_block(PAGE, "sheet", **values) if part else render_template(PAGE, **values)
    return (page, 422) if errors else page


def drawn(project: Project, sheet: str, errors: Errors | None = None) -> dict[str, Any]:
    """Gather what a sheet's page shows."""
    kept = ticks.kept(project, sheet)
    items = [*given(project, sheet), *(own(key) for key, line in kept.items() if line.own)]
    return {
        "project": project,
        "sheet": sheet,
        "items": items,
        "ticked": {item.key for item in items if item.key in kept and kept[item.key].ticked},
        "errors": errors or {},
        "practice": PRACTICE,
    }


def given(project: Project, sheet: str) -> list[Item]:
    """Draw a sheet's own lines from the project's materials."""
    lines = legend(project)
    found = sized(project)
    said = size_saying.slots(found) if found else {}
    if sheet == "finishing":
        return finishing.items(project.frame, said.get("finished", ""), lines, kinds())
    packed = bag.Packed(
        cloth=cloth_in_words(project),
        held=project.frame,
        cut=said.get("cut", ""),
        hoop=said["hoop"].partition(",")[0] if found and size_answer.ring(found) else "",
        needle=said.get("needle", ""),
        sources=tuple(found.cited["needle"]) if found else (),
    )
    return bag.items(packed, lines, kinds())


def sized(project: Project) -> size_answer.Answer | None:
    """Answer for size and cut of a project; none where it has no size that can be cut."""
    asked = size_asking.ask({"unit": stitcher().unit, **asked_by(project)})
    if not size_asking.whole(asked):
        return None
    return size_answer.answer(asked.values, {name: tables.read(name) for name in tables.NAMES})
