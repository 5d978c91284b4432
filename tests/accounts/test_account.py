"""Her account: what she chose, her passphrase, her devices."""

import re

import pytest
from sqlalchemy import select

from tests.accounts.conftest import PASSPHRASE
from tests.conftest import browser_of
from webapp.accounts.models import Account

CHOSEN = select(Account.hand, Account.unit, Account.bedtime, Account.week_start, Account.zone)
PHONE = "Mozilla/5.0 (Linux; Android 14; K) AppleWebKit/537.36 (KHTML, like Gecko) Chrome/130.0 Mobile"
OTHERS = re.compile(r'action="/account/sessions/([\w-]+)/end"')


@pytest.fixture
def phone(alice, app):
    """Alice's phone, where she is signed in as well."""
    client = browser_of(app)
    client.environ_base["HTTP_USER_AGENT"] = PHONE
    client.post("/sign-in", data={"name": "Alice", "passphrase": PASSPHRASE})
    return client


def test_it_needs_signing_in(client):
    assert client.get("/account").status_code == 303


def test_it_shows_what_she_chose(alice):
    page = alice.get("/account").text
    assert 'value="22:30"' in page
    assert 'value="Europe/London"' in page
    assert 'value="right" checked' in page
    assert '<option value="0" selected>Monday' in page


def test_what_she_chooses_is_kept_and_the_form_stays(alice, books):
    data = {"hand": "left", "unit": "cm", "bedtime": "00:15", "week_start": "6", "zone": "Asia/Kolkata"}
    answer = alice.post("/account/settings", data=data)
    assert answer.status_code == 200
    assert answer.text.lstrip().startswith("<form")
    assert "Kept." in answer.text
    assert [str(part) for part in books(CHOSEN)[0]] == ["left", "cm", "00:15:00", "6", "Asia/Kolkata"]
    assert '<html lang="en-GB" data-hand="left">' in alice.get("/projects").text


def test_as_a_page_of_its_own_the_form_leads_back(alice, books):
    answer = alice.post("/account", data={"hand": "left"})
    assert (answer.status_code, answer.location) == (303, "/account")
    assert alice.post("/account", data={"hand": "both"}).status_code == 422
    assert books(CHOSEN)[0].hand == "left"


@pytest.mark.parametrize(
    ("field", "value", "sentence"),
    [
        ("hand", "both", "Choose one"),
        ("hand", "", "Choose one"),
        ("unit", "true", "Choose one"),
        ("week_start", "7", "Choose one"),
        ("week_start", "-1", "Choose one"),
        ("week_start", "1.0", "Choose one"),
        ("week_start", "NaN", "Choose one"),
        ("bedtime", "", "such as 22:30"),
        ("bedtime", "late", "such as 22:30"),
        ("bedtime", "24:00", "no such time"),
        ("bedtime", "22:60", "no such time"),
        ("bedtime", "22:30:00+01:00", "such as 22:30"),
        ("bedtime", "٢٢:٣٠", "such as 22:30"),
        ("bedtime", "9" * 100_000, "such as 22:30"),
        ("zone", "", "no such time zone"),
        ("zone", "Mars/Olympus", "no such time zone"),
        ("zone", "/etc/localtime", "no such time zone"),
        ("zone", "localtime", "no such time zone"),
        ("zone", "<b>", "&lt;b&gt;"),
    ],
)
def test_what_cannot_be_is_said_and_nothing_is_kept(alice, books, field, value, sentence):
    before = books(CHOSEN)
    answer = alice.post("/account/settings", data={"hand": "left", "unit": "cm", field: value})
    assert answer.status_code == 422
    assert answer.text.lstrip().startswith("<form")
    assert sentence in answer.text
    assert "Kept." not in answer.text
    assert books(CHOSEN) == before


def test_charlie_changes_nothing_of_alices(alice, charlie, books):
    charlie.post("/account/settings", data={"hand": "left"})
    assert books(CHOSEN.where(Account.name == "Alice"))[0].hand == "right"
    assert "Alice" not in charlie.get("/account").text


# The passphrase


def change(client, current=PASSPHRASE, new="another long passphrase"):
    return client.post("/account/passphrase", data={"current": current, "passphrase": new})


def test_a_new_passphrase_holds_and_signs_every_other_device_out(alice, phone, client):
    answer = change(alice)
    assert answer.status_code == 200
    assert "holds" in answer.text
    assert phone.get("/projects").status_code == 303
    assert alice.get("/projects").status_code == 200
    assert client.post("/sign-in", data={"name": "Alice", "passphrase": PASSPHRASE}).status_code == 422
    new = {"name": "Alice", "passphrase": "another long passphrase"}
    assert client.post("/sign-in", data=new).status_code == 303


@pytest.mark.parametrize(
    ("current", "new", "sentence"),
    [
        ("not the passphrase", "another long passphrase", "not the passphrase you have now"),
        ("", "another long passphrase", "Give the passphrase you have now"),
        (PASSPHRASE, "seven77", "at least 8"),
        (PASSPHRASE, "", "at least 8"),
        (PASSPHRASE, "x" * 201, "too long"),
    ],
)
def test_a_passphrase_that_cannot_be_is_said_and_the_old_one_holds(alice, phone, current, new, sentence):
    answer = change(alice, current, new)
    assert answer.status_code == 422
    assert answer.text.lstrip().startswith("<section")
    assert sentence in answer.text
    assert new not in answer.text or not new
    assert phone.get("/projects").status_code == 200


def test_guessing_the_passphrase_from_an_open_phone_has_to_wait(alice):
    answers = [change(alice, "not the passphrase").status_code for _ in range(11)]
    assert answers == [422] * 10 + [429]


def test_without_a_name_there_is_no_passphrase_to_change(client):
    client.post("/accounts/unclaimed")
    assert change(client).status_code == 404


# Devices


def test_she_sees_where_she_is_signed_in(alice, phone):
    page = alice.get("/account").text
    assert "Android phone" in page
    assert page.count("This one") == 1
    assert len(OTHERS.findall(page)) == 1


def test_a_device_can_be_signed_out(alice, phone):
    (session,) = OTHERS.findall(alice.get("/account").text)
    answer = alice.post(f"/account/sessions/{session}/end")
    assert (answer.status_code, "Android phone" in answer.text) == (200, False)
    assert phone.get("/projects").status_code == 303
    assert alice.post(f"/account/sessions/{session}/end").status_code == 404


def test_this_one_is_signed_out_by_signing_out_only(alice, phone):
    (this_one,) = OTHERS.findall(phone.get("/account").text)
    assert alice.post(f"/account/sessions/{this_one}/end").status_code == 404
    assert alice.get("/projects").status_code == 200


def test_all_others_can_be_signed_out_at_once(alice, phone, charlie):
    assert alice.post("/account/sessions/end").status_code == 200
    assert phone.get("/projects").status_code == 303
    assert alice.get("/projects").status_code == 200
    assert charlie.get("/projects").status_code == 200


def test_charlie_neither_sees_nor_ends_alices_sessions(alice, phone, charlie):
    (session,) = OTHERS.findall(alice.get("/account").text)
    assert OTHERS.findall(charlie.get("/account").text) == []
    assert charlie.post(f"/account/sessions/{session}/end").status_code == 404
    assert phone.get("/projects").status_code == 200


# Without a name


def test_signing_out_without_a_name_is_warned_of_first(client, new_project):
    client.post("/accounts/unclaimed")
    new_project(client)
    page = client.get("/account").text
    assert "nobody can reach this work again" in page
    assert page.index("Sign up and keep it") < page.index('action="/sign-out"')


def test_where_nothing_was_begun_there_is_nothing_to_warn_of(client):
    client.post("/accounts/unclaimed")
    assert "nobody can reach" not in client.get("/account").text
