"""Views of a week's sittings: times put right, sittings added, struck out and put back.

Each form is answered twice: at its own address plainly, and at that with ``/list`` by the list alone.
"""

from collections.abc import Callable
from typing import Any
from uuid import UUID
from zoneinfo import ZoneInfo

from flask import Blueprint, abort, redirect, render_template, request, url_for
from werkzeug.wrappers import Response

from webapp import clock
from webapp.accounts.guard import signed_in, stitcher
from webapp.db import db
from webapp.forms import Errors, load_form
from webapp.fragments import render_block
from webapp.hours import fixing, words
from webapp.hours.amends import moved_to
from webapp.hours.listing import Listing, listing_of
from webapp.hours.schemas import ChangeSchema, OnceSchema, SittingSchema
from webapp.hours.week import BadWeek
from webapp.journal.batch import Refused
from webapp.journal.models import Sitting

blueprint = Blueprint("sittings", __name__, url_prefix="/hours/sittings")
PAGE = "hours/sittings.html"
ONE = "/<uuid:project>/<uuid:sitting>"

Answer = str | tuple[str, int] | Response
View = Callable[..., Answer]


@blueprint.get("")
@signed_in
def index() -> Answer:
    """List a week's sittings."""
    return render_template(PAGE, listing=_listing(), words=words, errors={}, typed={})


@blueprint.get("/list")
@signed_in
def listing() -> Answer:
    """Draw the list alone."""
    return render_block(PAGE, "listing", listing=_listing(), words=words, errors={}, typed={})


def answered_twice(path: str) -> Callable[[View], View]:
    """Take a form at ``path``, and at that with ``/list``, of whoever is signed in; tell the view which."""

    def at_both(view: View) -> View:
        guarded = signed_in(view)
        for address, part in ((path, False), (f"{path}/list", True)):
            blueprint.post(address, defaults={"part": part})(guarded)
        return guarded

    return at_both


@answered_twice("")
def create(part: bool) -> Answer:
    """Add a sitting that was forgotten."""
    return _put_right(part, SittingSchema(), None, _add, "Added.")


@answered_twice(ONE)
def update(part: bool, project: UUID, sitting: UUID) -> Answer:
    """Set a sitting's times, or move it to another project."""
    return _put_right(part, ChangeSchema(), _hers(project, sitting), _change, "Kept.")


@answered_twice(f"{ONE}/strike")
def strike(part: bool, project: UUID, sitting: UUID) -> Answer:
    """Strike a sitting out."""
    return _turn(part, _hers(project, sitting), fixing.strike, "Struck out.")


@answered_twice(f"{ONE}/return")
def put_back(part: bool, project: UUID, sitting: UUID) -> Answer:
    """Put back what was changed of a sitting last."""
    return _turn(part, _hers(project, sitting), fixing.put_back, "Put back.")


Given = dict[str, Any]
Write = Callable[[Given, Any], Errors]


def _put_right(part: bool, schema: OnceSchema, before: Sitting | None, write: Write, done: str) -> Answer:
    """Load the form, write down what it says of the sitting ``before``, and show the list; all or nothing."""
    given, errors = load_form(schema)
    _listing()  # a week that cannot be shown is said before anything is written
    try:
        errors = errors or write(given, before)
    except fixing.Stale as error:
        errors = {"once": [str(error)]}
    if errors:
        return _answer(part, errors, sitting=before.id if before else None)
    db.session.commit()
    return _answer(part, {}, done, _stands_as(given, before))


def _stands_as(given: Given, before: Sitting | None) -> UUID:
    """Tell which sitting it is now."""
    if before is None:
        return UUID(str(given["once"]))
    project = given.get("project") or before.project
    return before.id if project == before.project else moved_to(before.id, project)


def _turn(part: bool, hers: Sitting, write: Callable[[UUID, UUID, UUID, UUID], None], done: str) -> Answer:
    """Do what needs no more than the sitting itself."""

    def turned(given: Given, before: Sitting) -> Errors:
        write(stitcher().id, before.project, before.id, given["once"])
        return {}

    return _put_right(part, OnceSchema(), hers, turned, done)


def _add(given: Given, _none: None) -> Errors:
    times, errors = fixing.times_of(given, ZoneInfo(stitcher().zone), clock.now())
    if times is None:
        return errors
    try:
        fixing.set_times(stitcher().id, given["project"], given["once"], times, given["once"])
    except Refused as error:
        return {"project": [str(error)]}
    return {}


def _change(given: Given, before: Sitting) -> Errors:
    times, errors = fixing.times_of(given, ZoneInfo(stitcher().zone), clock.now(), before)
    if times is None:
        return errors
    project = given.get("project") or before.project
    if project == before.project:
        fixing.set_times(stitcher().id, project, before.id, times, given["once"])
        return {}
    try:
        fixing.move(stitcher().id, before, project, times, given["once"])
    except Refused as error:
        return {"project": [str(error)]}
    return {}


def _hers(project: UUID, sitting: UUID) -> Sitting:
    found = db.session.get(Sitting, (stitcher().id, project, sitting))
    if found is None:
        abort(404)
    return found


def _listing() -> Listing:
    try:
        return listing_of(stitcher(), request.values.get("week"))
    except BadWeek as error:
        abort(422, str(error))


def _answer(part: bool, errors: Errors, done: str = "", sitting: UUID | None = None) -> Answer:
    """Show the list, the sitting found again by its focus.

    Where something is wrong, what was typed is still there, and a sentence beside it.
    """
    if not errors and not part:
        return redirect(url_for(".index", week=request.form.get("week")), 303)
    typed = {**request.form, "sitting": sitting} if errors else {}
    values: dict[str, Any] = {"errors": errors, "typed": typed, "done": done, "about": sitting}
    values |= {"listing": _listing(), "words": words}
    drawn = render_block(PAGE, "listing", **values) if part else render_template(PAGE, **values)
    return (drawn, 422) if errors else drawn
