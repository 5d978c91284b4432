"""What the tests of every feature share: a house of their own, and stitchers in it."""

import shutil
from collections.abc import Callable, Iterator
from pathlib import Path
from uuid import UUID

import pytest
from flask import Flask
from flask.testing import FlaskClient
from hypothesis import HealthCheck, settings
from jinja2 import FileSystemBytecodeCache
from playwright.sync_api import Browser

from tests.house import FLAGS, WINDOWLESS, Server, find_chromium, let_in
from webapp import create_app
from webapp.config import Config
from webapp.db import db
from webapp.migrate import migrate

# How long an example takes says something of the machine alone.
settings.register_profile("ours", deadline=None, suppress_health_check=[HealthCheck.too_slow])
settings.load_profile("ours")


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
