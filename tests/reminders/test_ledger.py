from concurrent.futures import ThreadPoolExecutor
from datetime import UTC, date, datetime, timedelta

import pytest
from sqlalchemy import event, select

from webapp.accounts.models import Account
from webapp.db import db, writing
from webapp.reminders import ledger
from webapp.reminders.ledger import Key
from webapp.reminders.models import Told

NOW = datetime(2026, 2, 13, 22, 30, tzinfo=UTC)
UNTIL = NOW + timedelta(hours=3)
NIGHT = date(2026, 2, 13)


@pytest.fixture
def hers(app, alice):
    """Alice's row of tonight, and the application it is in."""
    with app.app_context():
        stitcher = db.session.scalar(select(Account.id))
        key = Key(stitcher, NIGHT, "bedtime")
        put_down(key)
        yield key


def put_down(*keys):
    with writing():
        ledger.put_down([(key, NOW, UNTIL) for key in keys])
        db.session.commit()


def claim(now=NOW):
    with writing():
        found = ledger.claim(now)
        db.session.commit()
        return found


def done(act, *given):
    with writing():
        said = act(*given)
        db.session.commit()
        return said


def state(key):
    db.session.rollback()
    return db.session.get_one(Told, tuple(key)).state


def test_it_works(hers):
    (one,) = claim()
    assert (one.key, one.tries, one.reached) == (hers, 1, [])
    assert done(ledger.settle, one, "sent")
    assert state(hers) == "sent"
    assert claim(NOW + timedelta(hours=1)) == []


def test_a_row_is_put_down_once_and_then_stays_as_it_is(hers):
    done(ledger.settle, claim()[0], "sent")
    put_down(hers, hers)
    assert state(hers) == "sent"


def test_nobody_else_is_given_a_row_while_its_lease_lasts(hers):
    assert len(claim()) == 1
    assert claim(NOW + ledger.LEASE - timedelta(seconds=1)) == []
    (again,) = claim(NOW + ledger.LEASE)
    assert again.tries == 2


def test_who_comes_back_after_the_lease_settles_nothing(hers):
    (late,) = claim()
    (other,) = claim(NOW + ledger.LEASE)
    assert not done(ledger.settle, late, "missed")
    assert not done(ledger.note, late, ["x"])
    assert done(ledger.settle, other, "sent")
    assert state(hers) == "sent"


def test_of_many_who_ask_at_once_one_is_given_each_row(app, hers):
    put_down(*(Key(hers.stitcher, NIGHT - timedelta(days=n), "bedtime") for n in range(1, 60)))

    def ask(_):
        with app.app_context():
            return [one.key for one in claim()]

    with ThreadPoolExecutor(6) as pool:
        found = [key for keys in pool.map(ask, range(12)) for key in keys]
    assert len(found) == len(set(found)) == 60


def test_it_is_tried_later_and_later_and_given_up_when_it_would_be_too_late(hers):
    waits, now = [], NOW
    while True:
        (one,) = claim(now)
        if not done(ledger.wait, one, now):
            break
        db.session.rollback()
        next_try = db.session.get_one(Told, tuple(hers)).next_try
        assert claim(next_try - timedelta(seconds=1)) == []
        waits.append((next_try - now).total_seconds())
        now = next_try
    assert waits[:6] == [30, 60, 120, 240, 480, 900]
    assert max(waits) == 900
    assert UNTIL - timedelta(minutes=15) <= now < UNTIL


def test_it_waits_at_least_as_long_as_it_is_told(hers):
    (one,) = claim()
    done(ledger.wait, one, NOW, timedelta(minutes=20))
    assert claim(NOW + timedelta(minutes=19)) == []
    assert len(claim(NOW + timedelta(minutes=20))) == 1


def test_said_again_it_waits_anew(hers):
    done(ledger.settle, claim()[0], "sent")
    later = NOW + timedelta(minutes=30)
    done(ledger.say_again, hers, later, later + timedelta(hours=1))
    assert claim(later - timedelta(seconds=1)) == []
    (one,) = claim(later)
    assert (one.tries, one.reached, one.until) == (1, [], later + timedelta(hours=1))


def test_an_index_finds_what_waits(hers):
    found = []
    event.listen(db.engine, "before_cursor_execute", lambda *given: found.append(given[2:4]))
    claim()
    statement, values = next(one for one in found if one[0].startswith("UPDATE told"))
    with db.engine.connect() as connection:
        plan = connection.exec_driver_sql("EXPLAIN QUERY PLAN " + statement, values).all()
    assert "told_waiting" in str(plan)
