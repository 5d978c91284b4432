"""Scripts joined as they are served are the same scripts."""

import re

import pytest

from webapp import joined
from webapp.places import STATIC
from webapp.statics import files

OURS = [path for path in files() if path.startswith("js/")]


@pytest.mark.parametrize("path", OURS)
def test_every_script_can_be_sent(path):
    assert joined.script(path)


@pytest.mark.parametrize("entry", joined.ENTRIES)
def test_an_entry_holds_each_of_its_modules_once_after_what_it_needs(entry):
    held, base = joined.members(entry), joined.ENTRIES[entry][1]
    elsewhere = joined.members(base) if base else ()
    assert len(set(held)) == len(held)
    for path in held:
        before = (*elsewhere, *held[: held.index(path)])
        assert set(joined.needed(path)) - {path} <= set(before)


def test_what_the_worker_runs_shares_nothing_with_a_page():
    assert "$base" not in joined.script("js/pwa/wake.js")
    assert (STATIC / "js/pwa/wake.js").exists()


def test_a_joined_module_is_the_same_one_at_its_own_address(server, page):
    page.goto(f"{server.url}/cloth")
    same = """async (place) => {
      const base = document.querySelector('script[type=module]').src;
      const [entry, own] = await Promise.all([import(base), import(new URL('journal/fold.js', base))]);
      return entry.$held[place].advance === own.advance;
    }"""
    assert page.evaluate(same, joined.place("js/app.js", "js/journal/fold.js"))


@pytest.mark.parametrize("path", OURS)
def test_no_script_says_void(path):
    """The minifier takes what follows it for nothing: `void (a && b())` is served without b."""
    assert not re.search(r"\bvoid\b[^*]*[;(]", (STATIC / path).read_text())
