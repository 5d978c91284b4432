"""Errors are sentences, on a page, in a page that stays, or as JSON."""

import re

import pytest
from flask import abort
from sqlalchemy import text

from webapp.db import db
from webapp.headers import POLICY

IN_A_PAGE = {"HX-Request": "true"}


@pytest.fixture
def broken(app):
    """A house some of whose pages fail."""
    app.config["PROPAGATE_EXCEPTIONS"] = False

    @app.get("/broken")
    def broken():
        raise RuntimeError

    @app.post("/broken/books")
    def broken_books():
        db.session.execute(text("SELECT nothing FROM nowhere"))

    return app


def test_what_is_not_there_is_said_on_a_page(client):
    answer = client.get("/nowhere")
    assert answer.status_code == 404
    assert "There is nothing here, or it is not yours." in answer.text
    assert "<main" in answer.text


def test_in_a_page_that_stays_it_is_one_line_above_what_was_typed(client):
    answer = client.get("/nowhere", headers=IN_A_PAGE)
    assert answer.status_code == 404
    assert answer.text.startswith("<p")
    assert answer.headers["HX-Reswap"] == "afterbegin"


def test_programs_get_json(client):
    assert client.get("/nowhere.json").json == {
        "error": "There is nothing here, or it is not yours. Go back, or start from the first page."
    }


def test_what_may_be_done_instead_is_still_told(client):
    """RFC 9110, 15.5.6: 405 must come with Allow."""
    answer = client.get("/sign-out")
    assert answer.status_code == 405
    assert "POST" in answer.headers["Allow"]


def test_a_missing_field_is_said_in_our_own_words(app, client):
    @app.post("/asks")
    def asks():
        from flask import request

        return request.form["nothing"]

    answer = client.post("/asks")
    assert answer.status_code == 400
    assert "could not be understood" in answer.text


@pytest.mark.parametrize("path", ["/broken", "/broken/books"])
def test_a_fault_of_ours_is_said_and_hurts_nobody_else(broken, alice, path):
    answer = alice.open(path, method="POST" if path.endswith("books") else "GET")
    assert answer.status_code == 500
    assert "Something went wrong on our side" in answer.text
    assert alice.get("/account").status_code == 200


def test_without_a_database_there_is_still_a_sentence(app, client, config):
    app.config["PROPAGATE_EXCEPTIONS"] = False
    for file in config.data.glob("evenrow.db*"):
        file.unlink()
    client.set_cookie("evenrow", "anything")
    answer = client.get("/account")
    assert answer.status_code == 500
    assert "Something went wrong on our side" in answer.text


@pytest.fixture
def refusing(broken):
    """A house with a page and addresses for programs that refuse whatever is sent."""

    def refuse(code):
        abort(code)

    for path in ("/<int:code>", "/<int:code>.json", "/<int:code>/snapshot", "/journal/<int:code>"):
        broken.add_url_rule(path, path, refuse, methods=["POST"])
    return broken


CODES = [400, 403, 404, 405, 409, 413, 415, 429, 500]


@pytest.mark.parametrize("code", CODES)
@pytest.mark.parametrize("path", ["/{}.json", "/{}/snapshot", "/journal/{}"])
def test_every_error_is_json_to_programs(refusing, client, code, path):
    answer = client.post(path.format(code))
    assert (answer.status_code, answer.mimetype) == (code, "application/json")
    assert answer.json.keys() == {"error"}
    assert is_a_sentence(answer.json["error"])


@pytest.mark.parametrize("code", CODES)
def test_every_error_is_a_page_on_pages(refusing, client, code):
    answer = client.post(f"/{code}")
    assert (answer.status_code, answer.mimetype) == (code, "text/html")
    assert "<main" in answer.text
    assert is_a_sentence(re.search(r'<p class="card">(.*?)</p>', answer.text)[1])


ANY = "/projects/019c5957-00c0-7d73-9837-bc05c56b05d9"


@pytest.mark.parametrize(
    ("method", "path", "status"),
    [
        ("GET", "/journal", 405),
        ("PUT", "/journal", 405),
        ("POST", "/hours.json", 405),
        ("POST", f"{ANY}/snapshot", 405),
        ("GET", f"{ANY}/snapshot", 404),
        ("GET", "/projects/lanterns/snapshot", 404),
        ("GET", "/journal/", 404),
        ("GET", "/hours.json?week=never", 422),
        ("GET", "/cloth/gauge.json?squares=many", 422),
    ],
)
def test_what_a_program_gets_wrong_it_is_told_as_json(alice, method, path, status):
    answer = alice.open(path, method=method)
    assert (answer.status_code, answer.mimetype) == (status, "application/json")
    assert is_a_sentence(answer.json["error"])


def test_too_large_a_batch_is_refused_as_json_and_too_large_a_form_on_a_page(alice):
    batch = alice.post("/journal", data=b"x" * 1_000_001)
    form = alice.post("/projects", data={"title": "x" * 1_000_001})
    assert (batch.status_code, batch.json.keys()) == (413, {"error"})
    assert form.status_code == 413
    assert "That is too large to take." in form.text


def is_a_sentence(text):
    return text[:1].isupper() and text.endswith(".") and "<" not in text


@pytest.mark.parametrize("path", ["/", "/sign-in", "/nowhere", "/health", "/sign-out"])
def test_every_answer_carries_the_policy(client, path):
    headers = client.get(path, base_url="https://localhost").headers
    assert headers["Content-Security-Policy"] == POLICY
    assert headers["X-Content-Type-Options"] == "nosniff"
    assert headers["Referrer-Policy"] == "same-origin"
    assert headers["Cross-Origin-Resource-Policy"] == "same-origin"


def test_over_https_no_other_sites_window_is_held_on_to(client):
    headers = client.get("/", base_url="https://localhost").headers
    assert headers["Cross-Origin-Opener-Policy"] == "same-origin"


def test_the_policy_starts_from_nothing_and_lets_nothing_in_line(client):
    rules = dict(rule.split(" ", 1) for rule in POLICY.split("; "))
    assert rules["default-src"] == "'none'"
    assert "unsafe" not in POLICY
    assert "http" not in POLICY
    assert rules["trusted-types"] == "default"
