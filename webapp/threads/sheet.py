"""A sheet of lines to tick: what each says, and where that comes from. Pure.

A line is kept by its ``key``: ours begin with "our:", "thread:" or "needle:", her own with "own:", so that
none meets another.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from hashlib import sha256
from typing import Any, NamedTuple, Protocol

OWN = "own:"
PRACTICE = "common practice, no source"


class Line(Protocol):
    """What a sheet must know of a line of the legend."""

    symbol: str
    parts: list[dict[str, Any]]
    beads: int


@dataclass(frozen=True)
class Item:
    """One line: ``more`` stands under it; liked: taken along only if she likes."""

    key: str
    text: str
    more: str = ""
    sources: tuple[str, ...] = (PRACTICE,)
    liked: bool = False

    @property
    def id(self) -> str:
        """Give a word that a page can call it by."""
        return f"i{sha256(self.key.encode()).hexdigest()[:12]}"


class Thread(NamedTuple):
    """A thread of the legend, once however many lines it is on, with the symbols of those lines."""

    kind: str
    name: str
    symbols: tuple[str, ...]


def own(key: str) -> Item:
    """Give a line she wrote herself."""
    return Item(key, key.removeprefix(OWN), sources=())


def threads(lines: Sequence[Line]) -> list[Thread]:
    """Give every thread as she uses it, in the legend's order; what takes another's place stands for it."""
    found: dict[tuple[str, str], list[str]] = {}
    for line, part in each_part(lines):
        symbols = found.setdefault((part["kind"], part.get("instead") or part["thread"]), [])
        if line.symbol and line.symbol not in symbols:
            symbols.append(line.symbol)
    return [Thread(kind, name, tuple(symbols)) for (kind, name), symbols in found.items()]


def each_part(lines: Sequence[Line]) -> Iterator[tuple[Line, dict[str, Any]]]:
    """Go through every part of every line."""
    return ((line, part) for line in lines for part in line.parts)


def has_beads(lines: Sequence[Line]) -> bool:
    """Tell whether beads are sewn on."""
    return any(line.beads for line in lines) or any(part["kind"] == "beads" for _, part in each_part(lines))


def kind_in_words(kinds: Mapping[str, Any], kind: str) -> str:
    """Say what kind of thread it is; plain cotton goes without saying, a kind we do not know is "unknown"."""
    return "" if kind == "cotton" else str(kinds[kind]["name"]) if kind in kinds else "Unknown kind"
