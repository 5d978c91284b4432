"""The session cookie, the doors it opens, and how it slides on."""

from datetime import UTC, datetime, timedelta
from http.cookies import SimpleCookie

import pytest
import time_machine
from sqlalchemy import select

from tests.accounts.conftest import PASSPHRASE
from tests.conftest import browser_of
from webapp.accounts.models import SignedIn

NOW = datetime(2026, 2, 3, 20, tzinfo=UTC)
YEAR = 365 * 24 * 3600


@pytest.fixture
def clock():
    with time_machine.travel(NOW, tick=False) as traveller:
        yield traveller


@pytest.fixture
def stitcher(clock, alice):
    """Alice, signed in at a known moment."""
    return alice


def cookie_of(answer, name="evenrow"):
    return SimpleCookie(answer.headers["Set-Cookie"])[name]


def sign_up(client, **more):
    return client.post("/accounts", data={"name": "Alice", "passphrase": PASSPHRASE}, **more)


def test_over_http_the_cookie_is_plain_but_out_of_scripts_reach(client):
    cookie = cookie_of(sign_up(client))
    assert (cookie["httponly"], cookie["samesite"], cookie["path"]) == (True, "Lax", "/")
    assert (cookie["secure"], cookie["domain"], cookie["max-age"]) == ("", "", str(YEAR))


def test_over_https_the_cookie_is_bound_to_the_host(client):
    """RFC 6265bis, 4.1.3.2: with this prefix Secure, no Domain, and the path /."""
    cookie = cookie_of(sign_up(client, base_url="https://localhost"), "__Host-evenrow")
    assert (cookie["secure"], cookie["httponly"], cookie["samesite"]) == (True, True, "Lax")
    assert (cookie["path"], cookie["domain"]) == ("/", "")


def test_over_https_the_plain_cookie_opens_nothing(alice, app):
    other = browser_of(app)
    other.set_cookie("evenrow", alice.get_cookie("evenrow").value)
    assert other.get("/projects").status_code == 200
    assert other.get("/projects", base_url="https://localhost").status_code == 303


@pytest.mark.parametrize("token", ["", "guessed", "x" * 5000, "\udcff", "a\nb", "'; --"])
def test_a_token_that_is_none_opens_nothing(alice, app, token):
    other = browser_of(app)
    other.environ_base["HTTP_COOKIE"] = f"evenrow={token}"
    assert other.get("/projects").status_code == 303


def test_a_tokens_hash_is_no_token(alice, app, books):
    ((kept,),) = books(select(SignedIn.token_hash))
    other = browser_of(app)
    other.set_cookie("evenrow", kept)
    assert other.get("/projects").status_code == 303


def test_within_the_hour_nothing_is_written(clock, stitcher, books):
    clock.shift(timedelta(minutes=59))
    assert "Set-Cookie" not in stitcher.get("/account").headers
    assert books(select(SignedIn.seen)) == [(NOW,)]


def test_after_an_hour_the_session_slides_on_by_a_year(clock, stitcher, books):
    clock.shift(timedelta(minutes=61))
    assert cookie_of(stitcher.get("/account"))["max-age"] == str(YEAR)
    later = NOW + timedelta(minutes=61)
    assert books(select(SignedIn.seen, SignedIn.expires)) == [(later, later + timedelta(days=365))]
    assert "Set-Cookie" not in stitcher.get("/account").headers


def test_a_session_ends_a_year_after_it_was_last_used(clock, stitcher):
    clock.shift(timedelta(days=364))
    assert stitcher.get("/account").status_code == 200
    clock.shift(timedelta(days=366))
    assert stitcher.get("/account").status_code == 303


def test_sliding_on_keeps_nothing_that_was_refused(clock, stitcher, books):
    clock.shift(timedelta(hours=2))
    answer = stitcher.post("/account/settings", data={"hand": "left", "bedtime": "late"})
    assert answer.status_code == 422
    assert 'value="right" checked' in stitcher.get("/account").text


def test_signing_out_after_an_hour_gives_no_cookie_back(clock, stitcher):
    clock.shift(timedelta(hours=2))
    stitcher.post("/sign-out")
    assert stitcher.get_cookie("evenrow") is None


def test_a_form_sent_after_signing_out_leads_back_to_its_page(client):
    page = "http://localhost/projects/new?from=there"
    answer = client.post("/projects", data={"title": "Quince tree"}, headers={"Referer": page})
    assert (answer.status_code, answer.location) == (303, "/sign-in?next=/projects/new?from%3Dthere")


@pytest.mark.parametrize("page", ["http://elsewhere.example/projects/new", "http://[broken", "", "nonsense"])
def test_a_page_of_another_house_is_not_led_back_to(client, page):
    answer = client.post("/projects", headers={"Referer": page})
    assert answer.location == "/sign-in?next=/projects"


def test_a_part_of_a_page_sends_the_whole_page_to_the_door(client):
    headers = {"HX-Request": "true", "HX-Current-URL": "http://localhost/account"}
    answer = client.post("/account/settings", headers=headers)
    assert (answer.status_code, answer.headers["HX-Redirect"]) == (401, "/sign-in?next=/account")
    assert answer.text == ""


@pytest.mark.parametrize("path", ["/journal", "/projects/019c3c00-0000-7000-8000-000000000000/snapshot"])
def test_programs_are_told_in_their_own_way(client, path):
    answer = client.post(path) if path == "/journal" else client.get(path)
    assert answer.status_code == 401
    assert answer.json["error"].endswith(".")


def test_no_page_of_a_stitchers_may_be_kept_by_others(alice):
    assert alice.get("/account").headers["Cache-Control"] == "private, no-cache"
