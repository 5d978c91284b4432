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
from collections.abc import Iterator
from contextlib import contextmanager

from flask import Flask

from webapp import clock, create_app
from webapp.config import Config
from webapp.db import db
from webapp.reminders import rounds
from webapp.reminders.vapid import make_key

BETWEEN = 20.0  # seconds


def one_round(config: Config) -> int:
    """Do one round; tells how many reminders got through."""
    app = create_app(config)
    make_key(config.data)
    return _round(app, config)


def stay_and_remind(config: Config) -> None:
    """Do a round every little while until what comes in ends; where one fails, the next is tried."""
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
    """Have a child remind as long as this lasts."""
    settings = {
        "EVENROW_DATA": str(config.data),
        "EVENROW_DATABASE_URL": config.database_url,
        "EVENROW_PUSH_SERVICES": " ".join(config.push_services),
        "EVENROW_SMTP": config.smtp,
        "EVENROW_MAIL_FROM": config.mail_from,
        "EVENROW_ADDRESS": config.address,
    }
    command = [sys.executable, "-m", "webapp.cli", "remind", "--stay"]
    child = subprocess.Popen(
        command, stdin=subprocess.PIPE, env=os.environ | settings, preexec_fn=_leave_it_to_the_parent
    )
    parent = os.getpid()
    try:
        yield
    finally:
        if os.getpid() == parent:  # a worker of the server comes by here too when it ends
            child.terminate()
            child.wait()


def _leave_it_to_the_parent() -> None:
    """Take no notice of Ctrl-C on the terminal: whoever started us ends us."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)


def _round(app: Flask, config: Config) -> int:
    with app.app_context():
        try:
            return rounds.run(config, clock.now())
        finally:
            db.session.remove()
