"""Views of running out: how far the thread at hand reaches."""

from dataclasses import dataclass
from typing import Any
from uuid import UUID

from flask import Blueprint, render_template

from webapp.accounts.guard import signed_in, stitcher
from webapp.projects.models import Project
from webapp.projects.whose import hers
from webapp.threads import reach_words
from webapp.threads.models import LegendLine
from webapp.threads.reach import Reach, reaching
from webapp.threads.tables import kinds

blueprint = Blueprint("running", __name__)


@dataclass(frozen=True)
class Part:
    """One thread of a line, and what is said of it."""

    name: str
    left: str
    advice: str


@dataclass(frozen=True)
class Shown:
    """A line of the legend, and what is said of it."""

    line: LegendLine
    name: str
    verdict: str
    reaches: str
    parts: list[Part]
    shared: str


@blueprint.app_context_processor
def give_reach() -> dict[str, Any]:
    """Give the templates what tells of a project how far its thread reaches (threads/_reach.html)."""
    return {"reach_of": shown_of}


@blueprint.get("/projects/<uuid:project_id>/thread/running")
@signed_in
def show(project_id: UUID) -> str:
    """Tell of each thread of a project how far it reaches."""
    project = hers(project_id)
    return render_template("threads/running.html", project=project, groups=shown_of(project))


def shown_of(project: Project) -> list[tuple[str, str, list[Shown]]]:
    """Group a project's lines by how far their thread reaches: (verdict, heading, lines), the worst first."""
    shown = [_shown(one) for one in reaching(project)]
    groups = [
        (verdict, heading, [one for one in shown if one.verdict == verdict])
        for verdict, heading in reach_words.HEADINGS
    ]
    return [group for group in groups if group[2]]


def _shown(one: Reach) -> Shown:
    parts = []
    for use, lasts, hand in one.parts:
        lots, short = (hand.lots, hand.short) if hand else (use.lots, 0.0)
        kind = kinds()[use.kind]
        said = reach_words.left(lasts, kind, stitcher().unit) if lasts else "what there is of it is not known"
        advice = reach_words.advice(lasts, short, kind, lots) if lasts else ""
        parts.append(Part(use.name, said, advice))
    return Shown(
        line=one.line,
        name=" + ".join(part.name for part in parts),
        verdict=one.lasts.verdict if one.lasts else "unknown",
        reaches=reach_words.reaches(one.lasts, one.line.full) if one.lasts else "",
        parts=parts,
        shared=reach_words.shared(one.others) if one.lasts else "",
    )
