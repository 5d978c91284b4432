"""The legends of the demonstration's projects: invented threads, in the shares their stitches are laid in."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from webapp.db import db
from webapp.ids import new_id
from webapp.projects.models import Project
from webapp.threads.carried import carry
from webapp.threads.legend import Line, Part
from webapp.threads.legend_kept import add, legend


@dataclass(frozen=True)
class Thread:
    """One line of a story's legend: of 100 crosses so many are of it; backstitch in lengths of a stitch."""

    name: str
    symbol: str
    colour: str
    share: int
    kind: str = "cotton"
    beside: str = ""  # what it is blended with, one strand of each
    instead: str = ""
    lots: tuple[str, ...] = ()
    back: int = 0
    scatter: str = "mixed"


LEGENDS: Mapping[str, tuple[Thread, ...]] = {
    "Rook at the window": (
        Thread("Rook black", "X", "#22242c", 46, back=64),
        Thread("Window frost", "o", "#c9d3dc", 31),
        Thread("Sill oak", "/", "#8a6a47", 23, scatter="together"),
    ),
    "Harbour lanterns": (
        Thread("Harbour dusk", "X", "#2f4468", 38, lots=("7", "9"), scatter="together"),
        Thread("Quay stone", "/", "#8b8a80", 27),
        Thread("Lantern amber", "+", "#d79a3c", 9, kind="hand-dyed", back=118),
        Thread("Rope hemp", "=", "#b59b6f", 12, instead="Barn straw"),
        Thread("Water gleam", "~", "#7fa6b5", 14, beside="Silver filament", scatter="scattered"),
    ),
    "Quince tree": (
        Thread("Quince gold", "o", "#d8b13f", 22),
        Thread("Leaf under", "#", "#56754a", 34, lots=("31",)),
        Thread("Leaf light", "+", "#8fae74", 21, scatter="scattered"),
        Thread("Bark walnut", "/", "#6a4a30", 14, back=240),
        Thread("Blossom", "@", "#e9c6c6", 9, kind="silk"),
    ),
    "Winter hedge": (
        Thread("Hedge slate", "X", "#4b5860", 44),
        Thread("Snow shadow", "-", "#cfd8de", 38),
        Thread("Haw red", "*", "#a23434", 18, scatter="scattered"),
    ),
    "Tide table": (
        Thread("Ink", "X", "#27324a", 30),
        Thread("Sea green", "o", "#5c8f84", 45),
        Thread("Lamp yellow", "+", "#e0bf58", 25),
    ),
    "Ferry at first light": (
        Thread("Hull white", "o", "#e8e4da", 18),
        Thread("Funnel madder", "X", "#9b3527", 7),
        Thread("First light", "~", "#e4b98f", 33, kind="hand-dyed"),
        Thread("Firth", "=", "#5f7d93", 42, scatter="together"),
    ),
}


def crosses(story: str, total: int) -> list[int]:
    """Share a chart's crosses among its threads, so that none is lost."""
    threads = LEGENDS[story]
    found = [total * thread.share // 100 for thread in threads]
    return [found[0] + total - sum(found), *found[1:]]


def lay_down(project: Project, counts: Sequence[int]) -> None:
    """Write a project's legend: so many crosses of each of its threads."""
    there = legend(project)
    for thread, full in zip(LEGENDS[project.title], counts, strict=True):
        one = Part(thread.name, thread.kind, 1 if thread.beside else 2, thread.instead, thread.lots)
        beside = (Part(thread.beside, "filament", 1),) if thread.beside else ()
        line = Line(
            (one, *beside), thread.symbol, thread.colour, full, back=thread.back, scatter=thread.scatter
        )
        add(project, line, new_id(), there)
    project.chart_total = sum(counts)
    db.session.flush()
    carry(project)


def laid(entries: Sequence[Mapping[str, object]], story: str) -> list[int]:
    """Count the crosses of each thread that entries come to."""
    sums = dict.fromkeys((thread.name for thread in LEGENDS[story]), 0)
    for entry in entries:
        if entry["kind"] == "stitches":
            sums[str(entry["thread"])] += int(str(entry["by"]))
    return list(sums.values())
