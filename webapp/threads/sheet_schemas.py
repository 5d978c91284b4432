"""What is sent from a sheet: a line ticked, a line of her own."""

from typing import Any

from marshmallow import ValidationError, fields, validate

from webapp.forms import FormSchema
from webapp.lines import can_be_seen, is_one_line

LONGEST = 120  # characters of a line of her own
GONE = "That line is not on this sheet any more. Open the sheet again."


class Words(fields.Field[str]):
    """A line in her own words, of which something can be seen."""

    def _deserialize(self, value: Any, attr: str | None, data: Any, **kwargs: Any) -> str:
        words = str(value).strip()
        if not is_one_line(words):
            raise ValidationError("Keep it to one line, without tabs or control characters.")
        if not can_be_seen(words):
            raise ValidationError("Write what to take along or to do.")
        if len(words) > LONGEST:
            raise ValidationError(f"Shorten it: it has {len(words)} characters, and {LONGEST} fit.")
        return words


class ItemForm(FormSchema):
    """One line of a sheet, by its key."""

    item = fields.String(required=True, error_messages={"required": GONE})


class TickForm(ItemForm):
    """A line ticked, or not."""

    ticked = fields.String(
        load_default="yes", validate=validate.OneOf(["yes", "no"], error="Tick it, or untick it.")
    )


class OwnForm(FormSchema):
    """A line of her own."""

    words = Words(required=True, error_messages={"required": "Write what to take along or to do."})
