"""What was begun without a name comes along into an account."""

import pytest
from sqlalchemy import func, select

from tests.accounts.conftest import PASSPHRASE
from tests.conftest import browser_of
from webapp.accounts.models import Account, SignedIn
from webapp.db import Base, db, writing
from webapp.ids import new_id
from webapp.reminders.models import PushPhone, ReminderChoice


@pytest.fixture
def begun(app, new_project):
    """A phone with work on it, and no name: its browser and its project."""
    client = browser_of(app)
    client.post("/accounts/unclaimed", data={"zone": "Europe/London"})
    project = new_project(client)
    tap(client, project, row=1, by=7)
    sit = {"id": str(new_id()), "kind": "begin", "project": str(project), "at": "2026-02-03T20:00:00.000Z"}
    send(client, [sit])
    return client, project


def tap(client, project, row, by):
    at = "2026-02-03T20:14:05.120Z"
    entry = {"id": str(new_id()), "kind": "stitches", "project": str(project), "at": at, "row": row, "by": by}
    return send(client, [entry])


def send(client, entries, **more):
    answer = client.post("/journal", json={"sent_at": "2026-02-03T20:14:06.000Z", "entries": entries, **more})
    if answer.status_code == 200:
        assert answer.json["refused"] == []
    return answer


def sign_in(client, **more):
    return client.post("/sign-in", data={"name": "Alice", "passphrase": PASSPHRASE, **more})


def rows_of(books, account):
    tables = [t for t in Base.metadata.sorted_tables if "stitcher" in t.c and t.name != "invitation"]
    return {
        t.name: books(select(func.count()).select_from(t).where(t.c.stitcher == account))[0][0]
        for t in tables
    }


def test_the_page_asks_about_it_and_means_yes(alice, begun):
    client, _ = begun
    assert 'value="yes" checked' in client.get("/sign-in").text


def test_it_does_not_ask_where_nothing_was_begun(alice, client):
    assert 'name="bring"' not in client.get("/sign-in").text
    client.post("/accounts/unclaimed")
    assert 'name="bring"' not in client.get("/sign-in").text


def test_thread_that_was_kept_is_work_too(alice, client):
    client.post("/accounts/unclaimed")
    assert client.post("/thread/stash", data={"thread": "Madder", "skeins": "2"}).status_code == 303
    assert 'value="yes" checked' in client.get("/sign-in").text
    assert sign_in(client, bring="yes").status_code == 303
    assert "Madder" in alice.get("/thread/stash").text


@pytest.mark.parametrize("word", [{}, {"bring": "yes"}])
def test_it_comes_along_entry_by_entry(alice, begun, app, word):
    client, project = begun
    before = client.get(f"/projects/{project}/snapshot").json
    assert sign_in(client, **word).status_code == 303
    after = alice.get(f"/projects/{project}/snapshot").json
    assert (after["stitches"], after["revision"]) == (7, 2)
    assert after == before


def test_it_comes_beside_what_she_had(alice, begun, new_project):
    client, project = begun
    hers = new_project(alice)
    tap(alice, hers, row=3, by=5)
    sign_in(client)
    assert client.get(f"/projects/{hers}/snapshot").json["stitches"] == 5
    assert client.get(f"/projects/{project}/snapshot").json["stitches"] == 7
    assert tap(client, project, row=1, by=3).json["projects"][str(project)]["stitches"] == 10


def test_nothing_is_left_behind_and_nothing_is_doubled(alice, begun, books):
    client, _ = begun
    ((account,),) = books(select(Account.id).where(Account.name.is_(None)))
    before = rows_of(books, account)
    sign_in(client)
    ((hers,),) = books(select(Account.id).where(Account.name == "Alice"))
    assert sum(rows_of(books, account).values()) == 0
    assert rows_of(books, hers) == before | {"signed_in": 2}
    assert before["entry"] == 2


def test_left_behind_it_is_not_hers(alice, begun):
    client, project = begun
    assert sign_in(client, bring="no").status_code == 303
    assert client.get(f"/projects/{project}").status_code == 404


def test_a_wrong_passphrase_moves_nothing(alice, begun):
    client, project = begun
    answer = client.post("/sign-in", data={"name": "Alice", "passphrase": "not the passphrase"})
    assert answer.status_code == 422
    assert client.get(f"/projects/{project}").status_code == 200
    assert alice.get(f"/projects/{project}").status_code == 404


def test_work_that_is_there_already_is_neither_doubled_nor_lost(alice, begun, new_project):
    client, project = begun
    new_project(alice, id=str(project), title="Quince tree")
    answer = sign_in(client)
    assert answer.status_code == 422
    assert "nothing was changed" in answer.text
    assert client.get(f"/projects/{project}/snapshot").json["stitches"] == 7
    assert "Quince tree" in alice.get(f"/projects/{project}").text


def test_one_with_a_name_brings_nothing_along(alice, charlie, new_project):
    project = new_project(charlie)
    assert sign_in(charlie, bring="yes").status_code == 303
    assert charlie.get(f"/projects/{project}").status_code == 404


def test_what_still_waited_on_the_phone_may_follow(alice, begun, books):
    client, project = begun
    ((account,),) = books(select(Account.id).where(Account.name.is_(None)))
    sign_in(client)
    at = "2026-02-03T20:15:00.000Z"
    late = {"id": str(new_id()), "kind": "stitches", "project": str(project), "at": at, "row": 1, "by": 1}
    assert send(client, [late], account=str(account)).status_code == 200
    assert alice.get(f"/projects/{project}/snapshot").json["stitches"] == 8


def test_what_waits_for_another_stitcher_may_not(alice, charlie, books, new_project):
    ((hers,),) = books(select(Account.id).where(Account.name == "Alice"))
    project = new_project(charlie)
    late = {"id": str(new_id()), "kind": "begin", "project": str(project), "at": "2026-02-03T20:15:00.000Z"}
    for account in (str(hers), "nobody", 7, [str(hers)]):
        assert send(charlie, [late], account=account).status_code == 409


def test_the_door_it_was_begun_by_is_shut(alice, begun, app, books):
    client, _ = begun
    token = client.get_cookie("evenrow").value
    sign_in(client)
    other = browser_of(app)
    other.set_cookie("evenrow", token)
    assert other.get("/projects").status_code == 303
    assert len(books(select(SignedIn.id))) == 2


@pytest.mark.parametrize("has_own", [True, False])
def test_reminders_come_along_and_what_the_account_chose_stands(app, alice, begun, has_own):
    client, _ = begun
    client.post("/reminders/calendar")
    client.post("/reminders/tonight", data={"answer": "later"})
    if has_own:
        alice.post("/reminders", data={"bedtime": "21:15", "hours": "2"})
        alice.post("/reminders/tonight", data={"answer": "later"})
    assert sign_in(client).status_code == 303
    with app.app_context():
        (choice,) = db.session.scalars(select(ReminderChoice)).all()
        assert (choice.hours, choice.feed is None) == ((2, True) if has_own else (None, False))


def test_a_phone_that_took_reminders_before_goes_on(app, alice, begun):
    client, _ = begun
    with app.app_context(), writing():
        one = db.session.scalars(
            select(SignedIn).order_by(SignedIn.created.desc(), SignedIn.id.desc())
        ).first()
        empty = dict.fromkeys(["endpoint", "endpoint_hash", "p256dh", "auth", "key", "origin", "device"], "x")
        times = {"id": new_id(), "created": one.created, "failures": 0}
        db.session.add(PushPhone(stitcher=one.stitcher, session=one.id, **empty, **times))
        db.session.commit()
    sign_in(client)
    with app.app_context():
        (phone,) = db.session.scalars(select(PushPhone)).all()
        hers = db.session.get(SignedIn, (phone.stitcher, phone.session))
        assert hers is not None
        assert db.session.get_one(Account, phone.stitcher).claimed
