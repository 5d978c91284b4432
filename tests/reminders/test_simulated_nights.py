"""A few of the nights that `python -m tests.bench nights` simulates by the thousand."""

import pytest

from tests import test_postgres
from tests.reminders.nights import Size, simulate
from tests.reminders.service import push_service
from tests.reminders.stitchers import ZONES, changes

database = test_postgres.database


@pytest.fixture(autouse=True)
def at_night():
    """Time is what each round is told."""


def test_of_simulated_nights_none_is_missed_and_one_notification_stands(tmp_path):
    with push_service() as service:
        outcome = simulate(tmp_path, service, Size(zones=5, in_each=4, around=1), seed=7)
    counts = outcome.counts
    assert outcome.wrong == []
    assert counts["nights"] == 5 * 4 * 2 * 3
    assert counts["told"] > 80
    assert counts["more than one standing"] == 0
    assert counts["killed in a round"] > 0


@pytest.mark.skipif(not test_postgres.URL, reason="EVENROW_TEST_POSTGRES names no PostgreSQL database")
def test_nor_on_postgresql(tmp_path, database):
    with push_service() as service:
        size = Size(zones=5, in_each=4, around=1)
        outcome = simulate(tmp_path, service, size, seed=8, EVENROW_DATABASE_URL=database)
    assert outcome.wrong == []
    assert outcome.counts["told"] > 80
    assert outcome.counts["more than one standing"] == 0


@pytest.mark.parametrize("zone", ZONES)
def test_each_zone_of_the_simulation_puts_its_clocks_forward_and_back(zone):
    assert len(changes(zone)) == 2
