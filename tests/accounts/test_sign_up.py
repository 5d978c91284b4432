"""Signing up."""

from concurrent.futures import ThreadPoolExecutor

import pytest
from sqlalchemy import select

from tests.accounts.conftest import ACCOUNTS, PASSPHRASE, begin, sign_up
from tests.conftest import browser_of
from webapp.accounts.models import Account, House


def test_it_works(client, books):
    answer = sign_up(client, zone="Europe/London")
    assert answer.status_code == 303
    assert answer.location == "/projects"
    assert client.get("/projects").status_code == 200
    assert [(one.name, one.zone) for one in books(ACCOUNTS)] == [("Alice", "Europe/London")]


def test_the_first_page_offers_to_begin(client):
    page = client.get("/")
    assert page.status_code == 200
    assert 'action="/accounts/unclaimed"' in page.text
    assert 'href="/sign-in"' in page.text
    assert 'href="/cloth"' in page.text


def test_the_first_page_leads_a_stitcher_to_her_projects(alice):
    assert alice.get("/").location == "/projects"


def test_a_passphrase_is_kept_as_argon2id_and_nowhere_else(alice, books, config):
    (one,) = books(ACCOUNTS)
    assert one.passphrase_hash.startswith("$argon2id$")  # the PHC string format
    for file in config.data.glob("evenrow.db*"):
        assert PASSPHRASE.encode() not in file.read_bytes()


def test_a_token_is_kept_as_its_hash_alone(alice, config):
    token = alice.get_cookie("evenrow").value
    for file in config.data.glob("evenrow.db*"):
        assert token.encode() not in file.read_bytes()


def test_the_first_to_sign_up_owns_the_house(alice, charlie, books):
    assert books(select(Account.name).join(House, House.owner == Account.id)) == [("Alice",)]


def test_who_only_begins_does_not_own_the_house(client, books):
    begin(client)
    assert books(select(House.owner)) == [(None,)]


@pytest.mark.parametrize(
    ("other", "why"),
    [
        ("Alice", "the same"),
        ("aLICE", "casefold"),
        ("  Alice ", "spaces around"),
        ("Ａｌｉｃｅ", "NFKC: full width letters"),
        ("Ali\u00adce", "a soft hyphen is not seen"),
        ("Ali\u200dce", "a joiner is not seen"),
    ],
)
def test_a_name_is_taken_however_it_is_written(alice, client, other, why, books):
    answer = sign_up(client, other)
    assert answer.status_code == 422, why
    assert len(books(ACCOUNTS)) == 1


def test_names_that_differ_by_an_accent_are_two(alice, client):
    assert sign_up(client, "Alicé").status_code == 303


@pytest.mark.parametrize(
    ("fields", "sentence"),
    [
        ({}, "Give a name"),
        ({"name": ""}, "Give a name"),
        ({"name": "   "}, "Give a name"),
        ({"name": "\u200d\u200d"}, "that can be seen"),
        ({"name": "\u0301"}, "that can be seen"),
        ({"name": "A\x00lice"}, "cannot be shown"),
        ({"name": "Al\u202eice"}, "cannot be shown"),
        ({"name": "A" * 61}, "too long"),
        ({"name": "A" * 100_000}, "too long"),
        ({"name": "\ufdfa" * 60}, "too long"),  # one character, eighteen by NFKC (Unicode's own data)
        ({"passphrase": ""}, "at least 8 characters"),
        ({"passphrase": "        "}, "at least 8 characters"),
        ({"passphrase": "seven77"}, "at least 8 characters"),
        ({"passphrase": "e\u0301" * 7}, "at least 8 characters"),
        ({"passphrase": "x" * 201}, "too long"),
        ({"passphrase": "a\nb\nc\nd\ne"}, "could not be read"),
        ({"name": "Alice Brown", "passphrase": "ALICE BROWN"}, "other than the name"),
        ({"zone": "Mars/Olympus"}, "no such time zone"),
        ({"zone": "../../etc/passwd"}, "no such time zone"),
        ({"zone": "<script>"}, "no such time zone"),
        ({"zone": "Z" * 100_000}, "no such time zone"),
    ],
)
def test_what_cannot_be_is_said_in_a_sentence(client, fields, sentence, books):
    data = ({"name": "Alice", "passphrase": PASSPHRASE} | fields) if fields else {}
    answer = client.post("/accounts", data=data)
    assert answer.status_code == 422
    assert sentence in answer.text
    assert books(ACCOUNTS) == []
    assert client.get_cookie("evenrow") is None


def test_what_was_typed_is_still_there_but_for_the_passphrase(client):
    answer = sign_up(client, "Al<i>ce", "seven77")
    assert "Al&lt;i&gt;ce" in answer.text
    assert "seven77" not in answer.text


def test_a_wrong_zone_can_be_put_right_on_the_page(client):
    answer = sign_up(client, zone="Mars/Olympus")
    assert 'value="Mars/Olympus"' in answer.text
    assert '<option value="Europe/London">' in answer.text


FORM = "application/x-www-form-urlencoded"
PARTS = b'--x\r\nContent-Disposition: form-data; name="name"\r\n\r\nAl\xffice\r\n--x--\r\n'


@pytest.mark.parametrize(
    ("body", "kind"),
    [
        (b"name=Al%FFice&passphrase=a+long+enough+passphrase", FORM),
        (b"name=Alice&passphrase=a+long+enough+%ED%A0%80", FORM),  # half of a surrogate pair
        (b"name=Al\xffice&passphrase=a+long+enough+passphrase", FORM),
        (PARTS, "multipart/form-data; boundary=x"),
        (b'{"name": "Alice", "passphrase": "a long enough passphrase"}', "application/json"),
        (b"", FORM),
    ],
)
def test_what_is_not_a_form_in_utf_8_is_refused(client, body, kind, books):
    answer = client.post("/accounts", data=body, content_type=kind)
    assert answer.status_code in (400, 422)
    assert "anew" in answer.text or "Give a" in answer.text
    assert books(ACCOUNTS) == []


def test_ten_megabytes_are_refused(client, books):
    answer = sign_up(client, "A" * 10_000_000)
    assert answer.status_code == 413
    assert "too large" in answer.text
    assert books(ACCOUNTS) == []


@pytest.mark.parametrize("length", [8, 200])
def test_the_shortest_and_the_longest_passphrase_let_her_in(client, app, length):
    passphrase = "é" * length
    assert sign_up(client, passphrase=passphrase).status_code == 303
    data = {"name": "Alice", "passphrase": passphrase}
    assert browser_of(app).post("/sign-in", data=data).status_code == 303


def test_without_a_zone_it_is_utc(client, books):
    sign_up(client)
    assert books(ACCOUNTS)[0].zone == "UTC"


def test_many_who_want_one_name_at_once_and_one_has_it(app, books):
    def one(_):
        return sign_up(browser_of(app), "Alice").status_code

    with ThreadPoolExecutor(8) as pool:
        answers = sorted(pool.map(one, range(8)))
    assert answers == [303] + [422] * 7
    assert len(books(ACCOUNTS)) == 1


def test_many_who_come_first_at_once_and_one_owns_the_house(app, books):
    with ThreadPoolExecutor(4) as pool:
        answers = list(pool.map(lambda n: sign_up(browser_of(app), f"Stitcher {n}").status_code, range(4)))
    assert answers == [303] * 4
    assert len(books(select(Account.name).join(House, House.owner == Account.id))) == 1
