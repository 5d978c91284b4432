"""Houses that take in new stitchers in other ways, and looks into their books."""

from dataclasses import replace

import pytest

from webapp import create_app
from webapp.config import SignUp
from webapp.db import db

PASSPHRASE = "a long enough passphrase"


@pytest.fixture
def house_that_is(config):
    """The same house with another way of taking in new stitchers; its books stay."""
    made = []

    def make(sign_up: SignUp):
        made.append(create_app(replace(config, sign_up=sign_up)))
        return made[-1]

    yield make
    for app in made:
        with app.app_context():
            db.engine.dispose()


@pytest.fixture
def books(app):
    """Read the database, as the house has it now."""

    def read(statement):
        with app.app_context():
            return db.session.execute(statement).all()

    return read
