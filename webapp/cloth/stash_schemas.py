"""The form of a cloth in the stash, at the boundary."""

from collections.abc import Callable
from typing import Any

from marshmallow import Schema, ValidationError, fields, post_load, validate

from webapp.cloth import reads
from webapp.cloth.answer import KINDS
from webapp.cloth.stash_words import hundredth
from webapp.cloth.typed import Mistyped, amount
from webapp.forms import FormSchema
from webapp.lines import can_be_seen, is_one_line

CHOICE = "Choose one of those shown."
COUNT = "Write a count from 1 to 100, like 14 or 27.5."
MOST_OFF = 20  # per inch
DAMAGED: dict[str, Any] = {"invalid_uuid": "This form was damaged on the way. Begin once more."}


class Name(fields.Field[str]):
    """What she calls it: on one line, of which something can be seen."""

    def __init__(self, longest: int = 120, **kwargs: Any) -> None:
        self.longest = longest
        super().__init__(**kwargs)

    def _deserialize(self, value: Any, attr: str | None, data: Any, **kwargs: Any) -> str:
        name = str(value).strip()
        if not is_one_line(name):
            raise ValidationError("Keep the name to one line, without tabs or control characters.")
        if not can_be_seen(name):
            raise ValidationError("Give it a name that can be seen.")
        if len(name) > self.longest:
            raise ValidationError(f"Shorten the name: it has {len(name)} characters, and {self.longest} fit.")
        return name


class Note(fields.Field[str]):
    """What else she writes of it; lines are kept."""

    def _deserialize(self, value: Any, attr: str | None, data: Any, **kwargs: Any) -> str:
        note = str(value).strip().replace("\r\n", "\n")
        if not is_one_line(note.replace("\n", "")):
            raise ValidationError("Write the note without tabs or control characters.")
        if len(note) > 500:
            raise ValidationError(f"Shorten the note: it has {len(note)} characters, and 500 fit.")
        return note


class Read(fields.Field[float]):
    """A figure as ``reads`` reads it: a count, an error, or a length in the unit she chose."""

    def __init__(self, read: Callable[[str, str], float], unit: str = "", **kwargs: Any) -> None:
        self.read, self.unit = read, unit
        super().__init__(**kwargs)

    def _deserialize(self, value: Any, attr: str | None, data: Any, **kwargs: Any) -> float:
        try:
            return self.read(str(value).strip()[: reads.KEPT], self.unit)
        except Mistyped as error:
            raise ValidationError(str(error)) from error


def count(text: str, _unit: str) -> float:
    """Read a count."""
    return reads.count(text)


def error(text: str, _unit: str) -> float:
    """Read how far a count may be off."""
    wrong = Mistyped("Write how far the count may be off, like 0.4.")
    try:
        number, unit, _divided = amount(text, "0.4")
    except Mistyped:
        raise wrong from None
    if unit or not 0 < number <= MOST_OFF:
        raise wrong
    return number


class KeptSchema(FormSchema):
    """A cloth as its form has it; lengths in mm. Its name and a count are enough."""

    name = Name(load_default="")
    kind = fields.String(load_default="squares", validate=validate.OneOf(KINDS, error=CHOICE))
    along = Read(count, required=True, error_messages={"required": COUNT})
    along_error = Read(error, load_default=None)
    across = Read(count, load_default=None)
    across_error = Read(error, load_default=None)
    note = Note(load_default="")
    id = fields.UUID(error_messages=DAMAGED)

    @post_load
    def complete(self, data: dict[str, Any], **_kwargs: Any) -> dict[str, Any]:
        """Name it by its count where it has no name; leave out the error of a count that is not given."""
        data["name"] = data["name"] or f"{hundredth(data['along'])} count"
        return data if data["across"] is not None else data | {"across_error": None}


def kept_schema(unit: str) -> Schema:
    """Make the form's schema for lengths typed in ``unit``."""
    sides = {name: Read(reads.cloth, unit, load_default=None) for name in ("width", "length")}
    return KeptSchema.from_dict(sides)()  # type: ignore[arg-type]
