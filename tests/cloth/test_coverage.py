"""What the gauge states about itself, against a simulated stitcher whose cloth is known."""

from random import Random

import pytest

from tests.bench.gauge import BANDS, coverage, sureness, ways, whole_ways
from tests.cloth.simulate import to_a_mark, whole_only
from webapp.cloth.gauge import INCH, measure

CASES = [(way, take, band) for way, take in ways() for band in BANDS[::3]]


@pytest.mark.parametrize(("way", "take", "band"), CASES)
def test_the_interval_holds_the_truth_19_times_in_20(way, take, band):
    assert (
        0.93 <= coverage(take, band, counts=4000, seed=3) <= 0.985
    )  # 94 to 98 %, and 3 deviations of 4,000 tries


@pytest.mark.parametrize(("way", "take"), list(whole_ways()))
@pytest.mark.parametrize("band", BANDS[::3])
def test_it_holds_it_too_for_who_counts_only_whole_squares_from_a_line(way, take, band):
    assert 0.92 <= coverage(take, band, counts=4000, seed=3) <= 0.985  # 93 to 98 %, and 3 deviations


@pytest.mark.parametrize("kind", ["squares", "threads"])
@pytest.mark.parametrize("by_name", [True, False])
@pytest.mark.parametrize("take", [to_a_mark, whole_only])
def test_a_count_called_sure_is_hardly_ever_wrong(kind, by_name, take):
    sure, wrong = sureness(4 * INCH, INCH / 16, kind, counts=30_000, seed=3, by_name=by_name, take=take)
    assert sure > 1000
    assert wrong <= sure / 1000


@pytest.mark.parametrize("at_a_line", [True, False])
@pytest.mark.parametrize("places", [3, 5])
def test_several_places_of_uneven_cloth_are_not_stated_too_surely(places, at_a_line):
    rng = Random(11)
    held = 0
    for _ in range(2000):
        truth = rng.uniform(11, 32)
        counts = [truth * (1 + rng.gauss(0, 0.01)) for _ in range(places)]
        measured = measure([to_a_mark(rng, count, 2 * INCH, INCH / 16, at_a_line) for count in counts])
        held += measured.low <= truth <= measured.high
    assert held / 2000 >= 0.94
