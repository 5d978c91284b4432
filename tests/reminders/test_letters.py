"""Reminders by letter: the address confirmed, the letter sent, and a server that does not take it."""

import re
from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest

from tests.reminders.letters import mail_server
from webapp.config import BadSetting, Config
from webapp.db import db
from webapp.reminders import rounds
from webapp.reminders.mail import Mail, post
from webapp.reminders.models import ReminderChoice

ADDRESS = "https://stitch.example"
BEDTIME = datetime(2026, 2, 13, 22, 30, tzinfo=UTC)


@pytest.fixture
def mail(app, config):
    with mail_server() as keeper:
        app.config["EVENROW"] = replace(
            config, smtp=keeper.address, mail_from="house@stitch.example", address=ADDRESS
        )
        yield keeper


def confirm(mail, client):
    (link,) = re.findall(r"http\S+", mail.letters[-1].get_content())
    path = link.removeprefix(ADDRESS)
    assert "to this address?" in client.get(path).text
    return client.post(path)


def remind(app, now):
    with app.app_context():
        return rounds.run(app.config["EVENROW"], lambda: now)


def test_a_letter_comes_at_bedtime_once_she_said_that_it_is_her_address(
    app, alice, client, new_project, hold, mail
):
    hold(alice, new_project(alice), "on")
    alice.post("/reminders/email", data={"email": "alice@mail.example"})
    assert mail.letters[0]["To"] == "alice@mail.example"
    assert "A letter is on its way to alice@mail.example" in alice.get("/reminders").text
    assert remind(app, BEDTIME) == 0
    assert "from now on" in confirm(mail, client).text
    assert remind(app, BEDTIME) == 1
    assert "Your work is still on its frame." in mail.letters[1].get_content()
    assert mail.letters[1]["Auto-Submitted"] == "auto-generated"
    assert "To alice@mail.example." in alice.get("/reminders").text
    alice.post("/reminders/email/end")
    assert remind(app, BEDTIME + timedelta(days=1)) == 0


def test_what_confirms_an_address_holds_for_three_days(app, alice, client, mail, at_night):
    alice.post("/reminders/email", data={"email": "alice@mail.example"})
    (link,) = re.findall(r"https://stitch.example(\S+)", mail.letters[0].get_content())
    assert "three days" in mail.letters[0].get_content()
    at_night.move_to("2026-02-16T20:00:00Z")
    assert client.get(link).status_code == 200
    at_night.move_to("2026-02-17T20:00:00Z")
    assert client.get(link).status_code == client.post(link).status_code == 404
    with app.app_context():
        assert db.session.query(ReminderChoice.email).one() == (None,)


def test_a_mail_server_that_talks_on_for_ever_is_left(config, mail, monkeypatch):
    """Everybody's reminders would wait for it."""
    monkeypatch.setattr("webapp.reminders.mail.WHOLE", 0.5)
    mail.never_ends = True
    given = replace(config, smtp=mail.address, mail_from="house@stitch.example", address=ADDRESS)
    assert not post(given, Mail("alice@mail.example", "Off the frame?", "Take it off."))
    mail.never_ends = False
    assert post(given, Mail("alice@mail.example", "Off the frame?", "Take it off."))
    assert {"Date", "Message-ID"} <= set(mail.letters[0].keys())  # RFC 5322, section 3.6


def test_to_look_at_the_link_says_nothing_yet(app, alice, client, mail):
    alice.post("/reminders/email", data={"email": "alice@mail.example"})
    (link,) = re.findall(r"https://stitch.example(\S+)", mail.letters[0].get_content())
    client.get(link)
    with app.app_context():
        assert db.session.query(ReminderChoice).one().email is None
    assert client.get(link + "x").status_code == client.post(link + "x").status_code == 404


def test_letters_to_find_out_are_one_a_minute(alice, mail, at_night):
    for status in (303, 429):
        assert alice.post("/reminders/email", data={"email": "bob@mail.example"}).status_code == status
    at_night.shift(60)
    assert alice.post("/reminders/email", data={"email": "bob@mail.example"}).status_code == 303
    assert len(mail.letters) == 2


@pytest.mark.parametrize(
    "typed",
    ["", "alice", "@mail.example", "a@b", "a@b@mail.example", "a b@mail.example", "a@.b.c.", "a@b..c"],
)
def test_what_is_no_address_is_said(alice, mail, typed):
    answer = alice.post("/reminders/email", data={"email": typed})
    assert (answer.status_code, mail.letters) == (422, [])
    assert "That is no e-mail address." in answer.text


@pytest.mark.parametrize(
    "typed", ["a@mail.example\r\nBcc: bob@mail.example", "a@mail.example,bob@mail.example"]
)
def test_nobody_else_can_be_written_to_beside_it(alice, mail, typed):
    assert alice.post("/reminders/email", data={"email": typed}).status_code == 422
    assert mail.letters == []


def test_a_server_that_refuses_twice_is_told_of(app, alice, client, new_project, hold, mail):
    hold(alice, new_project(alice), "on")
    alice.post("/reminders/email", data={"email": "alice@mail.example"})
    confirm(mail, client)
    mail.refuses = True
    for night in range(2):
        assert "your e-mail" not in alice.get("/projects").text
        for minutes in range(0, 200, 10):
            remind(app, BEDTIME + timedelta(days=night, minutes=minutes))
    assert "did not get through to your e-mail, twice" in " ".join(alice.get("/projects").text.split())


def test_where_the_links_of_letters_lead_no_request_decides(alice, mail):
    elsewhere = {"Origin": "https://evil.example"}  # a script of her own can say anything
    alice.post("/reminders/email", data={"email": "bob@mail.example"}, headers=elsewhere)
    assert "evil" not in mail.letters[0].as_string()
    assert "https://stitch.example/reminders/email/" in mail.letters[0].get_content()


def test_three_letters_a_day_go_to_an_address_whoever_asks(alice, charlie, mail, at_night):
    answers = []
    for _ in range(2):
        for one in (alice, charlie):
            answers.append(one.post("/reminders/email", data={"email": "bob@mail.example"}).status_code)
        at_night.shift(60)
    assert answers == [303, 303, 303, 429]
    assert len(mail.letters) == 3


def test_without_a_name_no_letters_are_asked_for(client, mail):
    client.post("/accounts/unclaimed", data={"zone": "Europe/London"})
    assert "By e-mail" not in client.get("/reminders").text
    assert client.post("/reminders/email", data={"email": "bob@mail.example"}).status_code == 404


def test_without_a_mail_server_there_is_no_such_way(alice):
    assert "By e-mail" not in alice.get("/reminders").text
    assert alice.post("/reminders/email", data={"email": "alice@mail.example"}).status_code == 404


def test_a_mail_server_is_named_so_that_it_can_be_read():
    read = Config.from_environment
    assert read({"EVENROW_SMTP": "smtps://a:b@mail.example:465"}).smtp
    assert read({"EVENROW_PUSH_SERVICES": "push.example, http://127.0.0.1:9"}).push_services == (
        *("push.example", "http://127.0.0.1:9"),
    )
    assert read({"EVENROW_ADDRESS": "https://stitch.example/"}).address == "https://stitch.example"
    for wrong in ("stitch.example", "ftp://stitch.example", "https://stitch.example/x", "https://a b"):
        with pytest.raises(BadSetting, match="EVENROW_ADDRESS"):
            read({"EVENROW_ADDRESS": wrong})
    for wrong in ("mail.example", "http://mail.example", "smtp://mail.example/x", "smtp://"):
        with pytest.raises(BadSetting, match="EVENROW_SMTP"):
            read({"EVENROW_SMTP": wrong})
