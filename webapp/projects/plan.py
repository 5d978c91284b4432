"""A project's plan: what it is made of, and how it changes."""

from collections.abc import Mapping
from datetime import datetime
from typing import Any

from webapp.projects import turns
from webapp.projects.models import Project
from webapp.projects.words import count_in_words

PLAN = (
    "title", "width", "height", "count", "over", "state", "working", "direction", "first_row", "start_column",
    "start_way", "expected", "block_from", "block_way", "step", "frame",
)  # fmt: skip
FORM = (*PLAN, "across")


def usual_start(plan: Mapping[str, Any]) -> dict[str, int]:
    """Tell where a plan's rows begin when she does not say."""
    return {
        "first_row": (plan["height"] + 1) // 2 if plan["direction"] == "middle" else 1,
        "start_column": plan["width"] if plan["start_way"] == "left" else 1,
    }


def form_of(project: Project) -> dict[str, str]:
    """Write a project as its form has it; what follows from the rest stays blank, to go on following."""
    plan = {name: getattr(project, name) for name in FORM}
    for name, usual in usual_start(plan).items():
        if plan[name] == usual:
            plan[name] = None
    for name in ("count", "across"):
        plan[name] = None if plan[name] is None else count_in_words(plan[name])
    return {name: "" if value is None else str(value) for name, value in plan.items()}


def change(project: Project, values: Mapping[str, Any]) -> bool:
    """Give the plan new values; its revision rises by one if any differs, and that is told."""
    changed = {name: value for name, value in values.items() if getattr(project, name) != value}
    for name, value in changed.items():
        setattr(project, name, value)
    if "state" in changed:
        turns.note(project)
    if changed:
        project.plan_revision += 1
    return bool(changed)


def lay_away(project: Project, away: bool, now: datetime) -> None:
    """Put a project away, or take it out again; phones, which then remind or not, are told."""
    if away != (project.put_away is not None):
        project.put_away = now if away else None
        project.plan_revision += 1
