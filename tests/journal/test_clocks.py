"""A phone's clock may be wrong by years: it is corrected, and nothing is refused for its time."""

from datetime import timedelta

import pytest

from tests.journal.posted import AT, stitches
from tests.journal.worlds import uuid
from webapp import clock
from webapp.journal import moments


def test_a_clock_that_is_years_off_is_corrected_and_its_own_time_kept_to(alice, project):
    wrong = clock.now() - timedelta(days=3000)
    batch = {"sent_at": moments.write(wrong), "entries": [stitches(project, at=moments.write(wrong))]}
    answer = alice.post("/journal", json=batch).json
    assert abs(answer["offset"] - 3000 * 86_400_000) < 60_000
    at = moments.read(answer["projects"][str(project)]["tail"][0]["at"])
    assert abs(at - clock.now()) < timedelta(minutes=1)


def test_a_delay_of_a_minute_moves_nothing(alice, project):
    late = moments.write(clock.now() - timedelta(seconds=60))
    answer = alice.post("/journal", json={"sent_at": late, "entries": [stitches(project, at=late)]}).json
    assert answer["offset"] == 0
    assert answer["projects"][str(project)]["tail"][0]["at"] == late


def test_an_amends_times_are_never_corrected(alice, project):
    wrong = moments.write(clock.now() - timedelta(days=3000))
    amend = {"kind": "amend", "sitting": uuid(9), "begin": AT, "end": AT, "row": None, "by": None}
    batch = {"sent_at": wrong, "entries": [stitches(project, **amend)]}
    tail = alice.post("/journal", json=batch).json["projects"][str(project)]["tail"]
    assert (tail[0]["begin"], tail[0]["end"]) == (AT, AT)


@pytest.mark.parametrize("sent_at", [None, 5, "soon", "9999-12-31T23:59:59.999Z", "0001-01-01T00:00:00.000Z"])
def test_nothing_is_refused_for_its_time(alice, project, sent_at):
    batch = {"sent_at": sent_at, "entries": [stitches(project, at="0001-01-01T00:00:00.000Z")]}
    assert alice.post("/journal", json=batch).json["accepted"] == [uuid(1)]
