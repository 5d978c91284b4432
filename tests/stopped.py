"""The clock stopped for a test."""

from collections.abc import Iterator

import pytest
import time_machine


def stopped(request: pytest.FixtureRequest, moment: str) -> Iterator[time_machine.Traveller | None]:
    """Stop the clock at a moment while a test runs; a real server has its own, which goes on."""
    if "server" in request.fixturenames:
        yield None
        return
    with time_machine.travel(moment, tick=False) as traveller:
        yield traveller
