"""10,000 simulated nights: is she told each night there is work on a frame, and once?"""

import tempfile
from collections.abc import Iterator
from pathlib import Path

from tests.reminders.nights import Size, simulate
from tests.reminders.service import push_service
from tests.reminders.stitchers import ZONES

SIZE = Size(zones=len(ZONES), in_each=10, around=12)


def figures() -> Iterator[str]:
    with tempfile.TemporaryDirectory() as folder, push_service() as service:
        outcome = simulate(Path(folder), service, SIZE, seed=1851)
    n = outcome.counts
    yield f"nights: {n['nights']:,} in {len(ZONES)} zones, around both changes of their clocks"
    yield f"nights:   work on a frame in {n['nights with work on a frame']:,}: {n['told']:,} told"
    yield f"nights:   the house down at bedtime: {n['late']:,} told late, {n['too late to tell']:,} too late"
    yield f"nights:   {n['rounds']:,} rounds, two processes at once, {n['killed in a round']:,} killed in one"
    yield f"nights:   {n['sent'] - n['told']:,} sent again: the service failed, or killed before it was noted"
    yield f"nights:   missed, or told for nothing: {len(outcome.wrong)}"
    yield f"nights:   more than one notification standing: {n['more than one standing']}"
    yield from (f"nights:     {said}" for said in outcome.wrong[:10])
