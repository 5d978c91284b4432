"""What the gauge is asked: the choices of its form, and the lines of what was counted in what length."""

from typing import Any

from marshmallow import Schema, fields, validate, validates_schema
from marshmallow.exceptions import ValidationError

from webapp.cloth.answer import KINDS
from webapp.cloth.naming import COARSEST, FINEST
from webapp.cloth.typed import PARTS
from webapp.forms import FormSchema

PLACES = 12  # counts in one question at most
DIVISIONS = {"8": "eighths", "16": "sixteenths"}
ENDS = {"marks": "To a mark of the tape", "pins": "Between two pins"}
WAYS = ("along", "across")
CHOICE = "Choose one of those offered."


def chosen(options: Any, default: str) -> fields.String:
    """Ask for one of a few."""
    return fields.String(load_default=default, validate=validate.OneOf(options, error=CHOICE))


class ChoicesSchema(FormSchema):
    """What was counted, in which unit, on what tape, between which ends."""

    kind = chosen(KINDS, "squares")
    unit = chosen(("in", "cm"), "in")
    division = chosen(DIVISIONS, "16")
    ends = chosen(ENDS, "marks")


class LineSchema(Schema):
    """One count as typed: how many, in what length and what part of an inch, which way of the cloth."""

    counted = fields.String(load_default="", validate=validate.Length(max=40, error="That is too long."))
    length = fields.String(load_default="", validate=validate.Length(max=40, error="That is too long."))
    part = fields.String(load_default="", validate=validate.OneOf(("", *PARTS), error=CHOICE))
    way = chosen(WAYS, "along")


class MeasuredSchema(FormSchema):
    """A count that was measured, per inch, and the ends of its interval."""

    count = fields.Float(required=True, validate=validate.Range(COARSEST, FINEST))
    low = fields.Float(load_default=None, validate=validate.Range(0, 2 * FINEST))
    high = fields.Float(load_default=None, validate=validate.Range(0, 2 * FINEST))

    @validates_schema
    def in_order(self, data: dict[str, Any], **_kwargs: Any) -> None:
        """Refuse an interval that does not hold its count."""
        if not (data["low"] or data["count"]) <= data["count"] <= (data["high"] or data["count"]):
            raise ValidationError("The interval does not hold the count.", "low")
