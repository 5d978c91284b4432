"""What goes into the bag and how a project is finished, by the materials it is made of."""

from hypothesis import given
from hypothesis import strategies as st

from tests.threads.stashed import part
from webapp.threads import bag, finishing, sheet, tables
from webapp.threads.bag import Packed
from webapp.threads.models import LegendLine

KINDS = tables.kinds()


def line(*parts, symbol="", beads=0):
    """Make a line that stands in no database yet."""
    return LegendLine(parts=list(parts), symbol=symbol, beads=beads)


COTTON = line(part("Red 321"), symbol="A")
GOLD = line(part("Red 321"), part("Gold 4", "filament", 1), symbol="B")
BEADS = line(part("Seed, black", "beads", 1), symbol="C", beads=60)
SILK = line(part("Rose 2", "silk"))


def packed(lines, held="hoop"):
    asked = Packed("14 count, over one", held, "15 × 12 in", "Hoop of 8 in", "24 (22 to 26)", ("aa.example",))
    return {item.key: item for item in bag.items(asked, lines, KINDS)}


def steps(lines, held="hoop", planned="10 × 7 in"):
    return {item.key: item for item in finishing.items(held, planned, lines, KINDS)}


# The bag


def test_the_threads_go_in_by_name_each_once_with_its_symbols():
    found = packed([COTTON, GOLD, line(part("Green 9", instead="Moss 1"), symbol="D")])
    threads = {key: (item.text, item.more) for key, item in found.items() if key.startswith("thread:")}
    assert threads == {
        "thread:cotton:Red 321": ("Red 321", "A B"),
        "thread:filament:Gold 4": ("Gold 4", "B, Blending filament"),
        "thread:cotton:Moss 1": ("Moss 1", "D"),  # what she uses, not what is printed
    }


def test_needles_are_by_count_with_two_to_spare():
    needles = packed([COTTON])["our:needles"]
    assert needles.text == "3 tapestry needles"
    assert needles.more == "Size 24 (22 to 26). One to stitch with, two to spare."
    assert needles.sources == ("aa.example", sheet.PRACTICE)


def test_beads_want_a_beading_needle_and_metallic_a_larger_eye():
    """The larger eye: stitchnz.co.nz; the beading needle: common practice, no source."""
    assert not any(key.startswith("needle:") for key in packed([COTTON]))
    assert "needle:beads" in packed([BEADS])
    assert "needle:beads" in packed([line(part("Black"), beads=3)])
    eye = packed([GOLD])["needle:filament"]
    assert (eye.text, eye.sources) == ("A needle with a larger eye", ("stitchnz.co.nz",))


def test_the_frame_goes_in_as_the_project_is_held():
    assert packed([COTTON])["our:frame"].text == "Hoop of 8 in"
    assert packed([COTTON], "scroll")["our:frame"].text == "Scroll frame"
    assert "our:frame" not in packed([COTTON], "hand")


def test_what_is_only_liked_stands_last():
    liked = [item.liked for item in packed([COTTON]).values()]
    assert liked == sorted(liked)
    assert {"our:light", "our:magnifier"} <= {key for key, item in packed([COTTON]).items() if item.liked}


def test_an_empty_legend_sends_her_to_the_pattern():
    assert packed([])["our:threads"].more == "The legend is empty: see the pattern."
    assert "our:threads" not in packed([COTTON])


# Finishing


def test_marks_come_out_in_cold_water_before_any_soap_or_heat():
    """Cold water, fully rinsed, before any iron or detergent: thesprucecrafts.com, quiltersreview.com."""
    found = steps([COTTON])
    marks = found["our:marks"]
    assert marks.text == "Marks out in cold water"
    assert "rinse it out fully, before any soap, iron or other heat" in marks.more
    assert marks.sources == ("thesprucecrafts.com", "quiltersreview.com/index.php/1063")
    order = list(found)
    assert order.index("our:marks") < order.index("our:wash") < order.index("our:press")


def test_colours_are_tested_reds_first_and_never_let_dry_while_they_run():
    """Test reds first; rinse until clear and do not let it dry: anniescatalog.com."""
    colours = steps([COTTON])["our:colours"]
    assert "reds first" in colours.more
    assert "rinse in cold water until clear, and do not let it dry" in colours.more
    assert all("anniescatalog.com" in source for source in colours.sources)


def test_plain_cotton_is_washed_before_it_is_pressed():
    """Heat sets marks: anniescatalog.com (cleaning)."""
    wash = steps([COTTON])["our:wash"]
    assert wash.text == "Wash it"
    assert "Before pressing" in wash.more
    assert "anniescatalog.com (cleaning)" in wash.sources


def test_whatever_may_not_bear_water_is_named_and_not_washed():
    """Hand-dyed or unknown thread: mystitchworld.com; silk, wool and the rest: common practice, no source."""
    for kind in ("hand-dyed", "silk", "wool", "metallic", "satin", "filament", "beads", "a kind not known"):
        found = steps([COTTON, line(part("Rose 2", kind))])
        assert found["our:wash"].text == "Do not wash it", kind
        assert "Rose 2" in found["our:wash"].more
        assert "Red 321" not in found["our:wash"].more
        assert "label" in found["our:wash"].more
        assert "may not bear water" in found["our:marks"].more
        assert "mystitchworld.com (hand-dyed floss)" in found["our:wash"].sources
    assert steps([])["our:wash"].more.startswith("Unknown thread")


def test_many_threads_that_are_not_washed_are_named_by_their_kinds():
    many = [line(part(f"Rose {n}", "silk" if n % 2 else "wool")) for n in range(9)]
    assert steps(many)["our:wash"].more.startswith("Wool, silk: only if its label says")


def test_it_is_rolled_never_wrung_and_measured_again_for_the_framer():
    """Common practice, no source."""
    found = steps([COTTON])
    assert found["our:roll"].more == "Never wring it."
    assert found["our:measure"].more == "Both ways, for the framer; it was planned 10 × 7 in."
    assert found["our:roll"].sources == found["our:measure"].sources == (sheet.PRACTICE,)


def test_metallic_satin_and_beads_are_pressed_cool_and_beads_never_on_top():
    """Common practice, no source; heat sets marks: anniescatalog.com (cleaning)."""
    assert "cool" not in steps([COTTON])["our:press"].more
    assert "On a towel" in steps([COTTON])["our:press"].more
    for kind in ("metallic", "satin", "filament"):
        assert "A cool iron" in steps([line(part("X", kind))])["our:press"].more
    assert "never on the beads" in steps([BEADS])["our:press"].more
    assert "Unknown thread: a cool iron." in steps([])["our:press"].more


def test_magnets_and_thread_ends_have_the_usual_caution_and_the_doctor():
    """Magnets: poison.org, wisconsinpoison.org, suddencardiacarrestuk.org; ends: vin.com, dvsc.com."""
    found = steps([COTTON])
    magnets, ends = found["our:magnets"], found["our:thread-ends"]
    for said in ("15 cm (6 in) from a pacemaker", "children and pets", "emergency care at once"):
        assert said in magnets.more
    for said in ("cats, dogs", "birds' nests", "vet or doctor at once", "never pull"):
        assert said in ends.more
    assert {"poison.org", "wisconsinpoison.org", "suddencardiacarrestuk.org"} == set(magnets.sources)
    assert {"vin.com", "dvsc.com/2020/02", "wausaudailyherald.com"} == set(ends.sources)


def test_work_in_the_hand_is_taken_off_nothing():
    assert steps([COTTON])["our:off"].text == "Take it out of the hoop"
    assert "our:off" not in steps([COTTON], "hand")


# Of any legend

kinds = st.sampled_from([*KINDS, "a kind not known"])
parts = st.builds(part, st.text(min_size=1, max_size=100), kinds, st.integers(1, 6))
lines = st.lists(parts, min_size=1, max_size=3).map(lambda parts: line(*parts))
legends = st.lists(lines, max_size=5)


@given(legends)
def test_every_line_of_a_sheet_has_a_key_of_its_own_that_the_database_holds(lines):
    for items in (
        bag.items(Packed("14 count", "hoop"), lines, KINDS),
        finishing.items("hoop", "", lines, KINDS),
    ):
        keys = [item.key for item in items]
        assert len(set(keys)) == len(keys)
        assert max(map(len, keys)) <= 160
        assert not any(key.startswith(sheet.OWN) for key in keys)
        assert all(item.sources for item in items)


@given(legends)
def test_nothing_is_washed_that_has_a_thread_in_it_which_may_not_be(lines):
    may = bool(lines) and all(
        KINDS.get(one["kind"], {}).get("wash") for every in lines for one in every.parts
    )
    wash = next(i for i in finishing.items("hand", "", lines, KINDS) if i.key == "our:wash")
    assert (wash.text == "Wash it") is may
