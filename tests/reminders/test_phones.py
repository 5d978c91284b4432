from dataclasses import replace

import pytest

from tests.conftest import browser_of
from tests.reminders.service import push_service
from webapp.db import db
from webapp.reminders import rounds
from webapp.reminders.models import PushPhone
from webapp.reminders.vapid import make_key, public_key


@pytest.fixture
def service():
    with push_service() as service:
        yield service


@pytest.fixture
def key(app, config, service):
    """The house's key; its operator vouches for the push service of the tests."""
    app.config["EVENROW"] = replace(config, push_services=(service.origin,))
    make_key(config.data)
    return public_key(config.data)


def phones(app):
    with app.app_context():
        return [(one.endpoint, str(one.id)) for one in db.session.query(PushPhone).all()]


def on(client, browser, key, change=None):
    return client.post("/reminders/phones.json", json=browser.subscription(key) | (change or {}))


def another_phone_of_alices(app):
    client = browser_of(app)
    client.post("/sign-in", data={"name": "Alice", "passphrase": "a long enough passphrase"})
    return client


def test_it_works(app, alice, service, key):
    browser = service.subscribe()
    assert alice.get("/reminders/phones.json").json == {"key": key, "on": False}
    answer = on(alice, browser, key)
    assert answer.status_code == 200, answer.text
    assert phones(app) == [(browser.endpoint, answer.json["id"])]
    assert alice.get("/reminders/phones.json").json["endpoint"] == browser.endpoint


def test_a_phone_that_asks_again_stays_one(app, alice, service, key):
    browser = service.subscribe()
    assert on(alice, browser, key).json == on(alice, browser, key).json
    assert len(phones(app)) == 1


def test_a_phone_with_a_new_address_gives_up_the_old_one(app, alice, service, key):
    old, new = service.subscribe(), service.subscribe()
    on(alice, old, key)
    on(alice, new, key)
    assert [endpoint for endpoint, _ in phones(app)] == [new.endpoint]


def test_she_who_gives_a_name_at_last_is_reminded_on(app, client, service, key):
    client.post("/accounts/unclaimed", data={"zone": "Europe/London"})
    on(client, service.subscribe(), key)
    about = {"name": "Bob", "passphrase": "a long enough passphrase", "zone": "Europe/London"}
    assert client.post("/accounts", data=about).status_code == 303
    assert client.get("/reminders/phones.json").json["on"] is True


def signed_in_again(client, name="Alice"):
    client.post("/sign-out")
    client.post("/sign-in", data={"name": name, "passphrase": "a long enough passphrase"})
    assert client.get("/reminders/phones.json").json["on"] is False


AGAIN = {"again": True}


def test_signed_in_again_a_phone_goes_on_by_itself(app, alice, service, key):
    browser = service.subscribe()
    phone = on(alice, browser, key).json["id"]
    signed_in_again(alice)
    assert on(alice, browser, key, AGAIN).json == {"id": phone}
    assert alice.get("/reminders/phones.json").json["endpoint"] == browser.endpoint
    assert phones(app) == [(browser.endpoint, phone)]


def test_signed_in_again_it_goes_on_though_another_of_hers_was_turned_on_meanwhile(app, alice, service, key):
    browser, other = service.subscribe(), another_phone_of_alices(app)
    on(alice, browser, key)
    alice.post("/sign-out")
    on(other, service.subscribe(), key)
    signed_in_again(alice)
    assert on(alice, browser, key, AGAIN).json["id"]
    assert len(phones(app)) == 2


def test_it_does_not_go_on_for_another_on_the_same_phone(app, alice, charlie, service, key):
    browser = service.subscribe()
    on(alice, browser, key)
    signed_in_again(alice, "Charlie")
    assert on(alice, browser, key, AGAIN).json == {"id": None}
    assert on(charlie, browser, key, AGAIN).json == {"id": None}
    assert charlie.get("/reminders/phones.json").json["on"] is False
    signed_in_again(alice)
    assert on(alice, browser, key, AGAIN).json["id"]


def test_what_was_turned_off_stays_off(app, alice, service, key):
    browser, other = service.subscribe(), another_phone_of_alices(app)
    phone = on(alice, browser, key).json["id"]
    other.post(f"/reminders/phones/{phone}/end")
    signed_in_again(alice)
    assert on(alice, browser, key, AGAIN).json == {"id": None}
    assert on(alice, service.subscribe(), key, AGAIN).json == {"id": None}
    assert phones(app) == []


def test_a_phone_that_changes_hands_reminds_its_new_one_alone(app, alice, charlie, service, key):
    browser = service.subscribe()
    on(alice, browser, key)
    on(charlie, browser, key)
    assert alice.get("/reminders/phones.json").json["on"] is False
    assert charlie.get("/reminders/phones.json").json["on"] is True
    assert len(phones(app)) == 1


def test_ten_phones_are_taken_and_no_more(app, alice, service, key):
    clients = [alice, *(another_phone_of_alices(app) for _ in range(10))]
    answers = [on(one, service.subscribe(), key).status_code for one in clients]
    assert answers == [200] * 10 + [422]
    refused = on(clients[10], service.subscribe(), key)
    assert "10 phones take your reminders already" in refused.json["error"]
    clients[3].post("/sign-out")  # that one is hers no more
    assert on(clients[10], service.subscribe(), key).status_code == 200
    assert len(phones(app)) == 10


@pytest.mark.parametrize(
    "change",
    [
        {"endpoint": "https://127.0.0.1/x"},
        {"endpoint": "http://127.0.0.1:1/x"},
        {"endpoint": "https://localhost/x"},
        {"endpoint": "https://2130706433/x"},
        {"endpoint": "https://[::ffff:127.0.0.1]/x"},
        {"endpoint": "https://fcm.googleapis.com@127.0.0.1/x"},
        {"endpoint": "https://push.evil.example/x"},
        {"endpoint": 7},
        {"endpoint": None},
        {"keys": None},
        {"keys": {}},
        {"keys": {"p256dh": "AAAA", "auth": "AAAA"}},
        {"keys": {"p256dh": "é", "auth": "é"}},
        {"keys": {"p256dh": 1, "auth": 2}},
        {"key": "another"},
        {"key": None},
    ],
)
def test_what_is_no_phones_address_is_refused_with_a_sentence(app, alice, service, key, change):
    answer = on(alice, service.subscribe(), key, change)
    assert answer.status_code == 422
    assert answer.json["error"].endswith(".")
    assert phones(app) == []


@pytest.mark.parametrize("body", ["", "null", "[]", "7", "{"])
def test_what_is_no_object_is_refused_too(alice, key, body):
    answer = alice.post("/reminders/phones.json", data=body, content_type="application/json")
    assert answer.status_code == 422


def test_she_turns_a_phone_off_and_charlie_cannot(app, alice, charlie, service, key):
    phone = on(alice, service.subscribe(), key).json["id"]
    assert charlie.post(f"/reminders/phones/{phone}/end").status_code == 404
    assert alice.post(f"/reminders/phones/{phone}/end").location == "/reminders"
    assert phones(app) == []


def test_a_trial_is_sent_to_this_phone_at_most_once_a_minute(alice, service, key, at_night):
    browser = service.subscribe()
    on(alice, browser, key)
    assert alice.post("/reminders/trial.json").json == {"said": "Sent. It shows in a few seconds."}
    assert browser.came[0]["said"]["title"] == "This is how a reminder looks."
    again = alice.post("/reminders/trial.json")
    assert (again.status_code, len(browser.came)) == (429, 1)
    at_night.shift(60)
    assert alice.post("/reminders/trial.json").status_code == 200


def test_without_a_phone_there_is_nothing_to_try(alice, key):
    answer = alice.post("/reminders/trial.json")
    assert (answer.status_code, answer.json["error"][:13]) == (422, "Reminders are")


TRIALS = [(410, 0, "does not know it"), (503, 1, "just now"), (403, 1, "not take it")]


@pytest.mark.parametrize(("status", "left", "word"), TRIALS)
def test_a_trial_says_what_came_of_it(app, alice, service, key, status, left, word):
    browser = service.subscribe()
    on(alice, browser, key)
    browser.answers = [(status, {})]
    answer = alice.post("/reminders/trial.json")
    assert answer.status_code == 502
    assert word in answer.json["error"]
    assert len(phones(app)) == left


def test_what_is_turned_on_by_the_page_is_reminded(app, alice, new_project, hold, service, key, at_night):
    hold(alice, new_project(alice), "on")
    browser = service.subscribe()
    on(alice, browser, key)
    with app.app_context():
        assert rounds.run(app.config["EVENROW"]) == 1
    assert browser.came[0]["said"]["title"] == "Your work is still on its frame."
    assert browser.came[0]["sub"] == "mailto:evenrow@localhost"


def test_a_house_without_a_key_says_so(alice):
    assert 'data-key=""' in alice.get("/reminders").text
