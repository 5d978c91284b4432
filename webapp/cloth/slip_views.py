"""Views of the slip: shown, asked for, as a code, made a project. It needs no account and keeps nothing."""

from collections.abc import Mapping
from typing import Any
from uuid import uuid5

from flask import abort, redirect, render_template, request, url_for
from marshmallow import fields
from werkzeug.wrappers import Response

from webapp import clock
from webapp.accounts import doors, limits, zones
from webapp.accounts.guard import current_account, forget
from webapp.accounts.models import Account
from webapp.accounts.schemas import BeginForm
from webapp.accounts.views import admit, sign_up_setting
from webapp.cloth import reads, slip_asking, slip_text
from webapp.cloth.piece_views import CARRIED
from webapp.cloth.project_slip import rest_of
from webapp.cloth.slip_code import code
from webapp.cloth.slip_rows import rows
from webapp.cloth.slip_saying import shapes, slots, stitches
from webapp.cloth.slip_text import Slip, Unreadable
from webapp.cloth.tables import NAMES, read
from webapp.cloth.views import blueprint, her_unit
from webapp.db import add_once, begin_writing, commit_once
from webapp.forms import load_form
from webapp.projects.models import Project
from webapp.projects.schemas import ProjectSchema
from webapp.threads import from_slip
from webapp.threads.tables import kinds

Answer = str | tuple[str, int] | Response
TELLING = ("title", "width", "height")
FOR_CLASS = (*CARRIED, "threads")


class SlipForm(BeginForm):
    """A slip to be made a project; the zone, for whoever begins with it."""

    s = fields.String(load_default="")


@blueprint.get("/cloth/slip")
def slip() -> Answer:
    """Show a slip, or make one of figures, or ask for them."""
    if "s" in request.args:
        return opened(request.args["s"])
    typed = {"count": "14", "unit": her_unit(), **reads.named(request.args.to_dict())}
    if not any(typed.get(name, "").strip() for name in TELLING):
        return page(typed)
    asked, made = slip_asking.ask(typed)
    if made is None:
        return page(asked.typed, errors=asked.errors, fault=asked.errors.get("threads", "")), 422
    return redirect(url_for("cloth.slip", s=slip_text.write(made)), 303)


@blueprint.get("/cloth/slip.svg")
def slip_code() -> Response:
    """Draw the code that opens a slip on another phone; threads that are too many for it are left out."""
    text = request.args.get("s", "")
    try:
        made = slip_text.read(text)
    except Unreadable as error:
        abort(422, str(error))
    address = url_for("cloth.slip", s=slip_text.coded(made), _external=True)
    return Response(code(address), mimetype="image/svg+xml")


@blueprint.post("/cloth/slip")
def make_project() -> Answer:
    """Make a slip a project: hers who is signed in, or hers who begins with it where the house is open."""
    given, _errors = load_form(SlipForm())
    try:
        made = slip_text.read(given.get("s", ""))
    except Unreadable as error:
        return page({}, fault=str(error)), 422
    begin_writing()
    forget()
    account = current_account()
    if account is not None:
        return redirect(kept(made, account), 303)
    if sign_up_setting() != "open":
        return redirect(url_for("accounts.ask", next=url_for("cloth.slip", s=given["s"])), 303)
    limits.take_newcomer()
    newcomer = doors.begin_unclaimed(given.get("zone", zones.FALLBACK))
    return admit(newcomer, project_of(made, newcomer))


def kept(slip: Slip, account: Account) -> str:
    """Keep a slip as her project; gives its address."""
    address = project_of(slip, account)
    commit_once()
    return address


def project_of(slip: Slip, account: Account) -> str:
    """Add a slip to her projects, if it is not among them; gives its address.

    Its id follows from the slip without its threads, and whose it is: scanned twice, or tapped twice, a slip
    makes one project; and its threads one legend, where there is none yet.
    """
    project_id = uuid5(account.id, slip_text.write(slip_text.without_threads(slip)))
    plan = {name: str(getattr(slip, name)) for name in ("width", "height", "count", "over")}
    plan |= {"title": slip.title or stitches(slip), "frame": slip.held}
    plan |= {} if slip.across is None else {"across": str(slip.across)}
    about = ProjectSchema().load(plan) | {"bench": rest_of(slip)}
    add_once(Project(stitcher=account.id, id=project_id, created=clock.now(), **about))
    from_slip.keep((account.id, project_id), slip.threads)
    return url_for("projects.show", project_id=project_id)


def opened(text: str) -> Answer:
    """Draw the slip that came in an address."""
    try:
        made = slip_text.read(text)
    except Unreadable as error:
        return page({"count": "14", "unit": her_unit()}, fault=str(error)), 422
    said, drawn = slots(made, tables()), shapes(made, tables())
    more = {"coded": slip_text.coded(made), "rows": rows(made, tables()["threads"])}
    return page(slip_asking.typed(made), text=text, said=said, shapes=drawn, **more)


def page(typed: Mapping[str, str], **more: Any) -> str:
    """Draw the page: a slip, or the form that asks for one, with what is wrong."""
    errors = {name: [sentence] for name, sentence in more.pop("errors", {}).items()}
    shown: dict[str, Any] = {"said": {}, "shapes": {}, "text": "", "fault": "", "rows": []} | more
    shown["for_class"] = {name: typed[name] for name in FOR_CLASS if typed.get(name)}
    chosen = {**typed, **{name: reads.choices(typed)[name] for name in ("finish", "held", "over", "unit")}}
    return render_template(
        "cloth/slip.html", typed=chosen, errors=errors, reads=reads, tables=tables(), **shown
    )


def tables() -> dict[str, Any]:
    """Gather the trade's tables that a slip is worked out from."""
    return {**{name: read(name) for name in NAMES}, "threads": kinds()}
