"""Views of her stash of cloth: kept, changed, put away, and looked through for a project."""

from collections.abc import Mapping
from math import ceil
from typing import Any
from uuid import UUID

from flask import abort, redirect, render_template, request, url_for
from werkzeug.wrappers import Response

from webapp import clock
from webapp.accounts.guard import signed_in, stitcher
from webapp.cloth import stash
from webapp.cloth.answer import answer
from webapp.cloth.asking import question
from webapp.cloth.gauge import Measured
from webapp.cloth.lengths import area, laid, laid_area
from webapp.cloth.models import KeptCloth
from webapp.cloth.reads import KEPT
from webapp.cloth.standards import table
from webapp.cloth.stash_schemas import kept_schema
from webapp.cloth.stash_words import counted_in_words, form_of, hundredth, laid_in_words, piece_of
from webapp.cloth.views import blueprint, columns
from webapp.db import add_once, commit_once, db
from webapp.forms import AwaySchema, Errors, check_readable, load_form, typed_again
from webapp.ids import new_id
from webapp.projects import whose

Answer = str | tuple[str, int] | Response


@blueprint.app_context_processor
def give_search() -> dict[str, Any]:
    """Give the templates what looks through her stash for a project, and says what is in it."""
    given = {"in_stash": stash.for_project, "counted_in_words": counted_in_words}
    return given | {
        "laid_in_words": laid_in_words,
        "piece_of": piece_of,
        "area": area,
        "laid_area": laid_area,
    }


@blueprint.get("/cloth/stash")
@signed_in
def stash_index() -> Answer:
    """List her cloth."""
    return listed(put_away=False)


@blueprint.get("/cloth/stash/put-away")
@signed_in
def stash_away() -> Answer:
    """List the cloth she has put away."""
    return listed(put_away=True)


@blueprint.get("/cloth/stash/new")
@signed_in
def stash_new() -> Answer:
    """Ask for a cloth to keep, filled in with what the gauge was asked if it comes from there."""
    return asked({"id": str(new_id()), **measured()}, {})


@blueprint.post("/cloth/stash")
@signed_in
def stash_create() -> Answer:
    """Keep a cloth, once for each id."""
    values, errors = load_form(kept_schema(stitcher().unit))
    if errors:
        return asked(typed_again(errors), errors)
    cloth_id = values.pop("id", None) or new_id()
    add_once(KeptCloth(stitcher=stitcher().id, id=cloth_id, created=clock.now(), **values))
    commit_once()
    return redirect(url_for(".stash_index"), 303)


@blueprint.get("/cloth/stash/<uuid:cloth_id>")
@signed_in
def stash_edit(cloth_id: UUID) -> Answer:
    """Ask what to change of a cloth."""
    cloth = hers(cloth_id)
    return asked(form_of(cloth, stitcher().unit), {}, cloth)


@blueprint.post("/cloth/stash/<uuid:cloth_id>")
@signed_in
def stash_update(cloth_id: UUID) -> Answer:
    """Change a cloth; a field sent empty is emptied."""
    check_readable()  # before the form is looked into
    cloth = hers(cloth_id)
    was = form_of(cloth, stitcher().unit)
    before = {name: text for name, text in was.items() if name not in request.form}
    values, errors = load_form(kept_schema(stitcher().unit), before=before)
    if errors:
        return asked({**before, **request.form}, errors, cloth)
    values.pop("id", None)
    for name, value in values.items():
        setattr(cloth, name, value)
    db.session.commit()
    return redirect(url_for(".stash_index"), 303)


@blueprint.post("/cloth/stash/<uuid:cloth_id>/away")
@signed_in
def stash_put_away(cloth_id: UUID) -> Answer:
    """Put a cloth away, or take it out again; nothing is deleted."""
    cloth = hers(cloth_id)
    values, errors = load_form(AwaySchema())
    if errors:
        return asked(form_of(cloth, stitcher().unit), errors, cloth)
    cloth.put_away = None if values["away"] == "no" else cloth.put_away or clock.now()
    db.session.commit()
    return redirect(url_for(".stash_index"), 303)


@blueprint.get("/projects/<uuid:project_id>/cloth")
@signed_in
def for_project(project_id: UUID) -> Answer:
    """Look through her stash for cloth that a project could go on."""
    project = whose.hers(project_id)
    found = stash.for_project(project)
    unit = stitcher().unit
    side = laid(stash.side_of(project), unit, "up")
    return render_template("cloth/stash_for.html", project=project, found=found, unit=unit, margin=side)


def hers(cloth_id: UUID) -> KeptCloth:
    """Load a cloth of the stitcher who asks; another's is not there."""
    return db.session.get(KeptCloth, (stitcher().id, cloth_id)) or abort(404)


def listed(*, put_away: bool) -> str:
    """Draw the list of what is kept, or put away."""
    here = stitcher()
    kept = stash.kept(here.id, put_away=put_away)
    away = 0 if put_away else stash.how_many_put_away(here.id)
    return render_template("cloth/stash.html", kept=kept, put_away=put_away, away=away, unit=here.unit)


def asked(values: Mapping[str, Any], errors: Errors, cloth: KeptCloth | None = None) -> tuple[str, int]:
    """Draw the form, new or for a cloth, with the cursor in the first field that is wrong."""
    wrong = next(iter(errors), None)
    page = render_template(
        "cloth/stash_form.html", values=values, errors=errors, wrong=wrong, cloth=cloth, unit=stitcher().unit
    )
    return page, 422 if errors else 200


def measured() -> dict[str, str]:
    """Fill in what the gauge was asked, if it has an answer; else what the address says."""
    if "counted" not in request.args:
        return {name: text[:KEPT] for name, text in request.args.items() if name != "id"}
    gauged = question(request.args, columns(request.args))
    if gauged.wrong or not gauged.readings:
        return {}
    found = answer(gauged.readings, gauged.choices["kind"], gauged.unit, table())
    filled = {"kind": found.kind, **_counted("along", found.along if found.across else found.measured)}
    return filled | (_counted("across", found.across) if found.across else {})


def _counted(name: str, of: Measured) -> dict[str, str]:
    off = ceil(max(of.high - of.count, of.count - of.low) * 100) / 100
    return {name: hundredth(of.count), f"{name}_error": hundredth(off)}
