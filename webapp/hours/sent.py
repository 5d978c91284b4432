"""A photograph as a form sends it: read before the writer's turn, which others wait for."""

from flask import request

from webapp.forms import Errors
from webapp.hours import pictures
from webapp.hours.pictures import Picture

LARGEST = 25_000_000  # bytes: what a camera writes of 16 megapixels


def sent_picture() -> tuple[Picture | None, Errors]:
    """Give the picture that was sent, none where none was chosen; or a sentence about it."""
    request.max_content_length = LARGEST
    sent = request.files.get("photograph")
    if sent is None or not sent.filename:
        return None, {}
    try:
        return pictures.fit(sent.read()), {}
    except pictures.BadPicture as error:
        return None, {"photograph": [str(error)]}
