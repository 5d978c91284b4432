"""From a question as it was typed to readings, or to a sentence beside the field that cannot be meant."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from itertools import zip_longest
from typing import Any

from marshmallow import Schema, ValidationError

from webapp.cloth import typed
from webapp.cloth.gauge import INCH, Reading
from webapp.cloth.schemas import PLACES, ChoicesSchema, LineSchema
from webapp.forms import Errors

MILLIMETRE = 1.0  # the smallest division of a tape in centimetres
NAMES = ("counted", "length", "part", "way")
KEPT = 100  # characters of what was typed


@dataclass
class Line:
    """One line of the form: what was typed, and what is wrong with it."""

    typed: Mapping[str, str] = field(default_factory=dict)
    errors: Errors = field(default_factory=dict)

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
    if line.errors:
        return
    kind, unit = asked.choices["kind"], asked.choices["unit"]
    found: dict[str, Any] = {}
    for name, read in (
        ("counted", lambda: typed.counted(loaded["counted"], kind)),
        ("length", lambda: typed.length(loaded["length"], loaded["part"], unit)),
    ):
        try:
            found[name] = read()
        except typed.Mistyped as error:
            line.errors[name] = [str(error)]
    if line.errors:
        return
    mm, used = found["length"]
    asked.unit = used if line is asked.lines[0] else asked.unit
    division = INCH / int(asked.choices["division"]) if used == "in" else MILLIMETRE
    reading = Reading(found["counted"], mm, division, asked.choices["ends"] == "pins", loaded["way"])
    try:
        asked.readings.append(typed.plausible(reading))
    except typed.Mistyped as error:
        line.errors["counted"] = [str(error)]
