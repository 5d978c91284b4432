"""The view of quick thread. It needs no account."""

from typing import Any

from flask import Blueprint, render_template, request

from webapp.accounts.guard import current_account
from webapp.cloth import reads
from webapp.cloth.reads import Asked
from webapp.cloth.tables import read
from webapp.projects.listing import projects_of
from webapp.projects.models import Project
from webapp.threads import quick, quick_saying
from webapp.threads.tables import kinds

blueprint = Blueprint("quick", __name__)
TELLING = ("stitches", "block", "printed")  # while none of them is filled in, it is still being asked


@blueprint.get("/thread")
def show() -> tuple[str, int]:
    """Say how much thread so many stitches take, or ask for them."""
    asked = question()
    said = quick_saying.slots(asked, tables()) if is_answered(asked) else None
    values = {"asked": asked, "said": said, "quick": quick, "reads": reads, "tables": tables()}
    return render_template("threads/quick.html", projects=hers(), **values), 422 if asked.errors else 200


def question() -> Asked:
    """Read the address; a page that was not asked anything yet has its usual choices."""
    account = current_account()
    usual = {"count": "14", "printed_count": "14", "printed_strands": "2"}
    given = {**usual, "unit": account.unit if account else "in", **request.args.to_dict()}
    if any(given.get(name, "").strip() for name in TELLING):
        return quick.ask(given, tables())
    kept = {name: text[: reads.KEPT] for name, text in given.items()}
    return Asked(kept, dict(reads.choices(given, quick.CHOICES)))


def is_answered(asked: Asked) -> bool:
    """Tell whether there is an answer to show."""
    return len(asked.values) > len(quick.CHOICES) and not asked.errors


def tables() -> dict[str, Any]:
    """Give the tables that the page's script reads."""
    return {"kinds": kinds(), "strands": read("strands")}


def hers() -> list[Project]:
    """List her projects that may want thread, the one worked last first, if she is signed in."""
    account = current_account()
    found = projects_of(account.id) if account else []
    return [one.project for one in found if one.project.state != "finished"]
