"""The drawing of a cut, measured from its SVG, and the hoop that goes round."""

import re
from fractions import Fraction
from xml.etree import ElementTree

import pytest

from tests.cloth.test_size_pages import FILLED, IN, asked, figures, slots_of

# To scale


def drawing_of(text):
    svg = re.search(r'<svg class="scale".*?</svg>', text, re.DOTALL).group()
    tree = ElementTree.fromstring(svg)
    return tree, {shape.get("data-shape"): shape for shape in tree.iter() if shape.get("data-shape")}


def side(shape, name):
    return float(shape.get(name))


@pytest.mark.parametrize(
    ("design", "count", "over", "margin"),
    [((140, 168), 28, 2, 3), ((42, 42), 14, 1, 2), ((401, 99), 16, 1, 3), ((30, 700), 18, 1, 3)],
)
def test_the_drawing_is_to_scale(client, design, count, over, margin):
    """Against a bank card (ISO/IEC 7810 ID-1: 85.60 × 53.98 mm) and exact fractions, to 0.5 %."""
    fields = {"width": design[0], "height": design[1], "count": count, "over": over, "own": margin}
    fields |= {"held": "hand"}
    _tree, shapes = drawing_of(asked(client, **(FILLED | fields)).text)
    mm = Fraction(8560, 100) / Fraction(shapes["card"].get("width"))  # of cloth, a unit of the drawing
    assert side(shapes["card"], "height") * mm == pytest.approx(53.98, rel=0.005)
    for name, stitches, at in (("width", design[0], "x"), ("height", design[1], "y")):
        length = Fraction(stitches * over, count) * Fraction(254, 10)
        cut = -(-(length + 2 * margin * Fraction(254, 10)) // Fraction(635, 100)) * Fraction(635, 100)
        assert side(shapes["design"], name) * mm == pytest.approx(float(length), rel=0.005)
        assert side(shapes["cut"], name) * mm == pytest.approx(float(cut), rel=0.005)
        assert side(shapes["first"], at) * mm == pytest.approx(float(cut - length) / 2, rel=0.005)


def test_the_hoop_is_drawn_to_scale_round_the_middle(client):
    text = asked(client, **(FILLED | {"width": 42, "height": 42, "count": 14, "over": 1})).text
    _tree, shapes = drawing_of(text)
    hoop, cut = shapes["hoop"], shapes["cut"]
    assert slots_of(text)["hoop"] == "Hoop of 5 in"
    assert 2 * side(hoop, "r") == pytest.approx(5 * 25.4, rel=0.005)
    assert [side(hoop, "cx") * 2, side(hoop, "cy") * 2] == [side(cut, "width"), side(cut, "height")]


@pytest.mark.parametrize("held", ["hoop", "scroll", "hand"])
@pytest.mark.parametrize("design", [(1, 1), (900, 20), (20, 900), (140, 168)])
def test_all_that_is_drawn_lies_within_the_drawing(client, held, design):
    fields = {"width": design[0], "height": design[1], "held": held}
    tree, shapes = drawing_of(asked(client, **(FILLED | fields)).text)
    left, top, wide, high = map(float, tree.get("viewBox").split())
    boxes = [
        [side(shapes[name], at) for at in ("x", "y", "width", "height")] for name in ("cut", "card", "frame")
    ]
    hoop = shapes["hoop"]
    x, y, r = (side(hoop, name) for name in ("cx", "cy", "r"))
    for bx, by, bw, bh in (*boxes, [x - r, y - r, 2 * r, 2 * r]):
        assert left <= bx
        assert top <= by
        assert bx + bw <= left + wide
        assert by + bh <= top + high


# The hoop and its cut: the ring and an inch to pull outside it, 1 1/2 in (common practice, no source).


@pytest.mark.parametrize("design", [(118, 118), (100, 30), (42, 42), (70, 70), (20, 100)])
@pytest.mark.parametrize("finish", ["framed", "usual", "small", "ornament"])
def test_a_hoop_that_goes_round_the_design_has_cloth_all_round_it(client, design, finish):
    asked_for = {"width": design[0], "height": design[1], "count": 14, "finish": finish, "held": "hoop"}
    found = figures(client, **asked_for)
    least = found["hoop"]["diameter_in"] + 2 * 1.5
    assert min(found["cut_width_in"], found["cut_height_in"]) >= least - 1e-6
    said = slots_of(asked(client, **(asked_for | IN)).text)
    bare = figures(client, **(asked_for | {"held": "hand"}))
    if found["hoop"]["cut_at_least_mm"]:
        assert f"asks for {least:g} in each way" in said["why"]
        assert "in the hand" in said["care"]
    else:
        assert min(bare["cut_width_in"], bare["cut_height_in"]) >= least - 1e-6
    assert "cut more" not in said["care"]


def test_what_frays_is_left_outside_the_ring_as_well(client):
    held = {"width": 42, "height": 42, "count": 14, "finish": "small", "held": "hoop"}
    assert figures(client, **held, frays="yes")["cut_width_in"] == pytest.approx(5 + 2 * (1.5 + 0.5))


def test_a_design_that_no_hoop_goes_round_has_its_margin_and_a_word_about_hoops(client):
    said = slots_of(asked(client, **(FILLED | IN)).text)
    assert said["cut"] == "16 × 18 in"
    assert said["care"] == "A hoop moved from place to place would close on stitches."
