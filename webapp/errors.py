"""Errors are sentences: what is wrong and what to do."""

from flask import Flask, Response, g, jsonify, make_response, render_template, request
from werkzeug.exceptions import HTTPException

from webapp.db import db

SENTENCES = {
    400: "That request could not be understood. Go back and try again.",
    401: "Sign in to go on; nothing is lost.",
    403: "That is not allowed here. Go back, or start from the first page.",
    404: "There is nothing here, or it is not yours. Go back, or start from the first page.",
    405: "That cannot be done here. Go back and try again.",
    413: "That is too large to take. Send less at once.",
    415: "That is not in a form that can be read here. Go back and try again.",
    429: "Too many tries at once. Wait a few minutes, then try again.",
    500: "Something went wrong on our side. What you tapped is kept on this phone; try again in a moment.",
}


def wants_json() -> bool:
    """Tell whether the one who asks is a program: the journal and the figures for scripts."""
    path = request.path
    return f"{path}/".startswith("/journal/") or path.endswith((".json", "/snapshot"))


def wants_fragment() -> bool:
    """Tell whether the answer will be put into a page that stays, which a whole page would spoil."""
    return request.headers.get("HX-Request") == "true"


def init_app(app: Flask) -> None:
    """Answer every error as a page with a sentence, as a line to put into a page, or as JSON to programs."""

    @app.errorhandler(HTTPException)
    def explain(error: HTTPException) -> Response:
        code = error.code or 500
        if error.response is not None:
            return make_response(error.response)
        if code >= 500:
            _forget_the_database()
        response = make_response(_say(_sentence(error, code)), code)
        kept = [(name, value) for name, value in error.get_headers() if name != "Content-Type"]
        response.headers.extend(kept)  # Allow, Retry-After
        return response


def _sentence(error: HTTPException, code: int) -> str:
    ours = "description" in vars(error)  # given by whoever raised it, not the library's own words
    return str(error.description) if ours or code not in SENTENCES else SENTENCES[code]


def _say(sentence: str) -> Response:
    if wants_json():
        return jsonify(error=sentence)
    if wants_fragment():
        response = make_response(render_template("_error.html", sentence=sentence))
        response.headers["HX-Reswap"] = "afterbegin"  # above what she typed, which stays
        return response
    return make_response(render_template("error.html", sentence=sentence))


def _forget_the_database() -> None:
    """Draw the page without it: it may be what failed."""
    db.session.rollback()
    g.account = g.session = g.seen = None
