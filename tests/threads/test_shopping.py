"""The shopping list: needs added up, less what is had, rounded up to whole skeins only then."""

from fractions import Fraction
from math import ceil

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.threads.lines import COTTON, KINDS, ON_14, TWO, counts, grounds, scatters, workeds
from tests.threads.stashed import plain
from webapp.threads.called import alike, goes_to
from webapp.threads.estimate import Counts, estimate
from webapp.threads.lasting import still, to_come, worth
from webapp.threads.shopping import Had, Need, is_ticked, shop
from webapp.threads.shopping_words import as_text, line_of, of_lots, title_of, to_buy, why

SKEIN = COTTON["length_mm"]


def need(name="Moss 12", low=0.5, high=0.7, project="a", **more):
    """A need in skeins."""
    columns = {"printed": name, "kind": "cotton", "lots": ()} | more
    return Need(project=project, name=name, low=low * SKEIN, high=high * SKEIN, **columns)


def one(needs, had=None):
    (found,) = shop(needs, had or {}, KINDS)
    return found


def test_needs_of_several_projects_are_added_before_they_are_rounded_up():
    """Three needs of a third of a skein are one skein, not three."""
    assert one([need(low=0.3, high=0.33, project=p) for p in "abc"]).buy == (1, 1)


def test_a_range_says_how_much_to_buy_safely():
    wanted = one([need(low=1.4, high=2.6)])
    assert wanted.buy == (2, 3)
    assert plain(why(wanted, COTTON, "cm")) == "2 to 3 skeins – buy 3"
    assert to_buy(wanted, COTTON) == "3 skeins"


def test_what_is_had_is_taken_off_surely_for_the_most_and_perhaps_for_the_least():
    wanted = one([need(low=2, high=3)], {("moss 12", "cotton"): Had(0.5 * SKEIN, 1.2 * SKEIN)})
    assert wanted.buy == (ceil(2 - 1.2), ceil(3 - 0.5))
    assert plain(why(wanted, COTTON, "cm")) == "takes 16 to 24 m, you have 4 m: 1 to 3 skeins – buy 3"


def test_what_there_is_enough_of_is_not_bought():
    assert one([need(low=1, high=2)], {("moss 12", "cotton"): Had(2 * SKEIN, 2 * SKEIN)}).buy == (0, 0)


def test_names_that_differ_in_case_or_spaces_are_one_thread():
    wanted = one([need("Moss 12"), need("MOSS  12 ", project="b"), need("moss 12", project="c")])
    assert wanted.name == "Moss 12"
    assert dict(wanted.ticks) == {"a": "Moss 12", "b": "MOSS  12 ", "c": "moss 12"}


def test_a_substitute_counts_as_what_is_used_instead():
    wanted = one([need(printed="Fern 3"), need(project="b")])
    assert wanted.instead_of == ("Fern 3",)
    assert [name for _project, name in wanted.ticks] == ["Moss 12", "Moss 12"]


def test_kinds_of_one_name_are_apart_and_ticked_apart():
    found = shop([need("Ecru"), need("Ecru", kind="silk")], {}, KINDS)
    assert [wanted.kind for wanted in found] == ["cotton", "silk"]
    assert [wanted.ticks for wanted in found] == [(("a", "Ecru"),), (("a", "Ecru (Silk)"),)]


def test_of_a_long_name_in_two_kinds_the_tick_still_fits_an_entry():
    name = "x" * 100
    ticks = [wanted.ticks[0][1] for wanted in shop([need(name), need(name, kind="filament")], {}, KINDS)]
    assert len(set(ticks)) == 2
    assert max(map(len, ticks)) <= 100  # as an entry's thread may be


def test_two_lots_are_said_and_one_is_matched():
    assert of_lots(one([need(lots=("7A",)), need(lots=("8B",), project="b")])) == (
        "Two lots so far: 7A and 8B. Buy all of one lot at once."
    )
    assert of_lots(one([need()], {("moss 12", "cotton"): Had(1, 1, ("7A",))})) == "Your lot: 7A."
    assert of_lots(one([need()])) == ""


def test_beads_are_counted_and_not_measured():
    beads = Need("a", "Seed beads", "Seed beads", "beads", 120, 126)
    wanted = one([beads], {("seed beads", "beads"): Had(60, 60)})
    assert wanted.buy == (60, 66)
    assert to_buy(wanted, KINDS["beads"]) == "66 beads"


def test_it_is_ticked_when_every_project_that_needs_it_says_so():
    wanted = one([need(), need(project="b")])
    assert not is_ticked(wanted, {"a": {"Moss 12": True}})
    assert not is_ticked(wanted, {"a": {"Moss 12": True}, "b": {"Moss 12": False}})
    assert is_ticked(wanted, {"a": {"Moss 12": True}, "b": {"Moss 12": True}})


def test_it_is_sent_as_a_text_with_a_box_a_line():
    silk = one([need("Plum", 1.4, 2.6, kind="silk", lots=("7A",))])
    text = as_text(title_of(["Blue jug", "Harbour lanterns"]), [line_of(silk, KINDS["silk"])])
    assert text == "Thread for Blue jug and Harbour lanterns\n\n☐ Plum, silk: 5 skeins, lot 7A"
    assert title_of(list("abcde")) == "Thread for a, b and 3 more"


names = st.sampled_from(["Moss 12", "moss 12", "Fern 3", "Ecru", "ECRU "])
needs = st.builds(
    lambda name, printed, kind, low, more, project, lots: Need(
        project, name, printed, kind, low, low + more, lots
    ),
    *(names, names, st.sampled_from(["cotton", "silk", "metallic"]), st.floats(0, 1e5), st.floats(0, 1e5)),
    *(st.sampled_from("abc"), st.sampled_from([(), ("7A",), ("7A", "8B")])),
)
stashes = st.dictionaries(
    st.tuples(names.map(alike), st.sampled_from(["cotton", "silk"])),
    st.builds(lambda sure, more: Had(sure, sure + more), st.floats(0, 1e5), st.floats(0, 1e5)),
)


@given(st.lists(needs, max_size=12), stashes, st.randoms(use_true_random=False))
def test_the_order_of_lines_and_projects_changes_nothing(wanted, had, rng):
    mixed = list(wanted)
    rng.shuffle(mixed)
    assert shop(mixed, had, KINDS) == shop(wanted, had, KINDS)


@given(st.lists(needs, min_size=1, max_size=12), stashes)
def test_what_is_bought_and_had_is_enough_and_no_skein_too_many(wanted, had):
    """Against plain fractions."""
    for found in shop(wanted, had, KINDS):
        length = Fraction(KINDS[found.kind]["length_mm"])
        most = sum(
            Fraction(n.high) for n in wanted if (alike(n.name), n.kind) == (alike(found.name), found.kind)
        )
        short = most - Fraction(found.had[0])
        assert found.buy[1] >= short / length - Fraction(1, 10**8)
        assert found.buy[1] == 0 or found.buy[1] - 1 < short / length
        assert found.buy[0] <= found.buy[1]


@given(
    *(grounds, st.lists(st.tuples(counts, workeds, scatters), min_size=1, max_size=4), st.integers(0, 3)),
    *(st.integers(0, 6), st.integers(1, 500), st.integers(0, 2000), st.floats(0, 30_000)),
)
def test_more_stitches_never_need_fewer_skeins(ground, lines, which, what, more, laid, had):
    """With some laid already and some thread had, too.

    Laid at most as many as are planned: beyond, the plan is wrong, and what is left of other stitches is told
    by what one of all takes, which falls by a hair as the plan grows.
    """
    done = [min(laid, many.full) for many, _, _ in lines]

    def bought(legend):
        wanted = []
        for (many, worked, scatter), crosses in zip(legend, done, strict=True):
            takes = estimate(ground, many, worked, COTTON, None, scatter).sold
            share = to_come(worth(many, ground, worked), still(many, {"cross": crosses}))
            wanted.append(Need("a", "Moss 12", "Moss 12", "cotton", takes.low * share, takes.high * share))
        return one(wanted, {("moss 12", "cotton"): Had(had, had)}).buy

    at = which % len(lines)
    many, worked, scatter = lines[at]
    field = many._fields[what]
    greater = many._replace(**{field: getattr(many, field) + more})
    grown = [*lines[:at], (greater, worked, scatter), *lines[at + 1 :]]
    before, after = bought(lines), bought(grown)
    assert after[0] >= before[0]
    assert after[1] >= before[1]


@pytest.mark.parametrize(
    ("name", "kind", "wanted", "meant"),
    [
        ("MOSS 12", "cotton", {("moss 12", "cotton")}, ("moss 12", "cotton")),
        ("Moss 12", "cotton", {("moss 12", "hand-dyed")}, ("moss 12", "hand-dyed")),
        ("Ecru", "silk", {("ecru", "cotton"), ("ecru", "silk")}, ("ecru", "silk")),
        ("Ecru", "wool", {("ecru", "cotton"), ("ecru", "silk")}, None),
        ("Pearl", "beads", {("pearl", "cotton")}, None),
        ("Fern 3", "cotton", {("moss 12", "cotton")}, None),
    ],
)
def test_thread_of_the_stash_is_found_by_its_name_and_among_several_by_its_kind(name, kind, wanted, meant):
    assert goes_to(name, kind, wanted, KINDS) == meant


def test_a_published_yield_is_bought_as_it_should_be():
    """About 1,960-2,130 crosses a skein at 14 with 2 strands and ends (TRADE, derived)."""
    takes = estimate(ON_14, Counts(full=1500), TWO, COTTON, 1, "together").sold
    assert one([Need("a", "Moss", "Moss", "cotton", takes.low, takes.high)]).buy == (1, 1)
