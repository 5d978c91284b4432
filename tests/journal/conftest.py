"""A project of Alice's to write of."""

import pytest


@pytest.fixture
def project(alice, new_project):
    return new_project(alice)
