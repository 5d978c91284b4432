"""What is said of how far thread reaches: in words, rounded only here. Pure."""

from collections.abc import Mapping, Sequence
from typing import Any

from webapp.cloth.words import join
from webapp.numbers import counted, number
from webapp.threads.amounts import between, sold
from webapp.threads.in_words import run
from webapp.threads.lasting import Lasting, units

HEADINGS = (
    ("not", "Not enough"),
    ("perhaps", "May just reach"),
    ("unknown", "Not known"),
    ("surely", "Surely enough"),
)


def reaches(lasts: Lasting, planned: int) -> str:
    """Say to how many of the crosses it reaches: "Reaches 1,240 to 1,480 of 2,000 crosses"."""
    if not planned:
        return ""
    sure, perhaps = (min(planned, crosses) for crosses in lasts.crosses)
    if sure == planned:
        return f"Reaches all {counted(planned, 'cross', 'crosses')}"
    reach = number(sure) if sure == perhaps else f"{number(sure)} to {number(perhaps)}"
    return f"Reaches {reach} of {counted(planned, 'cross', 'crosses')}"


def left(lasts: Lasting, kind: Mapping[str, Any], unit: str) -> str:
    """Say what there is and what is to come: "6.2 m left, takes 7 to 9 m more"."""
    if kind["sold"] == "bead":
        return f"{sold(int(lasts.has[0]), kind)} left, takes {sold(int(lasts.needs[0] + 0.5), kind)} more"
    if not lasts.needs[1]:
        return "all laid"
    takes = between(lasts.needs, unit)
    return f"{run(lasts.has[0], unit, 'down')} left, takes {takes} more"


def advice(lasts: Lasting, short: float, kind: Mapping[str, Any], lots: Sequence[str]) -> str:
    """Say what to do while the same lot can still be had; nothing where it surely reaches.

    short: mm that all who share the thread lack.
    """
    if lasts.verdict == "surely":
        return ""
    many = max(1, units(max(short, lasts.needs[1] - lasts.has[0]), kind))
    if kind["sold"] == "bead":
        return f"Get {number(many)} more now, of the same make."
    of = f" ({join(list(lots), 'or')})" if lots else ""
    what = f"one more {kind['sold']}" if many == 1 else f"{number(many)} more {kind['sold']}s"
    return f"Buy {what} of {'one lot' if len(lots) > 1 else 'the same lot'} now{of}."


def shared(others: Sequence[str]) -> str:
    """Say with what a thread is shared."""
    return f"Shared with {join(list(others))}." if others else ""
