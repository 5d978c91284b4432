"""What is typed of designs, counts and lengths: read, or refused with a sentence to stand beside the field.

Pure, and the same in static/js/cloth/reads.js. What is read is given under the names of the fields, lengths
in mm; a field left empty is None.
"""

import re
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field
from typing import Any

from webapp.cloth.typed import MM, OF_AN_INCH, PARTS, TWICE, Mistyped, amount

FINISHES = (("framed", "Framed"), ("usual", "Usual"), ("small", "Small"), ("ornament", "Ornament"))
HELD = (
    ("hoop", "Hoop"),
    ("clamps", "Clamps"),
    ("scroll", "Scroll frame"),
    ("stretched", "Stretched"),
    ("hand", "In hand"),
)
UNITS = (("in", "in"), ("cm", "cm"))
OVERS = (("1", "One"), ("2", "Two"))
Offered = Mapping[str, tuple[tuple[str, ...], str]]
CHOICES: Offered = {
    "unit": (("in", "cm"), "in"),
    "over": (("1", "2", "3"), "1"),
    "finish": (tuple(name for name, _ in FINISHES), "usual"),
    "held": (tuple(name for name, _ in HELD), "hand"),
    "frays": (("", "yes"), ""),
    "by": (("design", "cut"), "design"),
    "off": (("bolt", "piece"), "bolt"),
    "turn": (("yes", "no"), "yes"),
}
KEPT = 40  # characters of what was typed


@dataclass
class Asked:
    """A question as it was typed: what it comes to, and the sentence for each field that cannot be meant."""

    typed: Mapping[str, str]
    values: dict[str, Any] = field(default_factory=dict)
    errors: dict[str, str] = field(default_factory=dict)

    @property
    def blank(self) -> bool:
        """Tell whether no figure was typed at all."""
        return not any(text.strip() for name, text in self.typed.items() if name not in CHOICES)

    def wrong(self, names: Iterable[str]) -> str:
        """Give the first sentence on any of several fields, or nothing."""
        return next((self.errors[name] for name in names if name in self.errors), "")


def stitches(text: str) -> int:
    """Read one side of a design."""
    return whole(text, 10_000, "Write stitches in digits, from 1 to 10,000.")


def cuts(text: str) -> int:
    """Read how many are in a class."""
    return whole(text, 200, "Write a number from 1 to 200.")


def whole(text: str, high: int, sentence: str) -> int:
    """Read a whole number from 1 on, or refuse it with a sentence."""
    if not re.fullmatch("[0-9]{1,6}", text) or not 1 <= int(text) <= high:
        raise Mistyped(sentence)
    return int(text)


def count(text: str) -> float:
    """Read a count per inch."""
    wrong = Mistyped("Write a count from 1 to 100, like 14 or 27.5.")
    try:
        number, unit, _divided = amount(text, "14")
    except Mistyped:
        raise wrong from None
    if unit or not 1 <= number <= 100:
        raise wrong
    return number


def span(text: str, unit: str, low: float, high: float, sentence: str) -> float:
    """Read a length in mm; a unit that is typed goes before the one that was chosen."""
    try:
        number, named, _divided = amount(text, "18")
    except Mistyped:
        raise Mistyped("Write a length, like 18, 17 1/2 or 45 cm.") from None
    mm = number * MM[named or unit]
    if not low <= mm <= high:
        raise Mistyped(sentence)
    return mm


def cloth(text: str, unit: str) -> float:
    """Read one side of a piece, a cut or a bolt, mm."""
    inches = "Cloth is measured from half an inch to 109 yards."
    return span(text, unit, 10, 100_000, inches if unit == "in" else "Cloth is measured from 1 cm to 100 m.")


PARTED = dict.fromkeys(("piece_width", "piece_height", "cut_width", "cut_height", "bolt_width"), PARTS)


def parted(text: str, part: str, unit: str) -> str:
    """Put the part of an inch that was chosen beside a length to what was typed, if it is in inches."""
    if part not in PARTS:
        return text
    try:
        number, named, _divided = amount(text or "0", "18")
    except Mistyped:
        return text
    if unit != "in" and (named or unit) != "in":
        return text  # then no list of fractions is to be seen
    if (named or unit) != "in":
        raise Mistyped(OF_AN_INCH)
    if number != int(number):
        raise Mistyped(TWICE)
    return f"{int(number)} {part} in"


def margin(text: str, unit: str) -> float:
    """Read a margin of her own, mm a side."""
    return span(text, unit, 0, 900, f"A margin is from nothing to {'35 in' if unit == 'in' else '90 cm'}.")


Readers = Mapping[str, Callable[[str, str], Any]]
READERS: Readers = {
    **{name: lambda text, _unit: stitches(text) for name in ("width", "height")},
    **{name: lambda text, _unit: count(text) for name in ("count", "across")},
    **dict.fromkeys(PARTED, cloth),
    "own": margin,
    "n": lambda text, _unit: cuts(text),
}


def named(given: Mapping[str, str]) -> dict[str, str]:
    """Give an address's fields the names of the forms, so that pages and scripts answer it alike.

    ``margin`` is her own. Where figures are given, nothing grips the cloth unless it is said what does; who
    asks nothing yet is offered a hoop.
    """
    typed = {"own" if name == "margin" else name: text for name, text in given.items()}
    if "margin" in given:
        typed["own"] = given["margin"]
    is_asked = any(typed.get(name, "").strip() for name in READERS if name != "count")
    return {"held": "hand" if is_asked else "hoop", **typed}


def choices(typed: Mapping[str, str], offered: Offered = CHOICES) -> dict[str, str]:
    """Give what was chosen among a few; what was not offered counts as not chosen."""
    given = {name: typed.get(name, default) for name, (_options, default) in offered.items()}
    return {name: value if value in offered[name][0] else offered[name][1] for name, value in given.items()}


def read(
    typed: Mapping[str, str],
    needed: Iterable[str],
    other: Iterable[str],
    readers: Readers = READERS,
    offered: Offered = CHOICES,
) -> Asked:
    """Read the fields that are ``needed``, and ``other`` ones where something is typed."""
    kept = {name: text[:KEPT] for name, text in typed.items()}
    asked = Asked(kept, dict(choices(kept, offered)))
    needed = tuple(needed)
    for name in (*needed, *other):
        text = kept.get(name, "").strip()
        asked.values[name] = None
        try:
            if name in PARTED:
                text = parted(text, kept.get(f"{name}_part", ""), asked.values["unit"])
            if not text and name not in needed:
                continue
            asked.values[name] = readers[name](text, asked.values["unit"])
        except Mistyped as error:
            asked.errors[name] = str(error)
    return asked


def together(asked: Asked, one: str, other: str, sentence: str) -> None:
    """Ask for both of two fields where only one is filled in."""
    for name, beside in ((one, other), (other, one)):
        if asked.values[name] is None and asked.values[beside] is not None and name not in asked.errors:
            asked.errors[name] = sentence
