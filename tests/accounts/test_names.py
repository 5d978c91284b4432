"""What a stitcher may be called, and when two names are one."""

import unicodedata

import pytest
from hypothesis import given
from hypothesis import strategies as st

from webapp.accounts import names

WRITTEN = st.text(max_size=80)


@pytest.mark.parametrize(
    ("typed", "shown"),
    [("  Alice ", "Alice"), ("Alice\t\n  Brown", "Alice Brown"), ("Zoe\u0308", "Zoë"), ("\u3000", "")],
)
def test_a_name_is_tidied(typed, shown):
    assert names.tidy(typed) == shown


@pytest.mark.parametrize(
    ("one", "other"),
    [
        ("STRASSE", "straße"),  # Unicode, CaseFolding.txt: ß folds to ss
        ("ΣΊΣΥΦΟΣ", "σίσυφος"),  # both small sigmas fold to one
        ("ﬁligree", "filigree"),  # NFKC: the ligature
        ("①", "1"),  # NFKC: the circled digit
        ("Zoe\u0308", "zoë"),
    ],
)
def test_two_names_are_one(one, other):
    assert names.key(one) == names.key(other)


def test_i_with_and_without_a_dot_are_two():
    assert names.key("Isil") != names.key("Işıl")


@given(WRITTEN)
def test_tidying_and_folding_twice_changes_nothing_more(text):
    assert names.tidy(names.tidy(text)) == names.tidy(text)
    assert names.key(names.key(text)) == names.key(text)


@given(WRITTEN)
def test_a_key_is_the_same_before_and_after_tidying(text):
    assert names.key(names.tidy(text)) == names.key(text)


@given(WRITTEN)
def test_a_name_that_will_do_can_be_seen_and_kept(text):
    name = names.tidy(text)
    if names.fault(name) is None:
        assert 1 <= len(name) <= 60
        assert 1 <= len(names.key(name)) <= 200
        assert any(unicodedata.category(letter)[0] in "LNPS" for letter in name)
        assert "\x00" not in name


@pytest.mark.parametrize("name", ["A", "雪", "Ng\u0169g\u0129", "می\u200cخواهم", "O'Hara-Smith 2", "A" * 60])
def test_names_of_the_world_will_do(name):
    assert names.fault(names.tidy(name)) is None
