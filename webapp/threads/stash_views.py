"""Views of her stash of thread: kept, changed, put away."""

from collections.abc import Mapping
from typing import Any
from uuid import UUID

from flask import Blueprint, abort, redirect, render_template, request, url_for
from werkzeug.wrappers import Response

from webapp import clock
from webapp.accounts.guard import signed_in, stitcher
from webapp.db import add_once, commit_once, db
from webapp.forms import AwaySchema, Errors, check_readable, load_form, typed_again
from webapp.ids import new_id
from webapp.threads import amounts, stash
from webapp.threads.called import alike
from webapp.threads.carried import carry_using
from webapp.threads.models import KeptThread
from webapp.threads.stash_schemas import kept_schema
from webapp.threads.tables import kinds

blueprint = Blueprint("thread_stash", __name__)
FORGIVEN = {"skeins": 0.0001, "lengths": 1.0}  # what a field may round away: no count made anew
Answer = str | tuple[str, int] | Response


@blueprint.get("/thread/stash")
@signed_in
def index() -> Answer:
    """List her thread."""
    return listed(put_away=False)


@blueprint.get("/thread/stash/put-away")
@signed_in
def away() -> Answer:
    """List the thread she has put away."""
    return listed(put_away=True)


@blueprint.get("/thread/stash/new")
@signed_in
def new() -> Answer:
    """Ask for a thread to keep; one after another, of the kind before and with what was kept last."""
    given = {name: request.args.get(name, "")[:100] for name in ("thread", "kind", "lot")}
    return asked({"id": str(new_id()), **given}, {}, last=_last())


@blueprint.post("/thread/stash")
@signed_in
def create() -> Answer:
    """Keep a thread, once for each id; as her legend has it where she does not say."""
    check_readable()  # before the form is looked into
    printed = stash.printed(stitcher().id).get(alike(request.form.get("thread", "")))
    kind = request.form.get("kind") or (printed.kind if printed else "cotton")
    values, errors = load_form(kept_schema(stitcher().unit, kind))
    if errors:
        return asked(typed_again(errors), errors)
    values.pop("again")
    if values["skeins"] is None and values["lengths"] is None:
        values["skeins"] = 1.0
    values["colour"] = values["colour"] or (printed.colour if printed else None)
    return _keep(values.pop("id", None) or new_id(), values)


def _keep(kept_id: UUID, values: dict[str, Any]) -> Answer:
    said = {name: values.pop(name) or 0.0 for name in ("skeins", "lengths")}
    moment = clock.now()
    row = KeptThread(stitcher=stitcher().id, id=kept_id, counted=moment, created=moment, **values, **said)
    add_once(row)
    carry_using(row.stitcher, [row.thread])
    commit_once()
    if "next" in request.form:
        kind = request.form.get("kind", "")
        return redirect(url_for(".new", kind=kind, kept=kept_id), 303)
    return redirect(url_for(".index"), 303)


@blueprint.get("/thread/stash/<uuid:kept_id>")
@signed_in
def edit(kept_id: UUID) -> Answer:
    """Ask what to change of a thread."""
    thread = hers(kept_id)
    return asked(form_of(thread), {}, thread)


@blueprint.post("/thread/stash/<uuid:kept_id>")
@signed_in
def update(kept_id: UUID) -> Answer:
    """Change a thread; a field sent empty is emptied. With more of it, or less, it is counted anew."""
    check_readable()
    thread = hers(kept_id)
    before = {name: text for name, text in form_of(thread).items() if name not in request.form}
    kind = request.form.get("kind") or thread.kind
    values, errors = load_form(kept_schema(stitcher().unit, kind), before=before)
    if errors:
        return asked({**before, **request.form}, errors, thread)
    values.pop("id", None)
    again, was = values.pop("again") == "yes", thread.thread
    said = {name: values.pop(name) or 0.0 for name in FORGIVEN}
    moved = {name: many for name, many in said.items() if abs(getattr(thread, name) - many) > FORGIVEN[name]}
    for name, value in {**values, **moved}.items():
        setattr(thread, name, value)
    if moved or again:
        thread.counted = clock.now()
    carry_using(thread.stitcher, [was, thread.thread])
    db.session.commit()
    return redirect(url_for(".index"), 303)


@blueprint.post("/thread/stash/<uuid:kept_id>/away")
@signed_in
def put_away(kept_id: UUID) -> Answer:
    """Put a thread away, or take it out again; nothing is deleted."""
    thread = hers(kept_id)
    values, errors = load_form(AwaySchema())
    if errors:
        return asked(form_of(thread), errors, thread)
    thread.put_away = None if values["away"] == "no" else thread.put_away or clock.now()
    carry_using(thread.stitcher, [thread.thread])
    db.session.commit()
    return redirect(url_for(".index"), 303)


def hers(kept_id: UUID) -> KeptThread:
    """Load a thread of the stitcher who asks; another's is not there."""
    return db.session.get(KeptThread, (stitcher().id, kept_id)) or abort(404)


def form_of(thread: KeptThread) -> dict[str, str]:
    """Write a thread as its form has it."""
    return {
        "thread": thread.thread,
        "kind": thread.kind,
        "lot": thread.lot,
        "skeins": amounts.typed_skeins(thread.skeins),
        "lengths": amounts.typed_length(thread.lengths, stitcher().unit),
        "colour": thread.colour or "",
        "coloured": "yes" if thread.colour else "no",
        "note": thread.note,
    }


def said_of(thread: KeptThread) -> str:
    """Say how much there is of a thread."""
    return amounts.of_kept(thread.skeins, thread.lengths, kinds()[thread.kind], stitcher().unit)


def _last() -> KeptThread | None:
    try:
        return db.session.get(KeptThread, (stitcher().id, UUID(request.args.get("kept", ""))))
    except ValueError:
        return None


def listed(*, put_away: bool) -> str:
    """Draw the list of what is kept, or put away."""
    here = stitcher().id
    return render_template(
        "threads/stash.html",
        kept=stash.kept(here, put_away=put_away),
        put_away=put_away,
        away=0 if put_away else stash.how_many_put_away(here),
        said_of=said_of,
        kinds=kinds(),
    )


def asked(
    values: Mapping[str, Any],
    errors: Errors,
    thread: KeptThread | None = None,
    last: KeptThread | None = None,
) -> tuple[str, int]:
    """Draw the form, new or for a thread, with the cursor in the first field that is wrong."""
    offered = stash.offered(stitcher().id)
    choices = [(name, row["name"]) for name, row in kinds().items()]
    page = render_template(
        "threads/stash_form.html",
        values=values,
        errors=errors,
        wrong=next(iter(errors), None),
        thread=thread,
        last=last,
        said_of=said_of,
        offered=offered,
        kinds=choices if thread else [("", "As in my legend, else cotton"), *choices],
        unit="yards" if stitcher().unit == "in" else "metres",
    )
    return page, 422 if errors else 200
