"""A legend out as CSV and in again: the same, to the byte; and nothing in it that a spreadsheet runs."""

import csv
import io

from hypothesis import example, given
from hypothesis import strategies as st

from webapp.lines import can_be_seen
from webapp.threads.estimate import Counts
from webapp.threads.legend import Line, Part
from webapp.threads.legend_csv import RISKY, guard, unguard, write
from webapp.threads.legend_preview import begun
from webapp.threads.legend_reads import read
from webapp.threads.legend_text import decode, rows
from webapp.threads.tables import kinds

SIGNS = "=+-@'\"＝＋－＠|;,/\\#%&*ß♥ aZ09\u00a0"
WORDS = st.text(st.one_of(st.sampled_from(SIGNS), st.characters(exclude_categories=["C", "Z"])), max_size=12)


def plain(text):
    return " ".join(text.split())


NAMES = WORDS.map(plain).filter(lambda name: can_be_seen(name) and "+" not in name.split())
NOTES = st.text(st.one_of(st.just("\n"), st.sampled_from(SIGNS)), max_size=30).map(str.strip)
LOTS = st.lists(NAMES.filter(lambda mark: not set(mark) & set(",;")), max_size=3, unique=True).map(tuple)
PARTS = st.builds(
    Part, NAMES, st.sampled_from(sorted(kinds())), st.integers(1, 6), st.one_of(st.just(""), NAMES), LOTS
)
MANY = st.one_of(st.just(0), st.integers(0, 10_000_000))
LINES = st.builds(
    Line,
    st.lists(PARTS, min_size=1, max_size=4).map(tuple),
    WORDS.map(plain),
    st.one_of(st.none(), st.from_regex("#[0-9a-f]{6}", fullmatch=True)),
    *[MANY] * len(Counts._fields),
    method=st.sampled_from([None, "rows", "each"]),
    scatter=st.sampled_from(["together", "mixed", "scattered"]),
    patches=st.one_of(st.none(), st.integers(1, 10_000)),
    working=st.one_of(st.none(), st.integers(150_000, 5_000_000).map(lambda mm: mm / 1000)),
    note=NOTES,
)


def taken_in(data):
    found = [read(typed, kinds(), lambda _kind: 2) for typed in begun(rows(decode(data)).rows)]
    assert [one.errors for one in found] == [{}] * len(found)
    return [one.line for one in found]


@given(st.lists(LINES, min_size=1, max_size=6))
@example([Line((Part("=1+1"), Part("'", "filament", 1, "-x")), "=", note="+\n@")])
@example([Line((Part("Total"),), "X", full=3), Line((Part("Thread"),), "symbol")])
@example([Line((Part("12"),)), Line((Part("#9b3527"),), "X", full=3), Line((Part("-"),), "o", full=3)])
def test_out_and_in_again_is_the_same_and_out_again_the_same_to_the_byte(lines):
    data = write(lines, kinds())
    assert taken_in(data) == lines
    assert write(taken_in(data), kinds()) == data


@given(st.lists(LINES, min_size=1, max_size=6))
def test_no_cell_begins_with_what_a_spreadsheet_runs(lines):
    """The characters of OWASP's advice: owasp.org/www-community/attacks/CSV_Injection."""
    text = write(lines, kinds()).decode("utf-8-sig")
    cells = [cell for row in csv.reader(io.StringIO(text, newline=""), strict=True) for cell in row]
    assert [cell for cell in cells if cell[:1] in RISKY and cell] == []


@given(st.text(st.sampled_from("'=+-@a\t"), max_size=5), st.text(st.sampled_from("'=+-@a\t"), max_size=5))
def test_the_guard_comes_off_as_it_went_on_and_two_cells_never_become_one(one, other):
    assert unguard(guard(one)) == one
    assert (guard(one) == guard(other)) == (one == other)


def test_it_is_csv_as_rfc_4180_has_it_with_the_mark_of_utf_8():
    lines = [Line((Part('Madder, "dark"'),), "+", full=1240, note="two\nlines")]
    data = write(lines, kinds())
    assert data.startswith(b"\xef\xbb\xbfsymbol,thread,")
    assert data.endswith(b"\r\n")
    assert '\'+,"Madder, ""dark""",,,Cotton,2,,1240,' in data.decode("utf-8-sig")
