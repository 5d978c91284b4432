"""The forms of a legend, at the boundary."""

from typing import Any

from marshmallow import ValidationError, fields, validate

from webapp.cloth.stash_schemas import CHOICE, DAMAGED
from webapp.cloth.typed import Mistyped
from webapp.forms import FormSchema
from webapp.threads.legend_reads import whole
from webapp.threads.reading_reads import WHATS


class Crosses(fields.Field[int]):
    """Full crosses as the chart prints them; 0 is none said."""

    def _deserialize(self, value: Any, attr: str | None, data: Any, **kwargs: Any) -> int | None:  # type: ignore[override]
        try:
            return whole(str(value), "the chart's full crosses") or None
        except Mistyped as error:
            raise ValidationError(str(error)) from error


class ChartSchema(FormSchema):
    """What the chart prints of itself."""

    chart_total = Crosses(load_default=None)


class LineSchema(FormSchema):
    """What of a line's form is none of its fields; with an id of its own a form sent twice makes one line."""

    id = fields.UUID(error_messages=DAMAGED)
    again = fields.String(load_default="", validate=validate.OneOf(["", "yes"], error=CHOICE))


class MoveSchema(FormSchema):
    """Where a line goes."""

    way = fields.String(load_default="up", validate=validate.OneOf(["up", "down"], error=CHOICE))


class PasteSchema(FormSchema):
    """A legend that was looked over: one id for all of it, and what to do with it."""

    batch = fields.UUID(required=True, error_messages=DAMAGED | {"required": DAMAGED["invalid_uuid"]})


class ReadingSchema(FormSchema):
    """What was measured, and on which line."""

    id = fields.UUID(error_messages=DAMAGED)
    what = fields.String(load_default="length", validate=validate.OneOf(WHATS, error=CHOICE))
    line = fields.UUID(
        required=True, error_messages={"required": "Choose the thread.", "invalid_uuid": "Choose the thread."}
    )
