"""What the installation is: its id, which a restore renews so that phones notice."""

from typing import cast
from uuid import UUID

from flask import Flask, g

from webapp.accounts.models import House
from webapp.db import db


def house() -> House:
    """Load the one house; migration made it."""
    found = db.session.get(House, 1)
    if found is None:
        raise LookupError("This database has no house yet: start it once with `evenrow serve`.")
    return found


def house_id() -> UUID:
    """Tell the house's id, read once a request."""
    if "house_id" not in g:
        g.house_id = house().id
    return cast(UUID, g.house_id)


def init_app(app: Flask) -> None:
    """Let pages name the house, and answer whether it stands."""
    app.jinja_env.globals["house_id"] = house_id

    @app.get("/health")
    def health() -> tuple[dict[str, str], int]:
        try:
            house()
        except Exception:
            app.logger.exception("the database does not answer")
            return {"status": "no database"}, 503
        return {"status": "ok"}, 200
