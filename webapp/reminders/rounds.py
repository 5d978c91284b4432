"""One round: put down what has come due, claim what waits, say it by every way she chose, note the outcome.

Any number of processes may do this at once, and be killed at any moment of it.
"""

import logging
from collections.abc import Callable
from concurrent.futures import Future, ThreadPoolExecutor, as_completed
from datetime import datetime, timedelta

from webapp import clock
from webapp.config import Config
from webapp.db import db, writing
from webapp.reminders import ledger
from webapp.reminders.due import come_due
from webapp.reminders.ledger import Claim, Key
from webapp.reminders.push import Outcome
from webapp.reminders.results import failed, noted
from webapp.reminders.sending import Letter, compose

Clock = Callable[[], datetime]
AT_ONCE = 16  # sendings: a slow service holds up none but its own


def run(config: Config, tell: Clock = clock.now) -> int:
    """Do one round; tells how many reminders got through. Needs the application's context.

    ``tell`` gives the time, asked anew for each batch: leases and what a service is told end by it.
    """
    put_down(tell())
    sent = 0
    while claimed := _claim(tell()):
        sent += say(config, claimed, tell)
    return sent


def put_down(now: datetime) -> None:
    """Put down what has come due by now and is not there yet."""
    found = [(Key(who, one.night, one.kind), one.at, one.until) for who, one in come_due(now)]
    known = ledger.settled({key.night for key, _, _ in found}) if found else set()
    db.session.rollback()
    if new := [row for row in found if row[0] not in known]:
        with writing():
            ledger.put_down(new)
            db.session.commit()


def say(config: Config, claimed: list[Claim], tell: Clock) -> int:
    """Say each by all its ways at once; tells how many got through by any of them."""
    now = tell()
    letters = [letter for claim in claimed if (letter := _composed(config, claim, now))]
    db.session.rollback()
    waits = {letter.claim.key: timedelta() for letter in letters}
    begun: dict[Future[Outcome], tuple[Letter, str]] = {}
    with ThreadPoolExecutor(AT_ONCE) as pool:
        for letter in letters:
            begun |= {pool.submit(job): (letter, way) for way, job in letter.jobs.items()}
        for done in as_completed(begun):
            letter, way = begun[done]
            outcome = came_of(done)
            waits[letter.claim.key] = max(waits[letter.claim.key], outcome.after)
            if outcome.what != "later":
                del letter.jobs[way]
                with writing():
                    noted(letter.claim, way, outcome, tell())
                    db.session.commit()
    return sum(_finish(letter, tell(), waits[letter.claim.key]) for letter in letters)


def _composed(config: Config, claim: Claim, now: datetime) -> Letter | None:
    """Write one reminder; where that breaks for a reason unforeseen, it waits, and holds up nobody else's."""
    try:
        return compose(config, claim, now)
    except Exception:
        db.session.rollback()
        logging.getLogger("evenrow").exception("One reminder could not be written; it will be tried again.")
    with writing():
        if not ledger.wait(claim, now):
            ledger.settle(claim, "missed")
        db.session.commit()
    return None


def came_of(done: Future[Outcome]) -> Outcome:
    """Tell what came of a sending; one that broke for a reason unforeseen holds up nobody else's."""
    try:
        return done.result()
    except Exception:
        logging.getLogger("evenrow").exception("One reminder could not be sent; it will be tried again.")
        return Outcome("later")


def _finish(letter: Letter, now: datetime, wait: timedelta) -> bool:
    """Close a reminder, or let it wait for those that could not be reached; tells whether it got through."""
    claim = letter.claim
    is_through = any(not way.startswith("!") for way in claim.reached)
    with writing():
        if letter.ends:
            ledger.take_back(claim)
        elif not letter.jobs or not ledger.wait(claim, now, wait):
            is_ours = ledger.settle(claim, "sent" if is_through else "missed")
            for way in letter.jobs if is_ours else ():
                failed(claim.key.stitcher, way)
        db.session.commit()
    return is_through and not letter.ends


def _claim(now: datetime) -> list[Claim]:
    is_any = ledger.is_any_free(now)
    db.session.rollback()
    if not is_any:
        return []
    with writing():
        claimed = ledger.claim(now)
        db.session.commit()
    return claimed
