"""The kinds of thread and their habits; of a blend the most delicate part decides. Pure."""

from collections.abc import Mapping, Sequence
from math import sqrt
from typing import Any

from webapp.threads.bounds import STRANDS
from webapp.threads.estimate import Worked
from webapp.threads.geometry import STRAND

Kinds = Mapping[str, Mapping[str, Any]]
# mm of one strand where it is not as one of six (common practice, no source)
DIAMETERS = {"wool": 0.6, "metallic": 0.3, "filament": 0.1}


def kind_of(kinds: Kinds, name: str) -> Mapping[str, Any]:
    """Give the row of one kind (of shared/tables/threads.json, "kinds"); ValueError where there is none."""
    if name not in kinds:
        raise ValueError("Choose one of the kinds of thread.")
    return kinds[name]


def deciding(kinds: Kinds, names: Sequence[str]) -> str:
    """Name the most delicate of the kinds in the needle, of several the one that is cut shortest.

    ValueError with a sentence where there is none.
    """
    if not names:
        raise ValueError("Say what thread it is.")
    return max(names, key=lambda name: (kind_of(kinds, name)["delicate"], -kinds[name]["working_mm"], name))


def worked(
    kinds: Kinds,
    parts: Sequence[tuple[str, int]],
    method: str | None = None,
    working: float | None = None,
) -> list[Worked]:
    """Give how each part is worked: ``parts`` are (kind, strands) of what lies in the needle together.

    method, working (mm): hers, where she said so; else as the most delicate part is worked and cut. A loop
    begins only an even number of strands of one thread whose kind may. Each part keeps its own strands.
    ValueError with a sentence.
    """
    lead = kind_of(kinds, deciding(kinds, [name for name, _strands in parts]))
    together = sum(strands for _name, strands in parts)
    if not all(1 <= strands <= STRANDS[1] for _name, strands in parts):
        raise ValueError("The needle holds 1 to 24 strands.")
    area = 0.0
    for name, strands in parts:
        diameter = DIAMETERS.get(name, STRAND)
        area += strands * diameter * diameter  # one by one: sum() rounds otherwise than JavaScript can
    return [
        Worked(
            strands=strands,
            together=together,
            method=method or lead["method"],
            working=working or lead["working_mm"],
            loop=len(parts) == 1 and lead["loop"] and together % 2 == 0,
            diameter=sqrt(area / together),
        )
        for _name, strands in parts
    ]
