import stat
from datetime import UTC, datetime, timedelta

import http_ece
import pytest
from cryptography.exceptions import InvalidSignature
from cryptography.hazmat.primitives.asymmetric import ec

from tests.reminders.service import push_service, signed
from webapp.reminders.base64url import read, unpadded
from webapp.reminders.endpoints import Where
from webapp.reminders.push import House, Phone, Push, asked_to_wait, send
from webapp.reminders.vapid import make_key, public_key

NOW = datetime(2026, 2, 13, 22, 30, tzinfo=UTC)
PUSH = Push({"title": "Off the frame?"}, "night-2026-02-13", NOW + timedelta(hours=3))

# RFC 8291, appendix A
SAID = b"When I grow up, I want to be a watermelon"
SENDER = "yfWPiYE-n46HLnH0KqZOF1fJJU3MYrct3AELtAQ-oRw"
RECEIVER = "q1dXpw3UpT5VOmu_cf_v6ih07Aems3njxI-JWgLcM94"
RECEIVER_PUBLIC = "BCVxsr7N_eNgVRqvHtD0zTZsEc6-VV-JvLexhqUzORcxaOzi6-AYWXvTBHm4bjyPjs7Vd8pZGH6SRpkNtoIAiw4"
SECRET = "BTBZMqHH6r4Tts7J_aSIgg"
SALT = "DGv6ra1nlYgDCS1FRnbzlw"
BODY = (
    "DGv6ra1nlYgDCS1FRnbzlwAAEABBBP4z9KsN6nGRTbVYI_c7VJSPQTBtkgcy27mlmlMoZIIgDll6e3vCYLocInmYWAmS6TlzAC8wEqKK"
    "6PBru3jl7A_yl95bQpu6cVPTpK4Mqgkf1CXztLVBSt2Ks3oZwbuwXPXLWyouBWLVWGNWQexSgSxsj_Qulcy4a-fN"
)
# RFC 8292, section 2.4
VAPID = (
    "vapid t=eyJ0eXAiOiJKV1QiLCJhbGciOiJFUzI1NiJ9.eyJhdWQiOiJodHRwczovL3B1c2guZXhhbXBsZS5uZXQiLCJleHA"
    "iOjE0NTM1MjM3NjgsInN1YiI6Im1haWx0bzpwdXNoQGV4YW1wbGUuY29tIn0.i3CYb7t4xfxCDquptFOepC9GAu_HLGkMlMu"
    "CGSK2rpiUfnK9ojFwDXb1JrErtmysazNjjvW2L9OkSSHzvoD1oA, k=BA1Hxzyi1RUM1b5wjxsn7nGxAszw2u61m164i3MrA"
    "IxHF6YK5h4SDYic-dRuU_RCPCfA5aq9ojSwk5Y2EmClBPs"
)


def private(text):
    return ec.derive_private_key(int.from_bytes(read(text)), ec.SECP256R1())


@pytest.fixture
def service():
    with push_service() as service:
        yield service


@pytest.fixture
def house(tmp_path, service):
    return House(make_key(tmp_path), "https://stitch.example", Where.of([service.origin]))


def phone_of(browser):
    return Phone(browser.endpoint, **browser.keys)


def test_it_works(service, house, tmp_path):
    browser = service.subscribe()
    assert send(phone_of(browser), PUSH, house, NOW).what == "taken"
    (came,) = browser.came
    assert came["said"] == PUSH.payload
    assert (came["ttl"], came["topic"], came["urgency"]) == (3 * 3600, "night-2026-02-13", "high")
    assert (came["sub"], came["key"]) == ("https://stitch.example", public_key(tmp_path))
    assert NOW.timestamp() < came["exp"] <= NOW.timestamp() + 24 * 3600


def test_encryption_is_that_of_the_standard():
    given = {"private_key": private(SENDER), "dh": read(RECEIVER_PUBLIC), "auth_secret": read(SECRET)}
    body = http_ece.encrypt(SAID, salt=read(SALT), version="aes128gcm", **given)
    assert unpadded(body) == BODY
    mine = {"private_key": private(RECEIVER), "auth_secret": read(SECRET)}
    assert http_ece.decrypt(read(BODY), version="aes128gcm", **mine) == SAID


def test_the_standards_own_phone_can_read_what_is_sent(service, house):
    browser = service.subscribe()
    browser.private, browser.secret = private(RECEIVER), read(SECRET)
    assert browser.keys == {"p256dh": RECEIVER_PUBLIC, "auth": SECRET}
    assert send(phone_of(browser), PUSH, house, NOW).what == "taken"
    assert browser.came[0]["said"] == PUSH.payload


def test_signatures_are_checked_as_the_standard_has_them():
    claims, key = signed(VAPID)
    assert claims == {"aud": "https://push.example.net", "exp": 1453523768, "sub": "mailto:push@example.com"}
    assert key.startswith("BA1Hxzyi1RUM1b5w")
    with pytest.raises(InvalidSignature):
        signed(VAPID.replace(".i3CY", ".i3CZ"))


@pytest.mark.parametrize(
    ("status", "headers", "what", "after"),
    [
        (200, {}, "taken", 0),
        (201, {}, "taken", 0),
        (202, {}, "taken", 0),
        (400, {}, "refused", 0),
        (401, {}, "refused", 0),
        (403, {}, "refused", 0),
        (404, {}, "gone", 0),
        (410, {}, "gone", 0),
        (413, {}, "too large", 0),
        (429, {"Retry-After": "120"}, "later", 120),
        (429, {}, "later", 0),
        (500, {}, "later", 0),
        (503, {"Retry-After": "Fri, 13 Feb 2026 22:40:00 GMT"}, "later", 600),
        (301, {"Location": "/elsewhere"}, "refused", 0),
    ],
)
def test_every_answer_means_something(service, house, status, headers, what, after):
    browser = service.subscribe()
    browser.answers = [(status, headers)]
    outcome = send(phone_of(browser), PUSH, house, NOW)
    assert (outcome.what, outcome.after.total_seconds(), outcome.status) == (what, after, status)
    assert len(browser.came) == 1


@pytest.mark.parametrize(
    ("text", "seconds"),
    [("120", 120), ("0", 0), ("999999999", 3600), ("-5", 0), ("soon", 0), ("", 0), (None, 0), ("²", 0)],
)
def test_how_long_a_service_asks_to_wait_is_bounded(text, seconds):
    assert asked_to_wait(text, NOW) == timedelta(seconds=seconds)


def test_what_makes_no_sense_any_more_is_not_sent(service, house):
    browser = service.subscribe()
    assert send(phone_of(browser), PUSH, house, PUSH.until).what == "refused"
    assert browser.came == []


@pytest.mark.parametrize("keys", [{"p256dh": "AAAA", "auth": "AAAA"}, {"p256dh": "?", "auth": "?"}])
def test_keys_that_are_none_are_an_outcome_too(service, house, keys):
    assert send(Phone(service.origin + "/push/x", **keys), PUSH, house, NOW).what == "refused"


def test_the_key_is_made_once_and_is_its_owners_alone(tmp_path):
    assert public_key(tmp_path) is None
    path = make_key(tmp_path)
    first = public_key(tmp_path)
    assert stat.S_IMODE(path.stat().st_mode) == 0o600
    assert make_key(tmp_path) == path
    assert public_key(tmp_path) == first
    assert len(read(first)) == 65
    assert [one.name for one in tmp_path.iterdir()] == ["vapid.pem"]


def test_another_key_is_noticed(tmp_path):
    make_key(tmp_path)
    first = public_key(tmp_path)
    (tmp_path / "vapid.pem").unlink()
    make_key(tmp_path)
    assert public_key(tmp_path) not in (None, first)
