"""The forms of accounts, at the boundary."""

from collections.abc import Sequence
from datetime import time
from typing import Any

from marshmallow import ValidationError, fields, validate, validates_schema

from webapp.accounts import names, passphrases, zones
from webapp.forms import FormSchema

UNITS = [("in", "Inches"), ("cm", "Centimetres")]
HANDS = [("right", "Right"), ("left", "Left")]
DAYS = ["Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday"]
WEEK_STARTS = list(enumerate(DAYS))
NEEDED = f"Give a passphrase of at least {passphrases.SHORTEST} characters, not only spaces."
NO_CHOICE = "Choose one of those shown."
NO_TIME = "Write the time as hours and minutes, such as 22:30."
NO_SUCH_ZONE = "There is no such time zone. Choose one from the list, such as Europe/London."


class Name(fields.Field[str]):
    """A name that can be seen, tidied."""

    def _deserialize(self, value: Any, attr: str | None, data: Any, **kwargs: Any) -> str:
        name = names.tidy(str(value))
        if fault := names.fault(name):
            raise ValidationError(fault)
        return name


class Passphrase(fields.Field[str]):
    """A passphrase, prepared; a new one is held against what makes a good one."""

    def __init__(self, new: bool = False, **kwargs: Any) -> None:
        self.new = new
        super().__init__(**kwargs)

    def _deserialize(self, value: Any, attr: str | None, data: Any, **kwargs: Any) -> str:
        passphrase = passphrases.prepare(str(value))
        if self.new and (fault := passphrases.fault(passphrase)):
            raise ValidationError(fault)
        return passphrase


class Zone(fields.Field[str]):
    """A time zone by its IANA name."""

    def _deserialize(self, value: Any, attr: str | None, data: Any, **kwargs: Any) -> str:
        zone = str(value).strip()
        if zone not in zones.known():
            raise ValidationError(NO_SUCH_ZONE)
        return zone


class Clock(fields.Field[time]):
    """A time of day, hours and minutes."""

    def _deserialize(self, value: Any, attr: str | None, data: Any, **kwargs: Any) -> time:
        hours, colon, minutes = str(value).strip().partition(":")
        both = hours + minutes
        if not (colon and both.isascii() and both.isdigit() and len(hours) <= 2 and len(minutes) == 2):
            raise ValidationError(NO_TIME)
        if int(hours) > 23 or int(minutes) > 59:
            raise ValidationError("There is no such time. It goes from 00:00 to 23:59.")
        return time(int(hours), int(minutes))


def one_of(options: Sequence[tuple[Any, str]], **kwargs: Any) -> fields.String:
    """Make a field that takes one of ``options``."""
    choice = validate.OneOf([str(value) for value, _ in options], error=NO_CHOICE)
    return fields.String(validate=choice, **kwargs)


class BeginForm(FormSchema):
    """Begin without a name."""

    zone = Zone(load_default=zones.FALLBACK)


class SignUpForm(BeginForm):
    """A name and a passphrase for a new account, or for the one begun on this phone."""

    name = Name(required=True, error_messages={"required": "Give a name to sign in with."})
    passphrase = Passphrase(new=True, required=True, error_messages={"required": NEEDED})
    invitation = fields.String(load_default="")

    @validates_schema
    def differ(self, data: dict[str, Any], **kwargs: Any) -> None:
        """Refuse the name as its own passphrase."""
        if names.key(data["passphrase"]) == names.key(data["name"]):
            raise ValidationError("Choose something other than the name.", "passphrase")


class SignInForm(FormSchema):
    """Name and passphrase of an account; whether to bring along what was begun on this phone."""

    name = fields.String(required=True, error_messages={"required": "Give the name you signed up with."})
    passphrase = Passphrase(required=True, error_messages={"required": "Give your passphrase."})
    next = fields.String(load_default="")
    bring = one_of([("yes", "Yes"), ("no", "No")], load_default="yes")


class SettingsForm(FormSchema):
    """What she chose for herself."""

    hand = one_of(HANDS, required=True, error_messages={"required": NO_CHOICE})
    unit = one_of(UNITS, required=True, error_messages={"required": NO_CHOICE})
    bedtime = Clock(required=True, error_messages={"required": NO_TIME})
    week_start = one_of(WEEK_STARTS, required=True, error_messages={"required": NO_CHOICE})
    zone = Zone(required=True, error_messages={"required": NO_SUCH_ZONE})


class PassphraseForm(FormSchema):
    """A new passphrase in place of the one she has."""

    current = Passphrase(required=True, error_messages={"required": "Give the passphrase you have now."})
    passphrase = Passphrase(new=True, required=True, error_messages={"required": NEEDED})
