"""Views of projects."""

from typing import Any
from uuid import UUID

from flask import Blueprint, redirect, render_template, request, url_for
from werkzeug.wrappers import Response

from webapp import clock
from webapp.accounts.guard import signed_in, stitcher
from webapp.cloth.lengths import area
from webapp.cloth.project_slip import cloth_of
from webapp.cloth.sizing import finished
from webapp.db import add_once, commit_once, db
from webapp.forms import AwaySchema, Errors, load_form, typed_again
from webapp.fragments import render_block
from webapp.ids import new_id
from webapp.projects import words
from webapp.projects.listing import how_many_put_away, projects_of, worked
from webapp.projects.models import Project
from webapp.projects.plan import change, form_of, lay_away
from webapp.projects.progress import outside, progress
from webapp.projects.schemas import NewProjectSchema, ProjectSchema, StateSchema
from webapp.projects.whose import hers
from webapp.projects.woven import swatch, woven
from webapp.reminders.frames import ask_of
from webapp.threads.carried import carry
from webapp.threads.from_slip import slip_of

blueprint = Blueprint("projects", __name__)

SHOWN = {"id", "title", "width", "height", "state"}  # fields outside "More about it"
Answer = str | tuple[str, int] | Response


@blueprint.app_context_processor
def give_words() -> dict[str, Any]:
    """Give the templates what draws a project and says it in words."""
    return {"words": words, "swatch": swatch}


@blueprint.get("/projects")
@signed_in
def index() -> Answer:
    """List her projects, the one in hand first."""
    listed = projects_of(stitcher().id)
    first = next((one for one in listed if one.project.state == "in hand"), None)
    groups = {
        state: [one for one in listed if one.project.state == state and one is not first]
        for state in ("in hand", "resting", "planned", "finished")
    }
    drawing = drawn(first.project) if first else {}
    return render_template(
        "projects/index.html", first=first, groups=groups, away=how_many_put_away(stitcher().id), **drawing
    )


@blueprint.get("/projects/put-away")
@signed_in
def put_away() -> Answer:
    """List what she has put away."""
    return render_template("projects/put_away.html", listed=projects_of(stitcher().id, put_away=True))


@blueprint.get("/projects/new")
@signed_in
def new() -> Answer:
    """Ask for a new project."""
    return asked({"id": new_id()}, {})


@blueprint.post("/projects")
@signed_in
def create() -> Answer:
    """Make a project, once for each id."""
    values, errors = load_form(NewProjectSchema())
    if errors:
        return asked(typed_again(errors), errors)
    project_id = values.pop("id", None) or new_id()
    add_once(Project(stitcher=stitcher().id, id=project_id, created=clock.now(), **values))
    commit_once()
    return redirect(url_for("projects.show", project_id=project_id), 303)


@blueprint.get("/projects/<uuid:project_id>")
@signed_in
def show(project_id: UUID) -> Answer:
    """Show a project."""
    project = hers(project_id)
    is_said = project.put_away and "still" in request.args
    return shown(project, still=ask_of(project) if is_said else None)


@blueprint.get("/projects/<uuid:project_id>/edit")
@signed_in
def edit(project_id: UUID) -> Answer:
    """Ask what to change."""
    project = hers(project_id)
    return asked(form_of(project), {}, project)


@blueprint.post("/projects/<uuid:project_id>")
@signed_in
def update(project_id: UUID) -> Answer:
    """Change a project; what is not sent stays."""
    project = hers(project_id)
    values, errors = load_form(ProjectSchema(), before=form_of(project))
    if errors:
        return asked({**form_of(project), **request.form}, errors, project)
    change(project, values)
    if project.legend:
        carry(project)  # its thread is reckoned on this cloth
    db.session.commit()
    return redirect(url_for("projects.show", project_id=project_id), 303)


@blueprint.get("/projects/<uuid:project_id>/state")
@signed_in
def state(project_id: UUID) -> Answer:
    """Draw the four states as a fragment."""
    return render_block("projects/show.html", "state", project=hers(project_id), errors={})


@blueprint.post("/projects/<uuid:project_id>/state")
@signed_in
def set_state(project_id: UUID) -> Answer:
    """Set the state; answers with the fragment."""
    project = hers(project_id)
    values, errors = load_form(StateSchema())
    if errors:
        return render_block("projects/show.html", "state", project=project, errors=errors), 422
    change(project, values)
    if project.legend:
        carry(project)  # what is in hand has a claim on its thread
    db.session.commit()
    return render_block("projects/show.html", "state", project=project, errors={})


@blueprint.post("/projects/<uuid:project_id>/away")
@signed_in
def set_away(project_id: UUID) -> Answer:
    """Put a project away, or take it out again."""
    project = hers(project_id)
    values, errors = load_form(AwaySchema())
    if errors:
        return shown(project, errors), 422
    page = url_for("projects.show", project_id=project_id)
    lay_away(project, values["away"] != "no", clock.now())
    if project.put_away:
        page = f"{page}?still=yes" if ask_of(project) else url_for("projects.index")
    if project.legend:
        carry(project)
    db.session.commit()
    return redirect(page, 303)


def asked(values: dict[str, Any], errors: Errors, project: Project | None = None) -> tuple[str, int]:
    """Draw the form, new or for a project, with the cursor in the first field that is wrong."""
    wrong = next((name for name in ProjectSchema().fields if name in errors), None)
    opened = bool(errors.keys() - SHOWN)  # what is wrong is not to be hidden
    work = worked(project) if project else None
    page = render_template(
        "projects/form.html",
        values=values,
        errors=errors,
        wrong=wrong,
        opened=opened,
        project=project,
        work=work,
    )
    return page, 422 if errors else 200


def shown(project: Project, errors: Errors | None = None, still: str | None = None) -> str:
    """Draw the page of a project; ``still``: how it should be, which was just put away on its frame."""
    size = finished(cloth_of(project), project.width, project.height)
    slip, is_bare = slip_of(project)
    return render_template(
        "projects/show.html",
        project=project,
        errors=errors or {},
        size=area(*size, stitcher().unit),
        slip=slip,
        is_bare=is_bare,
        still=still,
        **drawn(project),
    )


def drawn(project: Project) -> dict[str, Any]:
    """Give the templates what is worked of a project, in figures and as a cloth."""
    work = worked(project)
    return {
        "work": work,
        "progress": progress(project, work.rows_done, work.blocks_done),
        "cloth": woven(project, work.rows, work.blocks),
        "outside": outside(project, work.rows, work.blocks),
    }
