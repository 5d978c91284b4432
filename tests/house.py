"""The real server and the real browser, as the tests start them; and the door past the hashing."""

import os
import shutil
import subprocess
import sys
from functools import cache, cached_property
from pathlib import Path

from argon2 import PasswordHasher
from flask import Flask

from webapp import create_app
from webapp.accounts.doors import claim
from webapp.accounts.guard import change_session
from webapp.config import Config
from webapp.db import db, writing

WINDOWLESS = "chromium-headless-shell"  # the same engine, that never draws a window: a third of the wait
FLAGS = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
]


@cache
def hashed() -> str:
    """Hash the passphrase that all share once, and so that it is soon checked."""
    return PasswordHasher(time_cost=1, memory_cost=8, parallelism=1).hash("a long enough passphrase")


def let_in(app: Flask, name: str) -> str:
    """Let a stitcher in as the sign-up form does, but for the hashing; gives her cookie."""
    with app.test_request_context(), writing():
        about = {"passphrase_hash": hashed(), "zone": "Europe/London", "invitation": ""}
        account = claim("open", None, name=name, **about)
        token = change_session(account.id)
        db.session.commit()
    return token


class Server:
    """`evenrow serve`, or `demo`, as a process of its own, with its own data."""

    def __init__(self, data: Path, command: str = "serve", **settings: str) -> None:
        self.data, self.command = data, command
        self.settings = {
            "EVENROW_DATA": str(data),
            "EVENROW_PORT": "0",
            "EVENROW_HOST": "127.0.0.1",
        } | settings
        self.start()

    def start(self) -> None:
        env = os.environ | self.settings
        self.process = subprocess.Popen(
            [sys.executable, "-m", "webapp.cli", self.command],
            env=env,
            text=True,
            stdout=subprocess.PIPE,
            start_new_session=True,
        )
        lines = iter(self.process.stdout.readline, "")  # "Evenrow is open at http://127.0.0.1:41234"
        line = next((said for said in lines if " at http" in said), "")
        assert line, "the server said nothing of where it is open"
        self.url = line.strip().rsplit(" at ", 1)[1]
        self.settings["EVENROW_PORT"] = self.url.rsplit(":", 1)[1]  # the same door after a restart

    @cached_property
    def books(self) -> Flask:
        """The same house as seen from here: another process beside its own."""
        return create_app(Config.from_environment(self.settings))

    def let_in(self, name: str) -> str:
        """Let a stitcher in without the time that hashing takes; gives her cookie."""
        return let_in(self.books, name)

    def kill(self) -> None:
        """End it as a power cut would: every process of it, at once."""
        os.killpg(self.process.pid, 9)
        self.process.wait()
        self.process.stdout.close()

    def stop(self) -> None:
        self.process.terminate()
        try:
            self.process.wait(10)
        except subprocess.TimeoutExpired:
            self.kill()
        self.process.stdout.close()

    def audit(self) -> str:
        """Run `evenrow audit` on its data."""
        ran = subprocess.run(
            [sys.executable, "-m", "webapp.cli", "audit"],
            env=os.environ | self.settings,
            capture_output=True,
            text=True,
        )
        return ran.stdout.strip() + ran.stderr.strip()


def find_chromium(*first: str) -> str | None:
    """Find the machine's own browser, if it can be one of ``first``; none: Playwright's."""
    names = (*first, "chromium", "chromium-browser", "google-chrome", WINDOWLESS)
    return next((found for name in names if (found := shutil.which(name))), None)
