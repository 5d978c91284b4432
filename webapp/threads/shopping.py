"""The shopping list: what the chosen projects need, less what is had, thread by thread. Pure.

Needs of a thread are added up over lines and projects before they are rounded up to whole skeins. Substitutes
were put in the place of what is printed before they came here. Sums are exact, so no order changes anything.
All thread in mm as it is sold; beads are counted.
"""

from collections.abc import Iterable, Mapping
from math import fsum
from typing import Any, NamedTuple

from webapp.threads.called import Thread, alike, best
from webapp.threads.estimate import whole


class Need(NamedTuple):
    """What one line of a project still needs of a thread, least and most."""

    project: str
    name: str  # what she uses
    printed: str  # what it stands in for, where it does; else the same
    kind: str
    low: float
    high: float
    lots: tuple[str, ...] = ()


class Had(NamedTuple):
    """What there is of a thread, surely and perhaps, and of which lots."""

    sure: float
    perhaps: float
    lots: tuple[str, ...] = ()


class Wanted(NamedTuple):
    """A line of the list.

    needs, had: mm, least and most, surely and perhaps; units: whole skeins that takes; buy: what of them is
    short; ticks: for each project that needs it the name it is ticked by.
    """

    name: str
    kind: str
    needs: tuple[float, float]
    had: tuple[float, float]
    units: tuple[int, int]
    buy: tuple[int, int]
    lots: tuple[str, ...]
    instead_of: tuple[str, ...]
    ticks: tuple[tuple[str, str], ...]


def shop(needs: Iterable[Need], had: Mapping[Thread, Had], kinds: Mapping[str, Any]) -> list[Wanted]:
    """Draw up the list, in order of names; what there is enough of is on it too, with nothing to buy."""
    by_thread: dict[Thread, list[Need]] = {}
    for need in needs:
        by_thread.setdefault((alike(need.name), need.kind), []).append(need)
    doubled = _doubled(by_thread, kinds)
    order = list(kinds)
    return [
        _wanted(of_it, had.get(thread, Had(0.0, 0.0)), kinds, doubled)
        for thread, of_it in sorted(by_thread.items(), key=lambda one: (one[0][0], order.index(one[0][1])))
    ]


def _wanted(
    needs: list[Need], had: Had, kinds: Mapping[str, Any], doubled: set[tuple[str, Thread]]
) -> Wanted:
    name, kind = best(need.name for need in needs), needs[0].kind
    low, high = fsum(need.low for need in needs), fsum(need.high for need in needs)
    length = kinds[kind]["length_mm"] or 1.0
    mine = {alike(need.name) for need in needs}
    spelt: dict[str, list[str]] = {}
    for need in needs:
        spelt.setdefault(need.project, []).append(need.name)
    ticks = {project: _tick(project, names, (kind, kinds), doubled) for project, names in spelt.items()}
    return Wanted(
        name=name,
        kind=kind,
        needs=(low, high),
        had=(had.sure, had.perhaps),
        units=(_units(low, length), _units(high, length)),
        buy=(_units(low - had.perhaps, length), _units(high - had.sure, length)),
        lots=tuple(sorted({*had.lots, *(lot for need in needs for lot in need.lots)})),
        instead_of=tuple(sorted({need.printed for need in needs if alike(need.printed) not in mine})),
        ticks=tuple(sorted(ticks.items())),
    )


def _units(mm: float, length: float) -> int:
    return max(0, whole(mm / length))


def _doubled(by_thread: Mapping[Thread, list[Need]], kinds: Mapping[str, Any]) -> set[tuple[str, Thread]]:
    """Find threads that share their name with one of another kind in the same project, but for the first."""
    named: dict[tuple[str, str], set[str]] = {}
    for (name, kind), needs in by_thread.items():
        for need in needs:
            named.setdefault((need.project, name), set()).add(kind)
    order = list(kinds)
    return {
        (project, (name, kind))
        for (project, name), of_name in named.items()
        for kind in sorted(of_name, key=order.index)[1:]
    }


def _tick(
    project: str, names: list[str], of: tuple[str, Mapping[str, Any]], doubled: set[tuple[str, Thread]]
) -> str:
    """Name what is ticked in a project, as its legend spells it.

    Of two kinds of one name the second says which kind it is.
    """
    (kind, kinds), name = of, best(names)
    if (project, (alike(name), kind)) not in doubled:
        return name
    of_kind = f" ({kinds[kind]['name']})"
    return name[: 100 - len(of_kind)] + of_kind


def is_ticked(wanted: Wanted, have: Mapping[str, Mapping[str, bool]]) -> bool:
    """Tell whether a line is ticked in every project that needs it; ``have`` is the fold's, by project."""
    return all(have.get(project, {}).get(name, False) for project, name in wanted.ticks)
