"""What a project keeps of the slip it was made from, and the slip that a project asks for.

A project has columns for what its own pages use; the rest of the slip's question (finish, fraying, a margin
of her own, unit, how far the count may be off) it keeps as a text, written like an address's query.
"""

from typing import Protocol
from urllib.parse import parse_qsl, urlencode

from webapp.cloth import slip_text
from webapp.cloth.sizing import Cloth
from webapp.cloth.slip_text import Slip
from webapp.cloth.words import plain


class Planned(Protocol):
    """What is asked of a project."""

    title: str
    width: int
    height: int
    count: float
    across: float | None
    over: int
    frame: str
    bench: str | None


def cloth_of(project: Planned) -> Cloth:
    """Give the cloth a project is planned on: ``across`` is its count down the height, where that differs."""
    return Cloth(project.count, project.across or project.count, project.over)


def rest_of(slip: Slip) -> str:
    """Write what a project has no column for; how far the count may be off stands with the count it is of."""
    rest = {"finish": slip.finish, "frays": "yes" if slip.frays else "", "unit": slip.unit}
    rest["own"] = "" if slip.own is None else f"{plain(slip.own)} mm"
    if slip.error is not None:
        rest |= {"error": plain(slip.error), "of": plain(slip.count)}
    return urlencode({name: text for name, text in rest.items() if text})


def asked_by(project: Planned) -> dict[str, str]:
    """Give the question of a project's slip, as the slip's form asks it.

    An error is left out where the count is no longer the one it was measured with.
    """
    rest = dict(parse_qsl(project.bench or ""))
    if rest.pop("of", "") != plain(project.count):
        rest.pop("error", None)
    return {
        "title": project.title[: slip_text.LONGEST],
        "width": str(project.width),
        "height": str(project.height),
        "count": plain(project.count),
        "across": "" if project.across is None else plain(project.across),
        "over": str(project.over),
        "held": project.frame,
        **rest,
    }
