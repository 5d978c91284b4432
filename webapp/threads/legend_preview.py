"""What a pasted legend is understood as, line by line, before anything of it is kept. Pure."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from typing import NamedTuple

from webapp.threads.estimate import Counts
from webapp.threads.legend import Line
from webapp.threads.legend_forms import NO_COLOUR
from webapp.threads.legend_reads import FIELDS, Read
from webapp.threads.legend_text import Row

SIGN = 2  # characters
HELD = (*FIELDS, "rest", "at", "ask")  # what of a line is carried from page to page
NO_STITCHES = "No stitches were found here: write how many, or 0."
REST = "Put it where it belongs, or empty this."
Reader = Callable[[Mapping[str, str]], Read]


class Preview(NamedTuple):
    """One line: its number, what is typed of it, what that comes to, and whether it is there already.

    there: "" for a new line, "changed" for one that it changes, "same" for one that is as it is.
    """

    n: int
    typed: Mapping[str, str]
    line: Line | None
    errors: Mapping[str, Sequence[str]]
    there: str = ""

    @property
    def at(self) -> str:
        """Tell on what line of what she gave it stood."""
        return self.typed.get("at", "")


@dataclass
class Looked:
    """All of them, in order, and what was left out."""

    lines: list[Preview]
    left_out: list[str] = field(default_factory=list)

    @property
    def wrong(self) -> list[Preview]:
        """List those that are not understood."""
        return [one for one in self.lines if one.line is None]

    @property
    def right(self) -> list[Preview]:
        """List those that are."""
        return [one for one in self.lines if one.line is not None]


def begun(rows: Sequence[Row]) -> list[dict[str, str]]:
    """Begin with the lines of a text; where most have stitches, those without are asked for them."""
    have = [any(row.typed.get(name, "").strip() for name in Counts._fields) for row in rows]
    most = sum(have) * 2 > len(rows)
    signs = sum("symbol" in row.typed for row in rows) * 2 > len(rows)
    return [
        {
            **(_sign_alone(row.typed) if signs and not row.named else row.typed),
            "at": str(row.number),
            **({"ask": "full"} if most and not has else {}),
        }
        for row, has in zip(rows, have, strict=True)
    ]


def _sign_alone(typed: Mapping[str, str]) -> Mapping[str, str]:
    """Take a name as short as a symbol for one, among lines that have symbols: then the name is missing."""
    if "symbol" in typed or len(typed.get("thread", "")) > SIGN:
        return typed
    return {("symbol" if name == "thread" else name): text for name, text in typed.items()}


def look(typed: Sequence[Mapping[str, str]], reader: Reader, there: Sequence[Line]) -> list[Preview]:
    """Read every line, and hold it against those that are there."""
    left = list(there)
    return [_looked(n, one, reader, left) for n, one in enumerate(typed)]


def _looked(n: int, typed: Mapping[str, str], reader: Reader, left: list[Line]) -> Preview:
    line, errors = reader(typed)
    errors = dict(errors)
    if typed.get("rest", "").strip():
        errors["rest"] = [REST]
    if typed.get("ask") and not any(typed.get(name, "").strip() for name in Counts._fields):
        errors["full"] = [NO_STITCHES]
    if line is None or errors:
        return Preview(n, typed, None, errors)
    found = next((one for one in left if one.same == line.same), None)
    if found is None:
        return Preview(n, typed, line, {})
    left.remove(found)
    return Preview(n, typed, line, {}, "same" if found == line.beside(found) else "changed")


def corrected(typed: Mapping[str, str], form: Mapping[str, str], n: int) -> dict[str, str]:
    """Put what she typed into the fields of line ``n`` over what was there."""
    found = dict(typed)
    for name in (*FIELDS, "rest"):
        text = form.get(f"{name}-{n}")
        if text is not None:
            found[name] = "" if name == "colour" and text == NO_COLOUR else text
    return found
