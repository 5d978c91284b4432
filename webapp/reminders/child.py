"""Reminding in a process of its own: one round for cron, or a child of ``serve`` that goes when that goes.

The child holds the reading end of a pipe; however its parent ends, the pipe ends with it. Nothing is lost if
it is killed: what it had claimed is free again when its lease is over.
"""

import logging
import os
import select
import signal
import subprocess
import sys
import threading
from collections.abc import Iterator
from contextlib import contextmanager

from flask import Flask

from webapp import clock, create_app
from webapp.config import Config
from webapp.db import db
from webapp.reminders import ledger, rounds
from webapp.reminders.vapid import make_key

BETWEEN = 20.0  # seconds
PAUSE = 2.0  # seconds, before a child that ended is begun anew: one that cannot live must not be hurried


def one_round(config: Config) -> int:
    """Do one round; tells how many reminders got through."""
    app = create_app(config)
    with app.app_context():
        ledger.is_any_free(clock.now())  # where there is no house yet it fails here, before a key is made
    make_key(config.data)
    return _round(app, config)


def stay_and_remind(config: Config) -> None:
    """Do a round every little while until what comes in ends; where one fails, the next is tried."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)  # Ctrl-C on the terminal: whoever started us ends us
    app = create_app(config)
    while True:
        try:
            _round(app, config)
        except Exception:
            logging.getLogger("evenrow").exception("This round of reminders failed; the next will be tried.")
        if select.select([sys.stdin], [], [], BETWEEN)[0]:
            return


@contextmanager
def reminding(config: Config) -> Iterator[None]:
    """Have a child remind as long as this lasts; where it ends before, another takes its place."""
    settings = {
        "EVENROW_DATA": str(config.data),
        "EVENROW_DATABASE_URL": config.database_url,
        "EVENROW_PUSH_SERVICES": " ".join(config.push_services),
        "EVENROW_SMTP": config.smtp,
        "EVENROW_MAIL_FROM": config.mail_from,
        "EVENROW_ADDRESS": config.address,
    }
    command = [sys.executable, "-m", "webapp.cli", "remind", "--stay"]
    over = threading.Event()

    def begin() -> subprocess.Popen[bytes]:
        return subprocess.Popen(command, stdin=subprocess.PIPE, env=os.environ | settings)

    children = [begin()]

    def keep() -> None:
        while not over.is_set():
            children[-1].wait()
            if not over.wait(PAUSE):
                logging.getLogger("evenrow").warning("What sends reminders had ended; it is begun anew.")
                children.append(begin())

    keeper = threading.Thread(target=keep, daemon=True)
    keeper.start()
    parent = os.getpid()
    try:
        yield
    finally:
        if os.getpid() == parent:  # a worker of the server comes by here too when it ends
            over.set()
            children[-1].terminate()
            keeper.join()
            children[-1].terminate()  # it may have begun one more meanwhile
            children[-1].wait()


def _round(app: Flask, config: Config) -> int:
    with app.app_context():
        try:
            return rounds.run(config)
        finally:
            db.session.remove()
