"""Signing in and out."""

from datetime import UTC, datetime, timedelta
from typing import ClassVar

import pytest
import time_machine
from argon2 import Parameters, PasswordHasher, Type, extract_parameters
from sqlalchemy import select, update

from tests.accounts.conftest import PASSPHRASE, SLOW
from tests.conftest import browser_of
from webapp.accounts import passphrases
from webapp.accounts.models import Account, SignedIn
from webapp.accounts.passphrases import is_dated
from webapp.db import db

NOON = datetime(2026, 2, 3, 12, tzinfo=UTC)


def sign_in(client, name="Alice", passphrase=PASSPHRASE, **more):
    return client.post("/sign-in", data={"name": name, "passphrase": passphrase, **more})


def test_it_works(alice, client):
    answer = sign_in(client)
    assert answer.status_code == 303
    assert answer.location == "/projects"
    assert client.get("/projects").status_code == 200


@pytest.mark.parametrize("name", ["alice", " ALICE ", "Ａｌｉｃｅ"])
def test_a_name_is_known_however_it_is_written(alice, client, name):
    assert sign_in(client, name).status_code == 303


def test_a_passphrase_is_the_same_from_any_keyboard(sign_up, client):
    sign_up("Berta", "Zwölf Nächte lang")
    typed = "Zwo\u0308lf\u00a0Na\u0308chte lang"  # RFC 8265, 4.2.2: NFC, every space a plain one
    assert sign_in(client, "Berta", typed).status_code == 303


def test_a_passphrase_minds_its_capitals_and_spaces(alice, client):
    assert sign_in(client, passphrase=PASSPHRASE.title()).status_code == 422
    assert sign_in(client, passphrase=PASSPHRASE + " ").status_code == 422


def test_a_wrong_passphrase_and_an_unknown_name_are_answered_alike(alice, client):
    wrong = sign_in(client, passphrase="not the passphrase")
    unknown = sign_in(client, "Nobody")
    assert (wrong.status_code, unknown.status_code) == (422, 422)
    assert wrong.text.replace('"Alice"', '"Nobody"') == unknown.text
    assert "do not go together" in wrong.text


class Watched(PasswordHasher):
    """Hashes as quickly as these tests do, and notes at what price each check is made."""

    asked: ClassVar[list[Parameters]] = []

    def verify(self, hash, password):
        self.asked.append(extract_parameters(hash))
        return super().verify(hash, password)


def test_an_unknown_name_is_checked_at_the_price_of_a_wrong_passphrase(alice, app, monkeypatch):
    monkeypatch.setattr(passphrases, "_hasher", Watched(time_cost=1, memory_cost=8, parallelism=1))
    Watched.asked.clear()
    for name in ("Alice", "Nobody"):
        assert sign_in(browser_of(app), name, "not the passphrase").status_code == 422
    wrong, unknown = Watched.asked
    assert wrong == unknown


@pytest.mark.parametrize(
    ("fields", "sentence"),
    [
        ({}, "Give the name"),
        ({"name": "Alice"}, "Give your passphrase"),
        ({"name": " ", "passphrase": PASSPHRASE}, "Give the name"),
        ({"name": "\x00", "passphrase": PASSPHRASE}, "do not go together"),
        ({"name": "A" * 100_000, "passphrase": "x" * 50_000}, "do not go together"),
        ({"name": "<b>Alice</b>", "passphrase": PASSPHRASE}, "&lt;b&gt;Alice"),
        ({"name": "Alice", "passphrase": PASSPHRASE, "bring": "perhaps"}, ""),
    ],
)
def test_what_cannot_be_is_said_in_a_sentence(alice, client, fields, sentence):
    answer = client.post("/sign-in", data=fields)
    assert answer.status_code == 422
    assert sentence in answer.text
    assert client.get("/projects").status_code == 303


@pytest.mark.parametrize(
    ("asked", "led"),
    [
        ("/hours?week=2026-W07", "/hours?week=2026-W07"),
        ("/projects/new", "/projects/new"),
        ("", "/projects"),
        ("//elsewhere.example/", "/projects"),
        ("/\\elsewhere.example", "/projects"),
        ("/\t/elsewhere.example", "/projects"),
        ("/\n/elsewhere.example", "/projects"),
        ("https://elsewhere.example/", "/projects"),
        ("javascript:alert(1)", "/projects"),
        ("projects", "/projects"),
        ("/sign-out", "/projects"),
        ("/" + "x" * 3000, "/projects"),
    ],
)
def test_it_leads_on_to_a_page_of_our_own_and_nowhere_else(alice, client, asked, led):
    assert sign_in(client, next=asked).location == led


def test_the_page_asked_for_is_come_back_to(alice, client):
    door = client.get("/account?from=there")
    assert door.status_code == 303
    page = client.get(door.location)
    assert 'name="next" value="/account?from=there"' in page.text


def test_who_is_signed_in_is_not_asked_again(alice):
    assert alice.get("/sign-in?next=/hours").location == "/hours"
    assert alice.get("/sign-in?next=//elsewhere.example").location == "/projects"


def test_signing_in_anew_ends_the_session_before(alice, app):
    before = alice.get_cookie("evenrow").value
    sign_in(alice)
    other = browser_of(app)
    other.set_cookie("evenrow", before)
    assert other.get("/projects").status_code == 303


def test_signing_out_ends_the_session_and_takes_the_cookie(alice, app):
    token = alice.get_cookie("evenrow").value
    answer = alice.post("/sign-out")
    assert (answer.status_code, answer.location) == (303, "/")
    assert alice.get_cookie("evenrow") is None
    other = browser_of(app)
    other.set_cookie("evenrow", token)
    assert other.get("/projects").status_code == 303


def test_signing_out_over_https_leaves_no_page_behind_to_go_back_to(client):
    answer = client.post("/sign-out", base_url="https://localhost")
    assert answer.headers["Clear-Site-Data"] == '"cache"'


def test_signing_out_twice_is_no_error(client):
    assert client.post("/sign-out").status_code == 303


def test_a_hash_made_with_other_parameters_is_made_anew(alice, client, app, books):
    old = PasswordHasher(time_cost=1, memory_cost=16, parallelism=1).hash(PASSPHRASE)
    with app.app_context():
        db.session.execute(update(Account).values(passphrase_hash=old))
        db.session.commit()
    assert sign_in(client).status_code == 303
    ((now,),) = books(select(Account.passphrase_hash))
    assert now != old
    assert not is_dated(now)
    assert sign_in(client).status_code == 303


def test_hashing_costs_a_thief_what_it_should():
    # RFC 9106, section 4, second recommended option: Argon2id, 3 passes, 64 MiB, 4 lanes.
    assert (SLOW.type, SLOW.time_cost, SLOW.memory_cost, SLOW.parallelism) == (Type.ID, 3, 64 * 1024, 4)


# Too many tries


@pytest.fixture
def noon():
    with time_machine.travel(NOON, tick=False) as traveller:
        yield traveller


def test_after_ten_wrong_tries_even_the_right_one_has_to_wait(noon, alice, client):
    for _ in range(10):
        assert sign_in(client, passphrase="not the passphrase").status_code == 422
    answer = sign_in(client)
    assert answer.status_code == 429
    assert "Wait 15 minutes" in answer.text
    assert answer.headers["Retry-After"] == "901"
    noon.shift(timedelta(minutes=15))
    assert sign_in(client).status_code == 303


def test_wrong_tries_from_elsewhere_do_not_shut_her_out(noon, alice, client):
    client.environ_base["REMOTE_ADDR"] = "192.0.2.7"
    for _ in range(11):
        answer = sign_in(client, passphrase="not the passphrase")
    assert answer.status_code == 429
    client.environ_base["REMOTE_ADDR"] = "192.0.2.8"
    assert sign_in(client).status_code == 303


def test_many_names_from_one_place_have_to_wait_too(noon, alice, client):
    answers = [sign_in(client, f"Stitcher {n}").status_code for n in range(61)]
    assert answers == [422] * 60 + [429]


def test_right_tries_are_not_counted(noon, alice, client):
    assert [sign_in(client).status_code for _ in range(12)] == [303] * 12


def test_sessions_that_ran_out_are_cleared_away(alice, client, books):
    with time_machine.travel(datetime.now(UTC) + timedelta(days=366)):
        sign_in(client)
    assert len(books(select(SignedIn.id))) == 1
