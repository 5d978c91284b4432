"""What the tests of every feature share: a house of their own, and stitchers in it."""

import os
import shutil
import subprocess
import sys
from collections.abc import Callable, Iterator
from functools import cache, cached_property
from pathlib import Path
from uuid import UUID

import pytest
from argon2 import PasswordHasher
from flask import Flask
from flask.testing import FlaskClient
from jinja2 import FileSystemBytecodeCache
from playwright.sync_api import Browser

from webapp import create_app
from webapp.accounts.doors import claim
from webapp.accounts.guard import change_session
from webapp.config import Config
from webapp.db import db, writing
from webapp.migrate import migrate

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


@pytest.fixture(scope="session")
def empty_database(tmp_path_factory) -> Path:
    """Migrate one database, to be copied by each test."""
    folder = tmp_path_factory.mktemp("empty")
    app = create_app(Config.from_environment({"EVENROW_DATA": str(folder)}))
    migrate(app)
    with app.app_context():
        with db.engine.connect() as connection:
            connection.exec_driver_sql("PRAGMA wal_checkpoint(TRUNCATE)")
        db.engine.dispose()
    return folder / "evenrow.db"


@pytest.fixture
def config(tmp_path, empty_database) -> Config:
    shutil.copy(empty_database, tmp_path / "evenrow.db")
    return Config.from_environment({"EVENROW_DATA": str(tmp_path)})


@pytest.fixture(scope="session")
def compiled(tmp_path_factory) -> FileSystemBytecodeCache:
    """Keep compiled templates from test to test: they take longer to compile than to draw."""
    return FileSystemBytecodeCache(str(tmp_path_factory.mktemp("compiled")))


@pytest.fixture
def app(config, compiled) -> Iterator[Flask]:
    app = create_app(config)
    app.jinja_env.bytecode_cache = compiled
    yield app
    with app.app_context():
        db.engine.dispose()


@pytest.fixture
def client(app) -> FlaskClient:
    """A browser that is signed in nowhere, on a page of our own."""
    return browser_of(app)


def browser_of(app: Flask) -> FlaskClient:
    client = app.test_client()
    client.environ_base["HTTP_SEC_FETCH_SITE"] = "same-origin"
    return client


@pytest.fixture
def sign_up(app) -> Callable[..., FlaskClient]:
    """Claim an account by the sign-up form; gives its signed-in browser."""

    def up(
        name: str = "Alice", passphrase: str = "a long enough passphrase", zone: str = "Europe/London"
    ) -> FlaskClient:
        client = browser_of(app)
        answer = client.post("/accounts", data={"name": name, "passphrase": passphrase, "zone": zone})
        assert answer.status_code == 303, answer.text
        return client

    return up


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


@pytest.fixture
def stitcher_named(app) -> Callable[[str], FlaskClient]:
    """Let a stitcher in; gives her signed-in browser."""

    def enter(name: str) -> FlaskClient:
        client = browser_of(app)
        client.set_cookie("evenrow", let_in(app, name))
        return client

    return enter


@pytest.fixture
def alice(stitcher_named) -> FlaskClient:
    """Alice owns the house and the projects."""
    return stitcher_named("Alice")


@pytest.fixture
def charlie(alice, stitcher_named) -> FlaskClient:
    """Charlie stitches here too and must see nothing of Alice's."""
    return stitcher_named("Charlie")


@pytest.fixture
def new_project() -> Callable[..., UUID]:
    """Make a project by its form; gives its id."""

    def make(client: FlaskClient, **fields: object) -> UUID:
        data = {"title": "Harbour lanterns", "width": 140, "height": 98, "count": 14, "over": 1} | fields
        answer = client.post("/projects", data=data)
        assert answer.status_code == 303, answer.text
        return UUID(answer.location.rsplit("/", 1)[1])

    return make


# The real server and the real browser


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


@pytest.fixture
def own_server(tmp_path) -> Iterator[Server]:
    """A server for one test alone, which may be killed and started again."""
    server = Server(tmp_path / "house")
    yield server
    if server.process.poll() is None:
        server.stop()


@pytest.fixture(scope="session")
def server(tmp_path_factory) -> Iterator[Server]:
    """One server for all journeys; each signs up a stitcher of its own."""
    server = Server(tmp_path_factory.mktemp("house"))
    yield server
    said = server.audit()
    server.stop()
    assert said == "No difference.", said


def find_chromium(*first: str) -> str | None:
    """Find the machine's own browser, if it can be one of ``first``; none: Playwright's."""
    names = (*first, "chromium", "chromium-browser", "google-chrome", WINDOWLESS)
    return next((found for name in names if (found := shutil.which(name))), None)


@pytest.fixture(scope="session")
def chromium_path() -> str | None:
    return find_chromium(WINDOWLESS)


@pytest.fixture
def whole_browser(browser_type) -> Iterator[Browser]:
    """The browser that has windows, for what the other lacks: it installs, and keeps the screen lit."""
    browser = browser_type.launch(executable_path=find_chromium(), args=FLAGS)
    yield browser
    browser.close()


@pytest.fixture(scope="session")
def browser_type_launch_args(browser_type_launch_args, chromium_path):
    return {**browser_type_launch_args, "executable_path": chromium_path, "args": FLAGS}


@pytest.fixture(scope="session")
def browser_context_args(browser_context_args):
    """A phone held upright, in the evening; without a worker, which would fetch everything each time."""
    return {
        **browser_context_args,
        "viewport": {"width": 390, "height": 844},
        "device_scale_factor": 1,
        "is_mobile": True,
        "has_touch": True,
        "color_scheme": "dark",
        "locale": "en-GB",
        "timezone_id": "Europe/London",
        "service_workers": "block",
    }
