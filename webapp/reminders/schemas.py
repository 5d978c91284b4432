"""The forms of reminders, at the boundary."""

from typing import Any

from marshmallow import ValidationError, fields

from webapp.accounts.schemas import NO_TIME, Clock, one_of
from webapp.forms import FormSchema

HOURS = [("", "No"), *((str(n), f"After {n} hours") for n in (2, 3, 4, 6, 8, 12))]
NO_DATE = "Choose the day you are back."
NO_ADDRESS = "That is no e-mail address. Write it like name@mail.example."


class Tick(fields.Field[bool]):
    """A box that is ticked, or not sent."""

    def _deserialize(self, value: Any, attr: str | None, data: Any, **kwargs: Any) -> bool:
        return bool(value == "yes")


class Address(fields.Field[str]):
    """An e-mail address that letters can be sent to; whether it is hers, a letter finds out."""

    def _deserialize(self, value: Any, attr: str | None, data: Any, **kwargs: Any) -> str:
        text = str(value).strip()
        name, _, host = text.rpartition("@")
        plain = text.isascii() and text.isprintable() and not set(' "(),:;<>[\\]') & set(text)
        labels = [*host.split("."), *name.split(".")]
        if not (plain and all(labels) and "." in host and "@" not in name and len(text) <= 254):
            raise ValidationError(NO_ADDRESS)
        return text


class ChoiceForm(FormSchema):
    """When she wants to be told, and how much is said."""

    at_bedtime = Tick(load_default=False)
    bedtime = Clock(required=True, error_messages={"required": NO_TIME})
    hours = one_of(HOURS, load_default="")
    show_title = Tick(load_default=False)
    away = fields.Date("iso", load_default=None, error_messages={"invalid": NO_DATE})


class AddressForm(FormSchema):
    """Where letters go."""

    email = Address(required=True, error_messages={"required": NO_ADDRESS})
