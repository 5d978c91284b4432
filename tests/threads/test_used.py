"""How much thread went into a project so far: out of its legend and the journal."""

import pytest

from tests.threads.lines import COTTON, ON_14, TWO
from tests.threads.stashed import asked, legend, line, part, plain, stitched
from webapp.threads.estimate import Counts, estimate
from webapp.threads.used import length, used, whole

TAKES = estimate(ON_14, Counts(full=2000), TWO._replace(loop=True), COTTON).sold  # of 2,000 crosses


@pytest.fixture
def project(alice, new_project):
    return new_project(alice)


def told(app, project, unit="cm"):
    return [(one.name, plain(one.told(unit))) for one in asked(app, project, used)]


def test_nothing_is_used_before_the_first_stitch(app, project):
    legend(app, project, line("Moss 12", 2000))
    assert asked(app, project, used) == []


def test_all_of_a_line_laid_takes_what_the_line_was_estimated_to(app, project):
    legend(app, project, line("Moss 12", 2000))
    stitched(app, project, "Moss 12", 2000)
    (moss,) = asked(app, project, used)
    assert moss.much == pytest.approx(TAKES)


def test_what_was_unpicked_is_used_all_the_same_and_what_was_there_before_is_not(app, project):
    legend(app, project, line("Moss 12", 2000))
    stitched(app, project, "Moss 12", 600)
    stitched(app, project, "Moss 12", -100, why="unpicked")
    stitched(app, project, "Moss 12", 900, why="before")
    (moss,) = asked(app, project, used)
    assert moss.much.usual == pytest.approx(TAKES.usual * 600 / 2000)


def test_the_most_used_comes_first_and_one_thread_of_two_lines_is_one(app, project):
    rows = [line("Moss 12", 2000), line("Ash", 2000), line("Fern", 2000, instead="MOSS  12")]
    legend(app, project, *rows)
    stitched(app, project, "Ash", 500)
    stitched(app, project, "Moss 12", 300)
    stitched(app, project, "Fern", 300)
    moss, ash = asked(app, project, used)
    assert (moss.name, ash.name) == ("Moss 12", "Ash")
    assert moss.much.usual == pytest.approx(TAKES.usual * 600 / 2000)
    in_all = whole([moss, ash])
    assert in_all.usual == pytest.approx(TAKES.usual * 1100 / 2000)
    assert (in_all.low, in_all.high) == pytest.approx((TAKES.low * 0.55, TAKES.high * 0.55))


def test_each_thread_of_a_blend_is_told_by_itself(app, project):
    blend = {"parts": [part("Moss 12", strands=1), part("Ash", strands=1)], "full": 2000}
    legend(app, project, blend)
    stitched(app, project, "Moss 12", 400)
    assert sorted(one.name for one in asked(app, project, used)) == ["Ash", "Moss 12"]


def test_other_passes_count_by_the_crosses_they_come_to(app, project):
    legend(app, project, line("Moss 12", 1000, half=400, quarter=0))
    stitched(app, project, "Moss 12", 100)
    (before,) = asked(app, project, used)
    stitched(app, project, "Moss 12", 40, **{"pass": "part"})
    (after,) = asked(app, project, used)
    assert 10 < 100 * (after.much.usual / before.much.usual - 1) < 40  # a half stitch takes less than a cross


def test_beads_are_counted_and_have_no_length(app, project):
    legend(app, project, line("Dew", 0, beads=300, kind="beads", strands=1))
    stitched(app, project, "Dew", 120, **{"pass": "knot"})
    assert told(app, project) == [("Dew", "120 beads")]
    assert whole(asked(app, project, used)) is None


def test_it_is_told_in_metres_or_yards_and_rounded_outwards(app, project):
    legend(app, project, line("Moss 12", 2000))
    stitched(app, project, "Moss 12", 2000)
    (moss,) = asked(app, project, used)
    for unit, mm in (("cm", 1000), ("in", 914.4)):
        low, high = plain(length(moss.much, unit)).split(" ")[0:3:2]
        assert float(low) <= moss.much.low / mm < float(low) + 0.1
        assert float(high) - 0.1 < moss.much.high / mm <= float(high)
        assert plain(moss.told(unit)).endswith({"cm": " m", "in": " yd"}[unit])
