"""What the shopping list says. Pure."""

from collections.abc import Iterable, Mapping
from typing import Any

from webapp.cloth.words import join
from webapp.threads.amounts import between, sold
from webapp.threads.in_words import run
from webapp.threads.shopping import Wanted


def to_buy(wanted: Wanted, kind: Mapping[str, Any]) -> str:
    """Say how much to buy: the most it may take, which is safe."""
    return sold(wanted.buy[1], kind)


def why(wanted: Wanted, kind: Mapping[str, Any], unit: str) -> str:
    """Say what it comes from: "2 to 3 skeins – buy 3", or with what she has."""
    if kind["sold"] == "bead":
        said = f"{sold(wanted.units[0], kind)}, and some to spare"
        return said + (f"; you have {wanted.had[0]:,.0f}" if wanted.had[0] else "")
    had = f"you have {run(wanted.had[0], unit, 'down')}" if wanted.had[1] else ""
    least, most = wanted.buy if had else wanted.units
    if had:
        takes = f"takes {between(wanted.needs, unit)}, {had}"
        return f"{takes}: {_range(least, most, kind)}" if least != most else takes
    return _range(least, most, kind) if least != most else f"takes {between(wanted.needs, unit)}"


def _range(least: int, most: int, kind: Mapping[str, Any]) -> str:
    return f"{least} to {sold(most, kind)} – buy {most}"


def of_lots(wanted: Wanted) -> str:
    """Say what there is to say of dye lots."""
    if len(wanted.lots) > 1:
        many = "Two" if len(wanted.lots) == 2 else str(len(wanted.lots))
        return f"{many} lots so far: {join(list(wanted.lots))}. Buy all of one lot at once."
    return f"Your lot: {wanted.lots[0]}." if wanted.lots else ""


def line_of(wanted: Wanted, kind: Mapping[str, Any]) -> str:
    """Write a line as it is sent to somebody: "Moss 12, silk: 3 skeins, lot 7A"."""
    of_kind = "" if kind["name"] == "Cotton" else f", {kind['name'].lower()}"
    lot = f", lot {' or '.join(wanted.lots)}" if wanted.lots else ""
    return f"{wanted.name}{of_kind}: {to_buy(wanted, kind)}{lot}"


def as_text(title: str, lines: Iterable[str]) -> str:
    """Write the list as a text to send."""
    return "\n".join([title, "", *(f"☐ {line}" for line in lines)])


def title_of(titles: list[str]) -> str:
    """Name the list by its projects."""
    shown = titles if len(titles) < 4 else [*titles[:2], f"{len(titles) - 2} more"]
    return f"Thread for {join(shown)}" if titles else "Thread to buy"
