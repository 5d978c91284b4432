"""Who may come in: open, by invitation, closed."""

import re

import pytest

from tests.accounts.conftest import PASSPHRASE
from tests.conftest import browser_of


@pytest.fixture
def house(house_that_is):
    return house_that_is("invite")


@pytest.fixture
def owner(house):
    return sign_up(browser_of(house), "Alice")


def sign_up(client, name, expected=303, **more):
    answer = client.post("/accounts", data={"name": name, "passphrase": PASSPHRASE, **more})
    assert answer.status_code == expected, answer.text
    return client


def invite(owner):
    """Make an invitation; gives its token."""
    answer = owner.post("/account/invitations")
    assert answer.status_code == 200
    return re.search(r"invitation=([\w-]+)", answer.text)[1]


def test_it_works(house, owner):
    token = invite(owner)
    page = browser_of(house).get(f"/accounts/new?invitation={token}")
    assert f'value="{token}"' in page.text
    stitcher = sign_up(browser_of(house), "Berta", invitation=token)
    assert stitcher.get("/projects").status_code == 200


def test_without_one_nobody_comes_in(house, owner):
    page = browser_of(house).get("/accounts/new")
    assert "ask whoever runs this house for an invitation" in page.text
    assert 'name="passphrase"' not in page.text
    for token in ("", "guessed", "x" * 100_000):
        sign_up(browser_of(house), "Berta", 403, invitation=token)


def test_it_lets_one_in_and_no_second(house, owner):
    token = invite(owner)
    sign_up(browser_of(house), "Berta", invitation=token)
    sign_up(browser_of(house), "Clara", 403, invitation=token)
    assert "used or taken back" in browser_of(house).get(f"/accounts/new?invitation={token}").text


def test_a_mistake_in_the_form_does_not_use_it_up(house, owner):
    token = invite(owner)
    sign_up(browser_of(house), "ALICE", 422, invitation=token)
    sign_up(browser_of(house), "", 422, invitation=token)
    sign_up(browser_of(house), "Berta", invitation=token)


def test_its_link_is_shown_once_and_kept_as_a_hash(house, owner, config):
    token = invite(owner)
    assert token not in owner.get("/account").text
    for file in config.data.glob("evenrow.db*"):
        assert token.encode() not in file.read_bytes()


@pytest.mark.parametrize(
    ("origin", "begins"),
    [
        ("https://house.example:8443", 'value="https://house.example:8443/accounts/new?invitation='),
        ("http://[fd00::20]:8000", 'value="http://[fd00::20]:8000/accounts/new?invitation='),
        (None, 'value="/accounts/new?invitation='),
        ("null", 'value="/accounts/new?invitation='),
        ("javascript://house.example", 'value="/accounts/new?invitation='),
        ("http://house.example/elsewhere?", 'value="/accounts/new?invitation='),
        ('http://"><b>', 'value="/accounts/new?invitation='),
        ("http://[broken", 'value="/accounts/new?invitation='),
    ],
)
def test_its_link_names_the_house_as_the_page_that_asks_does_whatever_the_host_says(owner, origin, begins):
    owner.set_cookie("evenrow", owner.get_cookie("evenrow").value, domain="elsewhere.example")
    headers = {"Host": "elsewhere.example", **({"Origin": origin} if origin else {})}
    answer = owner.post("/account/invitations", headers=headers)
    assert begins in answer.text
    assert "elsewhere" not in answer.text


def test_it_can_be_taken_back(house, owner):
    token = invite(owner)
    (id,) = re.findall(r'action="/account/invitations/([\w-]+)/end"', owner.get("/account").text)
    answer = owner.post(f"/account/invitations/{id}/end")
    assert (answer.status_code, id in answer.text) == (200, False)
    sign_up(browser_of(house), "Berta", 403, invitation=token)


def test_only_the_owner_makes_them(house, owner):
    berta = sign_up(browser_of(house), "Berta", invitation=invite(owner))
    assert "Invitations" in owner.get("/account").text
    assert "Invitations" not in berta.get("/account").text
    assert berta.post("/account/invitations").status_code == 404
    invite(owner)
    (id,) = re.findall(r'action="/account/invitations/([\w-]+)/end"', owner.get("/account").text)
    assert berta.post(f"/account/invitations/{id}/end").status_code == 404


def test_an_open_house_makes_none(alice):
    assert "Invitations" not in alice.get("/account").text
    assert alice.post("/account/invitations").status_code == 404


@pytest.mark.parametrize("setting", ["invite", "closed"])
def test_a_house_without_an_owner_takes_its_first(house_that_is, setting):
    house = house_that_is(setting)
    assert 'href="/accounts/new"' in browser_of(house).get("/").text
    sign_up(browser_of(house), "Alice")
    sign_up(browser_of(house), "Berta", 403)


@pytest.mark.parametrize(
    ("setting", "sentence"), [("invite", "for an invitation"), ("closed", "takes in nobody new")]
)
def test_strangers_are_told_and_cannot_begin(house_that_is, alice, setting, sentence):
    stranger = browser_of(house_that_is(setting))
    page = stranger.get("/").text
    assert sentence in page
    assert "/accounts/unclaimed" not in page
    answer = stranger.post("/accounts/unclaimed", data={"zone": "Europe/London"})
    assert answer.status_code == 403
    assert "takes in nobody new" in answer.text


def test_a_closed_house_takes_no_invitation_made_before(house, owner, house_that_is):
    token = invite(owner)
    sign_up(browser_of(house_that_is("closed")), "Berta", 403, invitation=token)


@pytest.mark.parametrize("setting", ["invite", "closed"])
def test_work_begun_while_the_house_was_open_can_still_be_claimed(app, alice, house_that_is, setting):
    begun = browser_of(app)
    begun.post("/accounts/unclaimed")
    late = browser_of(house_that_is(setting))
    late.set_cookie("evenrow", begun.get_cookie("evenrow").value)
    assert 'name="passphrase"' in late.get("/accounts/new").text
    sign_up(late, "Berta")
