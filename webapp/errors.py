"""Errors are sentences: what is wrong and what to do."""

from flask import Flask, Response, jsonify, render_template, request
from werkzeug.exceptions import HTTPException

SENTENCES = {
    400: "That request could not be understood. Go back and try again.",
    404: "There is nothing here, or it is not yours. Go back, or start from the first page.",
    405: "That cannot be done here. Go back and try again.",
    413: "That is too large to take. Send less at once.",
    429: "Too many tries at once. Wait a few minutes, then try again.",
    500: "Something went wrong on our side. What you tapped is kept on this phone; try again in a moment.",
}


def wants_json() -> bool:
    """Tell whether the one who asks is a program: the journal and the figures for scripts."""
    path = request.path
    return path == "/journal" or path.endswith((".json", "/snapshot"))


def init_app(app: Flask) -> None:
    """Answer every error as a page with a sentence, or as JSON to programs."""

    @app.errorhandler(HTTPException)
    def explain(error: HTTPException) -> tuple[Response | str, int]:
        if error.response is not None:
            return error.response, error.response.status_code  # type: ignore[return-value]
        code = error.code or 500
        default = type(error).description == error.description or error.description is None
        sentence = SENTENCES.get(code, str(error.description)) if default else str(error.description)
        if wants_json():
            return jsonify(error=sentence), code
        return render_template("error.html", sentence=sentence, code=code), code
