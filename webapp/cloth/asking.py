"""From a question as it was typed to readings, or to a sentence beside the field that cannot be meant."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from itertools import zip_longest
from typing import Any

from marshmallow import Schema, ValidationError

from webapp.cloth import typed
from webapp.cloth.gauge import Reading
from webapp.cloth.meant import Offer, as_reading, doubt, meant
from webapp.cloth.schemas import PLACES, ChoicesSchema, LineSchema
from webapp.cloth.standards import table
from webapp.forms import Errors

NAMES = ("counted", "length", "part", "way")
KEPT = 100  # characters of what was typed


@dataclass
class Line:
    """One line of the form: what was typed, and what is wrong with it."""

    typed: Mapping[str, str] = field(default_factory=dict)
    errors: Errors = field(default_factory=dict)
    offers: list[Offer] = field(default_factory=list)
    loaded: Mapping[str, str] = field(default_factory=dict)

    @property
    def blank(self) -> bool:
        """Tell whether nothing was typed in it."""
        return not any(self.typed.get(name, "").strip() for name in NAMES[:3])


@dataclass
class Question:
    """The whole question: choices, lines, and the readings they come to if nothing is wrong."""

    choices: Mapping[str, str]
    lines: list[Line]
    errors: Errors = field(default_factory=dict)
    readings: list[Reading] = field(default_factory=list)
    unit: str = "in"

    @property
    def wrong(self) -> bool:
        """Tell whether anything cannot be meant."""
        return bool(self.errors) or any(line.errors for line in self.lines)

    @property
    def doubted(self) -> Line | None:
        """Give the first line that may have been meant otherwise."""
        return next((line for line in self.lines if line.offers), None)

    def otherwise(self, said: Mapping[str, str]) -> bool:
        """Offer what may have been meant where only a hint is ``said``; tells whether there is anything."""
        if "hint" in said:
            first = self.lines[0]
            first.offers = meant(first.loaded, self.choices, table(), True)[:1]
        return self.doubted is not None

    def mended(self, line: Line, fields: Mapping[str, str]) -> dict[str, Any]:
        """Give the question anew with some fields of a line, or choices, changed: names to what is sent."""
        rows = [{**one.typed, **fields} if one is line else one.typed for one in self.lines]
        sent = {name: [row.get(name, "") for row in rows] for name in NAMES}
        return {**{name: fields.get(name, value) for name, value in self.choices.items()}, **sent}


def blank(unit: str) -> Question:
    """Ask nothing yet."""
    return Question({**_loaded(ChoicesSchema(), {})[0], "unit": unit}, [Line()])


def question(choices: Mapping[str, str], columns: Sequence[Sequence[str]]) -> Question:
    """Read a question: ``columns`` are what was typed as counted, length, part and way, line by line."""
    loaded, errors = _loaded(ChoicesSchema(), choices)
    rows = [{n: text[:KEPT] for n, text in zip(NAMES, row, strict=True)} for row in _rows(columns)]
    asked = Question(loaded, [Line(row) for row in rows[:PLACES]] or [Line()], errors, unit=loaded["unit"])
    asked.lines[1:] = [line for line in asked.lines[1:] if not line.blank]
    if len(rows) > PLACES:
        asked.errors["counted"] = [f"{PLACES} places at once at most."]
    for line in asked.lines:
        _read(line, asked)
    if not any(reading.way == "along" for reading in asked.readings) and not asked.wrong:
        asked.lines[0].errors["counted"] = ["Count along the cloth first, then across."]
    return asked


def _rows(columns: Sequence[Sequence[str]]) -> list[tuple[str, ...]]:
    ways = [way or "along" for way in columns[3]]
    return [(*row[:3], row[3] or "along") for row in zip_longest(*columns[:3], ways, fillvalue="")]


def _loaded(schema: Schema, given: Mapping[str, str]) -> tuple[dict[str, Any], Errors]:
    try:
        return dict(schema.load(given)), {}
    except ValidationError as error:
        kept: dict[str, Any] = dict(schema.load({}))
        return kept | dict(error.valid_data or {}), error.normalized_messages()  # type: ignore[no-untyped-call]


def _read(line: Line, asked: Question) -> None:
    loaded, line.errors = _loaded(LineSchema(), line.typed)
    line.loaded = loaded
    if line.errors:
        return
    choices, first = asked.choices, line is asked.lines[0]
    found: dict[str, Any] = {}
    for name, read in (
        ("counted", lambda: typed.counted(loaded["counted"], choices["kind"])),
        ("length", lambda: typed.length(loaded["length"], loaded["part"], choices["unit"])),
    ):
        try:
            found[name] = read()
        except typed.Mistyped as error:
            line.errors[name] = [str(error)]
    if not line.errors:
        mm, used = found["length"]
        asked.unit = used if first else asked.unit
        reading = as_reading(found["counted"], mm, used, choices, loaded["way"])
        asked.readings.append(reading)
        if sentence := doubt(reading, choices["kind"], table()):
            line.errors = {"counted": [sentence], "length": [sentence]}
    if line.errors:
        line.offers = meant(loaded, choices, table(), first)
