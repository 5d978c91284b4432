"""What is typed to put times right."""

import re
from datetime import datetime
from typing import Any

from marshmallow import ValidationError, fields, validate

from webapp.forms import FormSchema
from webapp.lines import is_one_line

_SHAPE = re.compile(r"\d{4}-\d\d-\d\dT\d\d:\d\d(:\d\d(\.\d{1,3})?)?", re.ASCII)
FIRST_YEAR, LAST_YEAR = 1970, 2199
NOT_OURS = "This form is not ours any more. Open the page again."


class Wall(fields.Field[datetime]):
    """A date and time as her clock showed it, without zone, to the minute."""

    def _deserialize(self, value: Any, attr: str | None, data: Any, **kwargs: Any) -> datetime:
        try:
            if not _SHAPE.fullmatch(value):
                raise ValueError
            wall = datetime.fromisoformat(value[:16])
        except (ValueError, TypeError) as error:
            raise ValidationError("That is no date and time. Give both, as 2026-02-03T20:15.") from error
        if not FIRST_YEAR <= wall.year <= LAST_YEAR:
            raise ValidationError(f"The year must lie between {FIRST_YEAR} and {LAST_YEAR}.")
        return wall


def _wall(missing: str) -> Wall:
    return Wall(required=True, error_messages={"required": missing})


def _id(sentence: str) -> fields.UUID:
    return fields.UUID(required=True, error_messages={"required": sentence, "invalid_uuid": sentence})


def _one_line(text: str) -> None:
    if not is_one_line(text):
        raise ValidationError("Keep it to one line.")


class OnceSchema(FormSchema):
    """What every form of Fix times sends: an id of its own, so that sent again it counts once."""

    once = _id(NOT_OURS)


class TimesSchema(OnceSchema):
    """A sitting's times."""

    begin = _wall("Say when it began.")
    end = _wall("Say when it ended.")


class ChangeSchema(TimesSchema):
    """A sitting's times, and whose they are; left out, they stay where they were."""

    project = fields.UUID(error_messages={"invalid_uuid": "Choose the project."})


class SittingSchema(TimesSchema):
    """A sitting that was forgotten."""

    project = _id("Choose the project.")


class PhotographSchema(OnceSchema):
    """A photograph's line: where she stopped."""

    line = fields.String(
        load_default="",
        validate=[validate.Length(max=200, error="Keep it to 200 characters."), _one_line],
    )
