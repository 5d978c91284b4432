"""Houses that take in new stitchers in other ways, and looks into their books."""

from dataclasses import replace

import pytest
from argon2 import PasswordHasher
from sqlalchemy import select

from webapp import create_app
from webapp.accounts import passphrases
from webapp.accounts.models import Account
from webapp.config import SignUp
from webapp.db import db

PASSPHRASE = "a long enough passphrase"
SLOW = passphrases._hasher  # what the house hashes with
ACCOUNTS = select(Account.id, Account.name, Account.zone, Account.passphrase_hash)


def sign_up(client, name="Alice", passphrase=PASSPHRASE, **more):
    return client.post("/accounts", data={"name": name, "passphrase": passphrase, **more})


def begin(client, zone="Europe/Lisbon"):
    return client.post("/accounts/unclaimed", data={"zone": zone})


@pytest.fixture(autouse=True)
def quick_hashes(monkeypatch):
    """Hash quickly: a hundred tries in a test need not take as long as they should."""
    monkeypatch.setattr(passphrases, "_hasher", PasswordHasher(time_cost=1, memory_cost=8, parallelism=1))
    passphrases._decoy.cache_clear()
    yield
    passphrases._decoy.cache_clear()


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
