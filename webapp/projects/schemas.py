"""The project's form, at the boundary."""

import re
from collections.abc import Sequence
from typing import Any

from marshmallow import ValidationError, fields, post_load, validate, validates_schema

from webapp.forms import FormSchema
from webapp.lines import can_be_seen, is_one_line, without_turns
from webapp.numbers import counted, number
from webapp.projects import words
from webapp.projects.plan import usual_start

LARGEST = 10_000  # stitches along a side
LONGEST = 120  # characters of a title
FITTING = (
    ("first_row", "height", ("row", "rows")),
    ("start_column", "width", ("column", "columns")),
    ("expected", "width", ("column", "columns")),
)


class Title(fields.Field[str]):
    """A name on one line, of which something can be seen."""

    def _deserialize(self, value: Any, attr: str | None, data: Any, **kwargs: Any) -> str:
        title = without_turns(str(value)).strip()
        if not is_one_line(title):
            raise ValidationError("Keep the title to one line, without tabs or control characters.")
        if not can_be_seen(title):
            raise ValidationError("Give the project a title that can be seen.")
        if len(title) > LONGEST:
            raise ValidationError(f"Shorten the title: it has {len(title)} characters, and {LONGEST} fit.")
        return title


class Whole(fields.Field[int]):
    """A whole number, written in digits and nothing else."""

    def __init__(self, what: str, high: int = LARGEST, **kwargs: Any) -> None:
        self.sentence = f"Write {what} in digits only, from 1 to {number(high)}."
        self.high = high
        super().__init__(error_messages={"required": self.sentence}, **kwargs)

    def _deserialize(self, value: Any, attr: str | None, data: Any, **kwargs: Any) -> int:
        text = str(value).strip()
        if not re.fullmatch("[0-9]{1,9}", text) or not 1 <= int(text) <= self.high:
            raise ValidationError(self.sentence)
        return int(text)


class Count(fields.Field[float]):
    """A cloth count per inch; decimals may follow a point or a comma."""

    def _deserialize(self, value: Any, attr: str | None, data: Any, **kwargs: Any) -> float:
        text = str(value).strip().replace(",", ".")
        if not re.fullmatch(r"[0-9]{1,3}(\.[0-9]{1,6})?", text) or not 1 <= float(text) <= 100:
            raise ValidationError("Write a number from 1 to 100, such as 14 or 13.7.")
        return float(text)


def one_of(options: Sequence[tuple[Any, str]], default: str) -> fields.String:
    """Make a field that takes one of ``options``."""
    choice = validate.OneOf([value for value, _ in options], error="Choose one of those shown.")
    return fields.String(validate=choice, load_default=default)


class ProjectSchema(FormSchema):
    """A project as her form has it. Title and size are enough."""

    title = Title(required=True, error_messages={"required": "Give the project a title."})
    width = Whole("the width", required=True)
    height = Whole("the height", required=True)
    count = Count(load_default=14.0)
    across = Count(load_default=None)
    over = one_of(words.OVERS, "1")
    state = one_of(words.STATES, "planned")
    working = one_of(words.WORKINGS, "rows")
    direction = one_of(words.DIRECTIONS, "top")
    first_row = Whole("the first row")
    start_column = Whole("the start column")
    start_way = one_of(words.WAYS, "right")
    expected = Whole("the stitches", load_default=None)
    block_from = one_of(words.CORNERS, "top-left")
    block_way = one_of(words.BLOCK_WAYS, "across")
    step = one_of(words.STEPS, "1")
    frame = one_of(words.FRAMES, "hoop")

    @validates_schema(skip_on_field_errors=False)
    def fit(self, data: dict[str, Any], **kwargs: Any) -> None:
        """Hold what lies on the chart against the chart's size."""
        wrong = {
            name: [f"The chart has {counted(data[side], *what)}: write no more than that."]
            for name, side, what in FITTING
            if data.get(name) is not None and side in data and data[name] > data[side]
        }
        if wrong:
            raise ValidationError(wrong)

    @post_load
    def complete(self, data: dict[str, Any], **kwargs: Any) -> dict[str, Any]:
        """Fill in what follows from the rest."""
        uneven = data["across"] not in (None, data["count"])
        across = data["across"] if uneven else None
        return {**usual_start(data), **data, "over": int(data["over"]), "across": across}


class NewProjectSchema(ProjectSchema):
    """A new project; with an id of its own a form sent twice makes one."""

    id = fields.UUID(error_messages={"invalid_uuid": "This form was damaged on the way. Begin once more."})


class StateSchema(FormSchema):
    """One of the four states."""

    state = fields.String(
        required=True,
        validate=validate.OneOf([value for value, _ in words.STATES], error="Choose one of the four states."),
        error_messages={"required": "Choose one of the four states."},
    )
