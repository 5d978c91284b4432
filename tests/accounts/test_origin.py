"""A state change must come from a page of our own.

Fetch Metadata (W3C) has Sec-Fetch-Site; the Fetch standard has when a browser sends Origin.
"""

import pytest

from tests.accounts.conftest import PASSPHRASE

STRANGERS = [
    {"Sec-Fetch-Site": "cross-site"},
    {"Sec-Fetch-Site": "same-site"},
    {"Sec-Fetch-Site": ""},
    {"Sec-Fetch-Site": "Same-Origin"},
    {"Sec-Fetch-Site": "cross-site", "Origin": "http://localhost"},
    {"Origin": "http://elsewhere.example"},
    {"Origin": "http://localhost.elsewhere.example"},
    {"Origin": "http://localhost:8001"},
    {"Origin": "http://localhost@elsewhere.example"},
    {"Origin": "null"},
    {"Origin": ""},
    {"Origin": "http://[broken"},
    {"Origin": "localhost"},
    {"Referer": "http://localhost/"},
    {},
]
FRIENDS = [
    {"Sec-Fetch-Site": "same-origin"},
    {"Sec-Fetch-Site": "none"},
    {"Origin": "http://localhost"},
    {"Origin": "http://LOCALHOST"},
]


@pytest.fixture
def anyone(app):
    return app.test_client()


def sign_up(client, headers, **more):
    return client.post("/accounts", data={"name": "Alice", "passphrase": PASSPHRASE}, headers=headers, **more)


@pytest.mark.parametrize("headers", STRANGERS)
def test_what_another_site_sends_is_refused(anyone, headers):
    answer = sign_up(anyone, headers)
    assert answer.status_code == 403
    assert "nothing was changed" in answer.text
    assert anyone.get_cookie("evenrow") is None


@pytest.mark.parametrize("headers", FRIENDS)
def test_what_our_own_page_sends_is_taken(anyone, headers):
    assert sign_up(anyone, headers).status_code == 303


@pytest.mark.parametrize(
    ("origin", "host", "status"),
    [
        ("http://sewing-box.local:8000", "sewing-box.local:8000", 303),
        ("http://sewing-box.local:8000", "sewing-box.local:8001", 403),
        ("http://sewing-box.local", "sewing-box.local:80", 303),
        ("http://192.168.1.20:8000", "192.168.1.20:8000", 303),
        ("http://[fd00::20]:8000", "[fd00::20]:8000", 303),
        ("", "", 403),
        ("http://", "", 403),
    ],
)
def test_on_plain_http_the_origin_must_name_the_host(anyone, origin, host, status):
    assert sign_up(anyone, {"Origin": origin, "Host": host}).status_code == status


@pytest.mark.parametrize("path", ["/projects", "/sign-out", "/account/settings", "/accounts/unclaimed"])
def test_a_signed_in_stitcher_is_not_acted_for_by_another_site(alice, path):
    answer = alice.post(path, headers={"Sec-Fetch-Site": "cross-site"})
    assert answer.status_code == 403
    assert alice.get("/account").status_code == 200


def test_the_journal_is_refused_as_json(alice):
    answer = alice.post("/journal", json={}, headers={"Sec-Fetch-Site": "cross-site"})
    assert answer.status_code == 403
    assert "nothing was changed" in answer.json["error"]


def test_looking_is_free(anyone):
    assert anyone.get("/", headers={"Sec-Fetch-Site": "cross-site"}).status_code == 200
