"""Forms at the boundary: load through a schema, or give the sentences to show beside the fields."""

from collections.abc import Mapping
from typing import Any
from urllib.parse import unquote_to_bytes

from flask import abort, request
from marshmallow import EXCLUDE, Schema, ValidationError, fields, validate

from webapp.ids import new_id

Errors = dict[str, list[str]]


class FormSchema(Schema):
    """A form of hers."""

    class Meta:
        """Take no notice of what else it may carry."""

        unknown = EXCLUDE


class AwaySchema(FormSchema):
    """Put away, or taken out again."""

    away = fields.String(
        load_default="yes",
        validate=validate.OneOf(["yes", "no"], error="Choose whether to put it away or take it out."),
    )


def load_form(schema: Schema, before: Mapping[str, str] | None = None) -> tuple[dict[str, Any], Errors]:
    """Load the submitted form through ``schema``, over what stood there ``before`` if not all of it is sent.

    Gives (values, errors): the loaded values where nothing is wrong, else what was valid and a sentence for
    each field that is not. What was typed is in ``request.form``, for showing again.
    """
    check_readable()
    typed = {name: value for name, value in {**(before or {}), **request.form}.items() if value.strip()}
    try:
        loaded: dict[str, Any] = schema.load(typed)
    except ValidationError as error:
        return dict(error.valid_data or {}), error.normalized_messages()  # type: ignore[no-untyped-call]
    return loaded, {}


def typed_again(errors: Errors) -> dict[str, str]:
    """Give what was typed for showing again, with a new id where the one that was sent cannot be one."""
    return {**request.form, **({"id": str(new_id())} if "id" in errors else {})}


def check_readable() -> None:
    """Refuse a form that is not UTF-8, before anything is made of it; it would be kept as other text."""
    try:
        if request.mimetype == "application/x-www-form-urlencoded":
            unquote_to_bytes(request.get_data()).decode()
    except UnicodeDecodeError:
        abort(400, "Some of what was sent cannot be read as text. Type it anew and send it again.")


def json_object() -> dict[str, Any]:
    """Give the JSON object that was sent; an empty one for whatever else came."""
    try:
        body = request.get_json(silent=True)
    except RecursionError:
        body = None
    return body if isinstance(body, dict) else {}
