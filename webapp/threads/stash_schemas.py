"""The form of a thread in the stash, at the boundary."""

from typing import Any

from marshmallow import Schema, fields, post_load, validate

from webapp.cloth.stash_schemas import CHOICE, DAMAGED, Name, Note, Read
from webapp.cloth.typed import Mistyped
from webapp.forms import FormSchema
from webapp.threads import amounts
from webapp.threads.tables import kinds

NAME = "Write what the thread is called, as on its band."
YES = validate.OneOf(["yes", "no"], error=CHOICE)


class KeptSchema(FormSchema):
    """A thread as its form has it; a name is enough, and means one skein."""

    thread = Name(100, required=True, error_messages={"required": NAME})
    kind = fields.String(load_default="")
    lot = fields.String(
        load_default="",
        validate=[
            validate.Length(max=40, error="Shorten the lot: 40 characters fit."),
            validate.Predicate("isprintable", error="Keep the lot to one line."),
        ],
    )
    colour = fields.String(
        load_default=None, validate=validate.Regexp("#[0-9a-fA-F]{6}$", error="Pick a colour.")
    )
    coloured = fields.String(load_default="no", validate=YES)
    note = Note(load_default="")
    again = fields.String(load_default="no", validate=YES)
    id = fields.UUID(error_messages=DAMAGED)

    @post_load
    def complete(self, data: dict[str, Any], **_kwargs: Any) -> dict[str, Any]:
        """Leave a colour out that she did not pick, and take spaces round the lot away."""
        picked = data.pop("coloured") == "yes"
        return data | {"colour": data["colour"] if picked else None, "lot": data["lot"].strip()}


def kept_schema(unit: str, kind: str) -> Schema:
    """Make the form's schema for thread of a kind, its lengths typed in ``unit``."""
    row = kinds().get(kind)
    sold = row or kinds()["cotton"]
    more: dict[str, Any] = {
        "skeins": Read(lambda text, _unit: amounts.skeins(text, sold), load_default=None),
        "lengths": Read(amounts.lengths, unit, load_default=None),
        "kind": fields.String(load_default=kind, validate=validate.OneOf(list(kinds()), error=CHOICE)),
    }
    if sold["sold"] == "bead":
        more["lengths"] = Read(_beads, load_default=None)
    return KeptSchema.from_dict(more)()


def _beads(_text: str, _unit: str) -> float:
    raise Mistyped("Beads are counted: write their number, and no length.")
