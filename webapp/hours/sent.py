"""A photograph with its line as a form sends them: read before the writer's turn, which others wait for."""

from collections.abc import Mapping
from os import SEEK_END
from typing import Any, NamedTuple

from flask import request
from werkzeug.datastructures import FileStorage
from werkzeug.exceptions import RequestEntityTooLarge

from webapp.forms import Errors, load_form
from webapp.hours import pictures
from webapp.hours.pictures import Picture
from webapp.hours.schemas import PhotographSchema

MEGABYTE = 1_000_000
LARGEST = 25  # megabytes: what a camera writes of 16 megapixels
READ = 100  # megabytes that are taken in, onto the disk, so that the line she typed beside them is known
TOO_LARGE = (
    "{has}, and {most} MB can be taken at most. Choose a smaller size in the camera, or crop it. "
    "Where scripts run, this page makes a photograph smaller by itself."
)


class Sent(NamedTuple):
    """What came: the picture, if one was chosen, what lies beside it, and what is wrong with them."""

    picture: Picture | None
    values: dict[str, Any]
    errors: Errors
    status: int = 422  # of the answer, where anything is wrong
    typed: Mapping[str, str] = {}


def sent_photograph() -> Sent:
    """Read the form."""
    request.max_content_length = READ * MEGABYTE
    try:
        values, errors = load_form(PhotographSchema())
    except RequestEntityTooLarge:  # nothing of it is read, her line neither
        return Sent(None, {}, _too_large("That is too much at once"), 413)
    sent, typed = request.files.get("photograph"), request.form
    if sent is None or not sent.filename:
        return Sent(None, values, errors, typed=typed)
    if (size := _size(sent)) > LARGEST * MEGABYTE:
        has = f"That picture has {pictures.in_tenths(size, MEGABYTE)} MB"
        return Sent(None, values, errors | _too_large(has), 413, typed)
    try:
        return Sent(pictures.fit(sent.read()), values, errors, typed=typed)
    except pictures.BadPicture as error:
        return Sent(None, values, errors | {"photograph": [str(error)]}, typed=typed)


def _size(sent: FileStorage) -> int:
    """Tell how many bytes a file has; it is left at its beginning."""
    sent.stream.seek(0, SEEK_END)
    size = sent.stream.tell()
    sent.stream.seek(0)
    return size


def _too_large(has: str) -> Errors:
    return {"photograph": [TOO_LARGE.format(has=has, most=LARGEST)]}
