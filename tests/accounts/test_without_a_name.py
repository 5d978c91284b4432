"""Beginning without a name, and claiming what was begun."""

import sqlite3

from sqlalchemy import select

from tests.accounts.conftest import ACCOUNTS, begin, sign_up
from tests.conftest import browser_of
from webapp.accounts.models import Account, SignedIn


def test_beginning_needs_no_name(client, books):
    answer = begin(client)
    assert answer.status_code == 303
    assert answer.location == "/projects/new"
    assert client.get("/projects/new").status_code == 200
    assert [(one.name, one.zone) for one in books(ACCOUNTS)] == [(None, "Europe/Lisbon")]


def test_beginning_twice_is_beginning_once(client, books):
    begin(client)
    assert begin(client).location == "/projects/new"
    assert len(books(ACCOUNTS)) == 1


def test_a_wrong_zone_is_said_on_the_first_page(client, books):
    answer = begin(client, "Mars/Olympus")
    assert answer.status_code == 422
    assert "no such time zone" in answer.text
    assert books(ACCOUNTS) == []


def test_claiming_keeps_everything(client, new_project, books):
    begin(client)
    project = new_project(client)
    client.post("/account/settings", data={"hand": "left", "unit": "cm"})
    before = books(ACCOUNTS)[0].id
    assert sign_up(client, zone="Asia/Tokyo").status_code == 303
    (after,) = books(select(Account.id, Account.name, Account.hand, Account.unit, Account.zone))
    assert tuple(after) == (before, "Alice", "left", "cm", "Europe/Lisbon")
    assert client.get(f"/projects/{project}").status_code == 200


def test_claiming_makes_the_token_known_before_worthless(client, app):
    begin(client)
    before = client.get_cookie("evenrow").value
    sign_up(client)
    assert client.get_cookie("evenrow").value != before
    other = browser_of(app)
    other.set_cookie("evenrow", before)
    assert other.get("/projects").status_code == 303


def test_a_claim_that_is_refused_changes_nothing(alice, client, books):
    begin(client)
    assert sign_up(client, "Alice").status_code == 422
    assert client.get("/projects").status_code == 200
    assert sorted(str(one.name) for one in books(ACCOUNTS)) == ["Alice", "None"]


def test_how_far_the_phones_clock_is_off_stays_known(client, books, config):
    begin(client)
    with sqlite3.connect(config.data / "evenrow.db") as file:
        file.execute("UPDATE signed_in SET offset_ms = 7200000")
    sign_up(client)
    assert books(select(SignedIn.offset_ms)) == [(7200000,)]


def test_a_stitcher_with_a_name_is_not_asked_for_one(alice):
    assert alice.get("/accounts/new").location == "/account"


def test_signing_up_a_second_stitcher_leaves_the_first_as_she_was(alice, books):
    assert sign_up(alice, "Berta").status_code == 303
    assert sorted(one.name for one in books(ACCOUNTS)) == ["Alice", "Berta"]


def test_too_many_beginnings_from_one_place_have_to_wait(app):
    answers = [begin(browser_of(app)).status_code for _ in range(101)]
    assert answers == [303] * 100 + [429]
