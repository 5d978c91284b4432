"""Serve the house: migrate, then one production server (see DEVELOPERS.md for why this one)."""

from typing import Any

from flask import Flask
from gunicorn.app.base import BaseApplication

from webapp import create_app
from webapp.config import Config
from webapp.migrate import migrate
from webapp.reminders.child import reminding
from webapp.reminders.vapid import make_key

THREADS = 8
LONGEST_ADDRESS = (
    8190  # the most the server can be told: up to it our own pages answer, and say what is too long
)


class House(BaseApplication):  # type: ignore[misc]
    """One worker with threads: SQLite has one writer, and one process can queue for it fairly."""

    def __init__(self, app: Flask, options: dict[str, Any]) -> None:
        self.application = app
        self.options = options
        super().__init__()

    def load_config(self) -> None:
        """Hand our settings to the server."""
        for name, value in self.options.items():
            self.cfg.set(name, value)

    def load(self) -> Flask:
        """Hand over the application."""
        return self.application


def run(config: Config, cert: str | None = None, key: str | None = None) -> None:
    """Bring the database up to date and serve until told to stop."""
    config.data.mkdir(parents=True, exist_ok=True)
    app = create_app(config)
    migrate(app)
    make_key(config.data)
    with reminding(config):
        serve_app(app, config.host, config.port, cert, key)


def serve_app(app: Flask, host: str, port: int, cert: str | None = None, key: str | None = None) -> None:
    """Serve one application until told to stop."""
    options = {
        "bind": f"[{host}]:{port}" if ":" in host else f"{host}:{port}",
        "workers": 1,
        "threads": THREADS,
        "worker_class": "gthread",
        "keepalive": 30,
        "certfile": cert,
        "keyfile": key,
        "accesslog": None,
        "loglevel": "warning",
        "limit_request_line": LONGEST_ADDRESS,
        "when_ready": lambda server: print_address("https" if cert else "http", server),
    }
    House(app, options).run()


def print_address(scheme: str, server: Any) -> None:
    """Say where the house is open, once it is."""
    for listener in server.LISTENERS:
        host, port = listener.sock.getsockname()[:2]
        print(f"Evenrow is open at {scheme}://{host}:{port}", flush=True)  # noqa: T201
