"""Threads and needles for a class: what each learner gets, what to buy for all."""

import re
from html import unescape
from math import ceil

from hypothesis import given
from hypothesis import strategies as st

from tests.cloth.any_legend import legends
from tests.cloth.forty import forty
from tests.cloth.slips import tables
from webapp.cloth import class_threads, classroom, slip_threads
from webapp.threads.geometry import ground_of
from webapp.threads.legend import Line, Part
from webapp.threads.needed import needs

KINDS = tables()["threads"]
RED = Line((Part("Red 321"),), "●", full=100)
BEADS = Line((Part("Black", "beads", 1),), "C", beads=60)
CLASS = {"n": "10", "width": "140", "height": "168", "count": "28", "over": "2", "bolt_width": "55"}


def asked(*threads, **more):
    found = classroom.ask(CLASS | {"threads": slip_threads.write(threads)} | more)
    assert not found.errors
    return found.values


def texts(*threads, **more):
    return class_threads.texts(asked(*threads, **more), tables())


def test_needles_are_one_each_with_two_to_spare():
    assert texts()["needles"] == "12 needles, size 24: one each, two to spare."
    assert texts(BEADS)["needles"].endswith(" And 12 for beads.")
    assert texts(by="cut", cut_width="8", cut_height="10")["needles"] == "12 needles: one each, two to spare."


def test_a_learner_gets_whole_working_lengths_and_the_skeins_are_added_up_before_they_are_rounded():
    """Of an 8 m skein 17 lengths of 18 in can be cut, of six strands each: 51 of two (by hand)."""
    (row,) = class_threads.rows(asked(RED), KINDS)
    lengths = int(re.fullmatch(r"each (\d+) × 18 in, 2 strands", row["more"]).group(1))
    assert 1 < lengths < 8  # 100 crosses at 14 take about 0.95 m of thread in the needle and its ends
    assert row["buy"] == f"{ceil(10 * lengths / 51)} skein" + ("s" if ceil(10 * lengths / 51) > 1 else "")
    assert class_threads.rows(asked(RED, unit="cm"), KINDS)[0]["more"] == f"each {lengths} × 46 cm, 2 strands"


def test_one_thread_on_two_lines_is_one_row_with_both_symbols():
    other = Line((Part("Red 321", strands=1),), "○", back=30)
    (row,) = class_threads.rows(asked(RED, other), KINDS)
    assert row["symbol"] == "● ○"
    assert re.fullmatch(r"each \d+ × 18 in, 2 strands; each \d+ × 18 in, 1 strand", row["more"])


def test_beads_are_counted_out_to_each():
    (row,) = class_threads.rows(asked(BEADS), KINDS)
    assert (row["more"], row["buy"]) == ("each 65 beads", "650 beads")


def test_a_kind_that_is_not_plain_cotton_is_named():
    """Silk is cut 15 in long: common practice, no source (shared/tables/threads.json)."""
    (row,) = class_threads.rows(asked(Line((Part("Rose 2", "silk"),), "A", full=1)), KINDS)
    assert row["more"] == "Silk; each 1 × 15 in, 2 strands"


def test_by_a_cut_it_asks_for_a_design_since_thread_goes_by_the_count():
    values = asked(RED, by="cut", cut_width="8", cut_height="10")
    assert class_threads.rows(values, KINDS) == []
    assert class_threads.texts(values, tables())["to-buy"] == class_threads.BY_DESIGN


@given(legends, st.integers(2, 200))
def test_n_learners_never_need_less_than_one_fewer_nor_than_their_lengths(legend, n):
    for need in needs(legend, ground_of(14, 1, None), KINDS).values():
        assert need.for_class(n) >= need.for_class(n - 1)
        assert need.for_class(n) >= need.units
        if KINDS[need.kind]["sold"] != "bead":
            strands = sum(many * strands * mm for (strands, mm), many in need.cut.items())
            assert need.for_class(n) * KINDS[need.kind]["length_mm"] * KINDS[need.kind]["strands"] >= (
                n * strands * (1 - 1e-9)
            )


@given(st.permutations(forty()[:8]))
def test_the_order_of_the_legend_changes_nothing_that_is_bought(legend):
    on = ground_of(14, 1, None)
    usual = {key: need.for_class(9) for key, need in needs(forty()[:8], on, KINDS).items()}
    assert {key: need.for_class(9) for key, need in needs(legend, on, KINDS).items()} == usual


# The page


def test_the_page_says_the_threads_that_came_along(client):
    page = client.get("/cloth/class", query_string=CLASS | {"threads": slip_threads.write(forty())})
    assert page.status_code == 200
    assert page.text.count('<th scope="row">') == 40
    assert "each colour of one dye lot" in page.text
    assert "12 needles, size 24" in page.text
    bare = client.get("/cloth/class", query_string=CLASS)
    assert "data-threads hidden" in bare.text
    assert "12 needles, size 24" in bare.text


def test_threads_that_were_damaged_are_said_and_the_cloth_all_the_same(client):
    page = client.get("/cloth/class", query_string=CLASS | {"threads": "1~●~2cRed"})
    assert page.status_code == 200
    assert "This slip was damaged on the way." in page.text
    assert "60 in" in page.text


def test_a_slip_leads_to_its_class_with_all_it_carries(client):
    figures = {"title": "Quince", "width": "90", "height": "60", "count": "14", "held": "hand"}
    slip = client.get("/cloth/slip", query_string=figures | {"threads": slip_threads.write(forty())})
    page = unescape(client.get(slip.location).text)
    link = re.search(r'data-class href="([^"]*)"', page).group(1)
    there = client.get(f"{link}&n=7&bolt_width=55")
    assert there.text.count('<th scope="row">') == 40
    assert "9 needles" in there.text
