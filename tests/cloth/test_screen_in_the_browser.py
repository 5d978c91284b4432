"""The arithmetic of the screen as an instrument, run in a real browser."""

from fractions import Fraction
from math import floor, hypot, sqrt
from random import Random

import pytest

from tests.cloth.glass import CARD, ask

INCH = Fraction("25.4")
MEASURED = """return given.map((axis) => {
  try { return m.measured(axis); } catch (error) { return `${error.name}: ${error.message}`; }
});"""


@pytest.fixture
def run(page, server):
    page.goto(f"{server.url}/health")
    return lambda *asked: ask(page, server.url, *asked)


def half_up(value: Fraction) -> int:
    return floor(value + Fraction(1, 2))


def test_a_card_of_a_thousand_and_eleven_pixels_is_three_hundred_an_inch(run):
    """By hand: 1011 / 85.60 × 25.4 = 299.993; edges 0.1 mm each, card 0.125 mm (from memory); JCGM 100."""
    [found] = run("screen", MEASURED, [{"side": "long", "pixels": 1011}])
    assert found["density"] == pytest.approx(299.993, abs=5e-4)
    u = sqrt((0.1**2 + 0.1**2 + 0.125**2) / 3)
    assert found["error"] == pytest.approx(1.96 * u / 85.6, rel=1e-12)
    assert found["error"] == pytest.approx(0.0025, abs=5e-5)


def test_on_a_coarse_screen_an_edge_is_known_to_a_pixel(run):
    [found] = run("screen", MEASURED, [{"side": "short", "pixels": 204}])  # 96 an inch: a pixel is 0.265 mm
    pixel = 53.98 / 204
    assert found["error"] == pytest.approx(1.96 * sqrt((2 * pixel**2 + 0.055**2) / 3) / 53.98, rel=1e-12)


@pytest.mark.parametrize(
    ("pixels", "sentence"),
    [
        (0, "no pixels an inch"),
        (100, "47 pixels an inch: no screen is so coarse"),
        (3000, "so fine"),
        (None, "so coarse"),
    ],
)
def test_what_no_screen_is_like_is_refused_in_a_sentence(run, pixels, sentence):
    [said] = run("screen", MEASURED, [{"side": "short", "pixels": pixels}])
    assert said.startswith("RangeError: ")
    assert sentence in said
    assert said.endswith("Lay a bank card on the glass.")


def test_axes_within_their_errors_agree_and_others_do_not(run):
    axes = [
        [{"perMm": 10, "error": 0.003}, {"perMm": 10 * ratio, "error": 0.004}] for ratio in (1.0049, 1.0052)
    ]
    body = "return given.map((two) => [m.compared(...two), m.quarrel(...two)]);"
    (near, nothing), (far, said) = run("screen", body, axes)
    assert near["agree"] is True
    assert near["allowed"] == pytest.approx(hypot(0.003, 0.004))
    assert nothing is None
    assert far["agree"] is False
    assert said.startswith("Across and down differ by 0.6\u00a0%; setting allows 0.5\u00a0%.")


KEPT = {
    "axes": {"narrow": {"side": "short", "pixels": 977}, "tall": {"side": "short", "pixels": 978}},
    "ratio": 3,
    "screen": [390, 844],
    "zoom": 1,
    "scale": 1,
}


@pytest.mark.parametrize(
    ("change", "sentence"),
    [
        ({}, None),
        ({"turned": True}, None),
        ({"ratio": 3.3}, "The zoom has changed"),
        ({"zoom": 1.25}, "The zoom has changed"),
        ({"screen": [412, 915]}, "This is another screen"),
    ],
)
def test_a_setting_holds_only_on_the_screen_as_it_was(run, change, sentence):
    now = {"ratio": 3, "screen": [390, 844], "zoom": 1, "scale": 1, "turned": False} | change
    said = run("screen", "return m.outdated(...given);", [KEPT, now])
    assert said == sentence if sentence is None else said.startswith(sentence)


@pytest.mark.parametrize(
    "broken",
    [None, 7, {}, {"axes": {}}, KEPT | {"ratio": "x"}, KEPT | {"screen": None}]
    + [
        KEPT | {"axes": KEPT["axes"] | {"tall": {"side": side, "pixels": n}}}
        for side, n in (("short", 9), ("long", 978), ("x", 9))
    ],
)
def test_what_is_kept_and_makes_no_sense_is_not_trusted(run, broken):
    assert run("screen", "return m.trusted(given);", broken) is None
    assert run("screen", "return m.trusted(given);", KEPT)["narrow"]["density"] == pytest.approx(
        459.7, abs=0.1
    )


@pytest.mark.parametrize(
    ("way", "turned", "axis"), [("across", 0, "narrow"), ("down", 0, "tall"), ("across", 1, "tall")]
)
def test_the_axes_are_the_screens_own_however_it_is_held(run, way, turned, axis):
    assert run("screen", "return m.axisOf(given[0], !!given[1]);", [way, turned]) == axis


@pytest.mark.parametrize(("unit", "step", "whole"), [("in", INCH / 16, 16), ("cm", Fraction(1), 10)])
def test_every_mark_is_the_pixel_nearest_to_its_place(run, unit, step, whole):
    rng = Random(11)
    cases = [[unit, rng.uniform(2.5, 32), rng.randint(200, 4000)] for _ in range(60)]
    for (_, per_mm, length), marks in zip(
        cases, run("ticks", "return given.map((c) => m.ticks(...c));", cases), strict=True
    ):
        exact = [n * step * Fraction(per_mm) for n in range(len(marks) + 1)]
        assert all(
            abs(mark["at"] - at) <= Fraction(1, 2) + Fraction(1, 10**6)
            for mark, at in zip(marks, exact, strict=False)
        )
        assert marks[-1]["at"] <= length < exact[-1] + Fraction(1, 2) + Fraction(1, 10**6)
        assert [mark["label"] for mark in marks[::whole]] == [str(n) for n in range(len(marks[::whole]))]


def test_marks_are_longest_at_inches_then_halves_quarters_and_eighths(run):
    marks = run("ticks", "return m.ticks('in', 10, 254);")
    assert [mark["size"] for mark in marks] == [4, 0, 1, 0, 2, 0, 1, 0, 3, 0, 1, 0, 2, 0, 1, 0, 4]
    assert [mark["at"] for mark in marks][:3] == [0, 16, 32]  # 15.875, 31.75


def test_a_ruler_says_what_it_is_worth(run):
    """0.3 % of 4 in is 0.012 in; half a pixel of 0.1 mm at either end is 0.004 in: 0.016, upward 0.02."""
    said = run("ticks", "return m.worth('in', { perMm: 10, error: 0.003 }, 1100);")
    assert said == {"share": "± 0.3\u00a0%", "over": "Over 4 in it may be 0.02 in off, and seldom more."}
    said = run("ticks", "return m.worth('cm', { perMm: 10, error: 0.003 }, 1100);")
    assert said["over"] == "Over 11 cm it may be 0.5 mm off, and seldom more."  # 0.33 + 0.1, upward


def test_lines_are_laid_one_by_one_and_keep_their_count(run):
    rng = Random(12)
    cases = [[rng.randint(60, 600) / 10, rng.uniform(10, 32), rng.randint(300, 3000)] for _ in range(60)]
    laid = run(
        "ladder", "return given.map(([count, perMm, length]) => m.lines(count, { perMm }, length));", cases
    )
    for (count, per_mm, length), found in zip(cases, laid, strict=True):
        pitch = Fraction(per_mm) * INCH / Fraction(count)
        assert all(
            abs(at - n * pitch) <= Fraction(1, 2) + Fraction(1, 10**6) for n, (at, _) in enumerate(found)
        )
        assert found[-1][0] + found[-1][1] <= length
        assert len(found) in (half_up(length / pitch), floor(length / pitch) + 1)


def test_bands_an_inch_wide_leave_the_count_open_by_one(run):
    """25.4 / 25.4 = 1 an inch; a pitch of 254 / 14 pixels blurs it by 14 / 254; 0.3 % of 14 is 0.042."""
    found = run("ladder", "return m.reading(14, { perMm: 10, error: 0.003 }, 25.4);")
    assert found["bands"] == pytest.approx(1 + 14 / 254)
    assert found["screen"] == pytest.approx(0.042)
    assert found["high"] - 14 == pytest.approx(14 - found["low"]) == pytest.approx(1 + 14 / 254 + 0.042)
    said = run("ladder", "return m.inWords(given);", found)
    assert said["interval"] == "12.9 to 15.1"
    assert said["metric"] == "50 to 60"
    assert said["made"] == "± 1.1 from the bands, ± 0.05 from this screen."


BANDS = """return given.map(([count, cloth, perMm, length]) => {
  const axis = { perMm, error: 0 };
  let [re, im] = [0, 0];
  for (const [from, wide] of m.lines(count, axis, length)) {
    for (let x = from; x < from + wide; x += 1) {
      const turn = 2 * Math.PI * cloth * (x + 0.5) / (perMm * 25.4);
      [re, im] = [re + Math.cos(turn), im + Math.sin(turn)];
    }
  }
  return Math.hypot(re, im) / length;
});"""


def test_the_lines_are_brightest_under_cloth_of_their_own_count(run):
    """Laid over each other, most light comes through where the counts are the same (1/π)."""
    rng = Random(13)
    sure = [(count := rng.randint(60, 360) / 10, count, rng.uniform(12, 20), 1200) for _ in range(20)]
    off = [
        (count, cloth * (1 + 25.4 * per_mm / length / count), per_mm, length)
        for count, cloth, per_mm, length in sure
    ]
    for own, other in zip(run("ladder", BANDS, sure), run("ladder", BANDS, off), strict=True):
        assert own == pytest.approx(0.318, abs=0.05)
        assert other < own / 3  # one band more over all the lines: light and dark even out


def test_a_count_stays_within_what_the_screen_can_draw(run):
    body = "return given.map(([count, perMm]) => [m.within(count, { perMm }), m.reach({ perMm })]);"
    coarse, fine, low = run("ladder", body, [[99, 160 / 25.4], [99, 20], [1, 20]])
    assert coarse == [40, [6, 40]]  # 160 an inch: four pixels a line and its gap
    assert fine == [60, [6, 60]]
    assert low[0] == 6


@pytest.mark.parametrize(
    ("unit", "first", "last"), [("in", [12.7, "1/2 in"], "all 2.7 in"), ("cm", [10, "1 cm"], "all 7 cm")]
)
def test_the_widths_to_choose_from_end_with_all_of_it(run, unit, first, last):
    offered = run("ladder", "return m.widths(...given);", [unit, 70])
    assert [offered[0], offered[-1]] == [first, [70, last]]
    assert [mm for mm, _ in offered] == sorted(mm for mm, _ in offered)


def test_the_card_is_the_standards(run):
    assert run("screen", "return m.CARD;") == CARD
