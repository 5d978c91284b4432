"""The shape of entries and batches, checked once at the door; inside, the types are trusted."""

from datetime import datetime
from typing import Any
from uuid import UUID

from marshmallow import EXCLUDE, Schema, ValidationError, fields, validate, validates_schema

from webapp.journal import moments

HIGHEST_ROW = 10_000
HIGHEST_BLOCK = 1_000
MOST_AT_ONCE = 10_000
PASSES = ("cross", "part", "back", "knot")


class Whole(fields.Field[int]):
    """A whole number: ``true``, 1.0 and NaN are none."""

    def _deserialize(self, value: Any, attr: str | None, data: Any, **kwargs: Any) -> int:
        if type(value) is not int:
            raise ValidationError("must be a whole number.")
        return value


class Yes(fields.Field[bool]):
    """Either true or false, and nothing like them."""

    def _deserialize(self, value: Any, attr: str | None, data: Any, **kwargs: Any) -> bool:
        if type(value) is not bool:
            raise ValidationError("must be true or false.")
        return value


class Id(fields.Field[str]):
    """A UUID of any version; kept in lower case, so that ids sort as text."""

    def _deserialize(self, value: Any, attr: str | None, data: Any, **kwargs: Any) -> str:
        try:
            if len(value) != 36:
                raise ValueError
            return str(UUID(value))
        except (ValueError, TypeError, AttributeError) as error:
            raise ValidationError("must be a UUID.") from error


class Moment(fields.Field[datetime]):
    """A moment with its zone."""

    def _deserialize(self, value: Any, attr: str | None, data: Any, **kwargs: Any) -> datetime:
        try:
            return moments.read(value)
        except ValueError as error:
            raise ValidationError(f"is {error}.") from error


class Text(fields.Field[str]):
    """Text that can be kept: no half characters, no NUL."""

    def _deserialize(self, value: Any, attr: str | None, data: Any, **kwargs: Any) -> str:
        if not isinstance(value, str):
            raise ValidationError("must be text.")
        text = value
        if "\0" in text or any("\ud800" <= c <= "\udfff" for c in text):
            raise ValidationError("has characters that cannot be kept.")
        return text


class Block(fields.Field[list[int]]):
    """A block as [across, down] from the chart's top left."""

    def _deserialize(self, value: Any, attr: str | None, data: Any, **kwargs: Any) -> list[int]:
        good = type(value) is list and len(value) == 2
        if not good or not all(type(n) is int and 1 <= n <= HIGHEST_BLOCK for n in value):
            raise ValidationError(f"must be [across, down], each from 1 to {HIGHEST_BLOCK}.")
        return list(value)


def _between(low: int, high: int) -> validate.Range:
    return validate.Range(low, high, error=f"must be from {low} to {high}.")


def _one_of(*choices: str) -> validate.OneOf:
    return validate.OneOf(choices, error=f"must be one of: {', '.join(choices)}.")


_not_nought = validate.NoneOf([0], error="must not be 0.")
_by = [_not_nought, _between(-MOST_AT_ONCE, MOST_AT_ONCE)]
_row = _between(1, HIGHEST_ROW)
_short = validate.Length(1, 100, error="must have 1 to 100 characters.")


class EntrySchema(Schema):
    """What every entry has. Keys it does not know are left out, so that newer phones are understood."""

    class Meta:
        """Leave unknown keys out."""

        unknown = EXCLUDE

    id = Id(required=True)
    kind = Text(required=True)
    project = Id(required=True)
    at = Moment(required=True)
    act = Id()


class PlacedSchema(EntrySchema):
    """An entry at a row or a block; for other passes than the crosses the place may be left out."""

    row = Whole(validate=_row)
    block = Block()
    pass_ = Text(data_key="pass", attribute="pass", validate=_one_of(*PASSES))

    @validates_schema
    def one_place(self, data: dict[str, Any], **_: Any) -> None:
        """Hold the entry to one place."""
        places = ("row" in data) + ("block" in data)
        if places == 2 or (places == 0 and data.get("pass", "cross") == "cross"):
            raise ValidationError("needs a row or a block, and only one of them.", "row")


class StitchesSchema(PlacedSchema):
    """Stitches laid, unpicked, there before, or corrected."""

    by = Whole(required=True, validate=_by)
    why = Text(validate=_one_of("stitched", "unpicked", "before", "corrected"))
    thread = Text(validate=_short)


class BareSchema(EntrySchema):
    """The place moves over bare cloth."""

    row = Whole(required=True, validate=_row)
    by = Whole(required=True, validate=_by)


class DoneSchema(PlacedSchema):
    """A row or block closed, or opened again."""

    done = Yes(required=True)


class StartSchema(EntrySchema):
    """Where on the chart a row is begun, and to which side."""

    row = Whole(required=True, validate=_row)
    column = Whole(required=True, validate=_between(1, HIGHEST_ROW))
    way = Text(required=True, validate=_one_of("right", "left"))


class EndSchema(EntrySchema):
    """A sitting ends; with a line on where she stopped, if she left one."""

    sitting = Id(required=True)
    note = Text(validate=validate.Length(max=200, error="must have at most 200 characters."))


class AmendSchema(EntrySchema):
    """A sitting's times put right, or the sitting struck out."""

    sitting = Id(required=True)
    begin = Moment()
    end = Moment()
    struck = Yes()

    @validates_schema
    def times_or_struck(self, data: dict[str, Any], **_: Any) -> None:
        """Hold the entry to two times in order, or to being struck."""
        if data.get("struck"):
            return
        if "begin" not in data or "end" not in data:
            raise ValidationError("needs a begin and an end, or struck.", "begin")
        if data["end"] < data["begin"]:
            raise ValidationError("is before the begin.", "end")


class FrameSchema(EntrySchema):
    """How the work is held."""

    state = Text(required=True, validate=_one_of("on", "slack", "off"))


class UndoSchema(EntrySchema):
    """Another entry, or a whole act, cancelled."""

    entry = Id()

    @validates_schema
    def one_target(self, data: dict[str, Any], **_: Any) -> None:
        """Hold the undo to one thing to cancel."""
        if ("entry" in data) == ("act" in data):
            raise ValidationError("needs an entry or an act, and only one of them.", "entry")


class HaveSchema(EntrySchema):
    """A thread ticked on the shopping list."""

    thread = Text(required=True, validate=_short)
    have = Yes(required=True)


KINDS: dict[str, Schema] = {
    "stitches": StitchesSchema(),
    "bare": BareSchema(),
    "done": DoneSchema(),
    "start": StartSchema(),
    "begin": EntrySchema(),
    "end": EndSchema(),
    "amend": AmendSchema(),
    "frame": FrameSchema(),
    "undo": UndoSchema(),
    "have": HaveSchema(),
}


def read_entry(raw: object) -> dict[str, Any]:
    """Read one entry; ValueError with a sentence if it can never be right."""
    if not isinstance(raw, dict):
        raise ValueError("An entry must be an object.")
    kind = raw.get("kind")
    schema = KINDS.get(kind) if isinstance(kind, str) else None
    if schema is None:
        raise ValueError(f"There is no such kind; it must be one of: {', '.join(KINDS)}.")
    try:
        read: dict[str, Any] = schema.load({k: v for k, v in raw.items() if v is not None})
    except ValidationError as error:
        raise ValueError(_sentence(error)) from error
    return read


def _sentence(error: ValidationError) -> str:
    messages = error.messages_dict
    name = next(iter(messages))
    said = messages[name][0] if isinstance(messages[name], list) else str(messages[name])
    return f"“{name}” {'is missing.' if said.startswith('Missing') else said[0].lower() + said[1:]}"
