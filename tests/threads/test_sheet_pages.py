"""The bag and the finishing sheet: pages, ticked and written on, without a browser."""

import re
from html import unescape

import pytest

from tests.threads.stashed import legend, line

LIGHT = {"item": "our:light", "ticked": "yes"}
SHEETS = ["bag", "finishing"]


@pytest.fixture
def project(app, alice, new_project):
    made = new_project(alice, title="Quince tree", width=70, height=98)
    legend(app, made, line("Rose 2", 40, kind="silk", symbol="▲"), line("Red 321", 900))
    return f"/projects/{made}"


def ticked(page):
    """Name the lines of a page that are ticked."""
    found = re.findall(r'aria-pressed="true">.*?<bdi>(.*?)</bdi>', page.text, re.S)
    return [unescape(text) for text in found]


def words(page):
    return unescape(re.sub(r"<[^>]+>", "", page.text))


def test_the_bag_is_drawn_from_the_project(alice, project):
    page = words(alice.get(f"{project}/bag"))
    for said in (
        "14 count, over one; cut ",
        "Hoop of 9 in",
        "Rose 2",
        "▲, Silk",
        "Red 321",
        "Size 24 (22 to 26)",
    ):
        assert said in page
    assert "beading" not in page


def test_the_finishing_sheet_is_drawn_from_the_project(alice, project):
    page = words(alice.get(f"{project}/finishing"))
    for said in ("Do not wash it", "Rose 2 (silk)", "it was planned 5 × 7 in", "Take it out of the hoop"):
        assert said in page


@pytest.mark.parametrize("sheet", SHEETS)
def test_a_line_is_ticked_and_unticked_and_stays_so(alice, project, sheet):
    item = {"bag": "our:scissors", "finishing": "our:roll"}[sheet]
    for _twice in range(2):
        assert alice.post(f"{project}/{sheet}/ticks", data={"item": item, "ticked": "yes"}).status_code == 303
    assert len(ticked(alice.get(f"{project}/{sheet}"))) == 1
    alice.post(f"{project}/{sheet}/ticks", data={"item": item, "ticked": "no"})
    assert ticked(alice.get(f"{project}/{sheet}")) == []


def test_a_tick_as_a_fragment_is_that_line_with_the_sum_beside_it(alice, project):
    answer = alice.post(f"{project}/bag/ticks/part", data=LIGHT)
    assert answer.status_code == 200
    assert answer.text.count("<li") == 1
    assert ticked(answer) == ["Light"]
    assert 'id="sum" hx-swap-oob="true">1 of 12<' in answer.text


def test_a_thread_is_ticked_by_its_name(alice, project):
    alice.post(f"{project}/bag/ticks", data={"item": "thread:silk:Rose 2", "ticked": "yes"})
    assert ticked(alice.get(f"{project}/bag")) == ["Rose 2"]


def test_a_tick_on_one_sheet_is_not_one_on_the_other(alice, project, new_project):
    other = new_project(alice)
    alice.post(f"{project}/bag/ticks", data=LIGHT)
    assert ticked(alice.get(f"{project}/finishing")) == []
    assert ticked(alice.get(f"/projects/{other}/bag")) == []


@pytest.mark.parametrize(
    "item", ["our:nothing", "own:never written", "", "\x00", "x" * 5000, "thread:cotton:"]
)
@pytest.mark.parametrize("address", ["ticks", "ticks/part"])
def test_what_is_not_on_the_sheet_cannot_be_ticked(alice, project, item, address):
    answer = alice.post(f"{project}/bag/{address}", data={"item": item, "ticked": "yes"})
    assert answer.status_code == 422
    assert "That line is not on this sheet any more." in answer.text
    assert ticked(alice.get(f"{project}/bag")) == []


# Her own lines


def test_her_own_line_is_added_once_ticked_and_removed(alice, project):
    for _twice in range(2):
        assert alice.post(f"{project}/bag/lines", data={"words": " Flask of tea "}).status_code == 303
    assert alice.get(f"{project}/bag").text.count("<bdi>Flask of tea</bdi>") == 1
    alice.post(f"{project}/bag/ticks", data={"item": "own:Flask of tea", "ticked": "yes"})
    assert ticked(alice.get(f"{project}/bag")) == ["Flask of tea"]
    assert "Flask of tea" not in alice.get(f"{project}/finishing").text
    alice.post(f"{project}/bag/lines/remove", data={"item": "own:Flask of tea"})
    assert "Flask of tea" not in alice.get(f"{project}/bag").text


def test_a_line_of_ours_cannot_be_removed(alice, project):
    alice.post(f"{project}/bag/ticks", data=LIGHT)
    alice.post(f"{project}/bag/lines/remove", data={"item": "our:light"})
    assert ticked(alice.get(f"{project}/bag")) == ["Light"]


@pytest.mark.parametrize("item", ["own:never written", "\x00", "x" * 5000])
def test_removing_what_is_not_there_changes_nothing(alice, project, item):
    alice.post(f"{project}/bag/lines", data={"words": "Flask of tea"})
    assert alice.post(f"{project}/bag/lines/remove", data={"item": item}).status_code == 303
    assert "Flask of tea" in alice.get(f"{project}/bag").text


@pytest.mark.parametrize(
    ("typed", "sentence"),
    [
        ("", "Write what to take along or to do."),
        ("\u200b", "Write what to take along or to do."),
        ("two\nlines", "Keep it to one line, without tabs or control characters."),
        ("x" * 121, "Shorten it: it has 121 characters, and 120 fit."),
    ],
)
@pytest.mark.parametrize("address", ["lines", "lines/part"])
def test_what_is_no_line_stays_typed_with_a_sentence(alice, project, typed, sentence, address):
    answer = alice.post(f"{project}/bag/{address}", data={"words": typed})
    assert answer.status_code == 422
    assert sentence in answer.text
    assert f'value="{typed}"' in answer.text or "\n" in typed


def test_her_own_words_are_text_and_so_are_the_thread_s(app, alice, new_project):
    project = new_project(alice, title="<i>Quince</i>")
    legend(app, project, line("<b>Red</b>", symbol="<"))
    alice.post(f"/projects/{project}/bag/lines", data={"words": "<u>tea</u>"})
    page = alice.get(f"/projects/{project}/bag").text
    assert not re.search("<(b>Red|u>|i>Quince)", page)
    assert "&lt;b&gt;Red&lt;/b&gt;" in page
    assert "&lt;u&gt;tea&lt;/u&gt;" in page


def test_a_sheet_that_is_full_says_so(alice, project):
    for n in range(60):
        assert alice.post(f"{project}/bag/lines", data={"words": f"Thing {n}"}).status_code == 303
    answer = alice.post(f"{project}/bag/lines", data={"words": "One more"})
    assert answer.status_code == 422
    assert "The sheet is full: 60 lines of your own fit." in answer.text
    assert alice.post(f"{project}/bag/lines", data={"words": "Thing 3"}).status_code == 303  # there already


def test_starting_over_unticks_all_and_leaves_her_lines(alice, project):
    alice.post(f"{project}/bag/lines", data={"words": "Flask of tea"})
    for item in ("our:light", "own:Flask of tea", "our:cloth"):
        alice.post(f"{project}/bag/ticks", data={"item": item, "ticked": "yes"})
    alice.post(f"{project}/finishing/ticks", data={"item": "our:roll", "ticked": "yes"})
    assert alice.post(f"{project}/bag/over").status_code == 303
    assert ticked(alice.get(f"{project}/bag")) == []
    assert "Flask of tea" in alice.get(f"{project}/bag").text
    assert len(ticked(alice.get(f"{project}/finishing"))) == 1


# Where they are found, and by whom


def test_the_project_leads_to_its_sheets_and_offers_to_finish_it_once_finished(alice, project):
    page = alice.get(project).text
    assert f'href="{project}/bag"' in page
    assert f'href="{project}/finishing"' in page
    assert "Finish it safely" not in page
    assert "Finish it safely" in alice.post(f"{project}/state", data={"state": "finished"}).text
    assert "Finish it safely" in alice.get(project).text


@pytest.mark.parametrize("sheet", SHEETS)
def test_another_s_sheets_are_not_there(alice, charlie, project, sheet):
    alice.post(f"{project}/{sheet}/lines", data={"words": "Flask of tea"})
    assert charlie.get(f"{project}/{sheet}").status_code == 404
    for address, data in (("ticks", LIGHT), ("lines", {"words": "x"}), ("over", {}), ("lines/remove", LIGHT)):
        assert charlie.post(f"{project}/{sheet}/{address}", data=data).status_code == 404


def test_a_project_of_no_size_that_can_be_cut_has_its_sheets_all_the_same(alice, new_project):
    project = new_project(alice, width=10_000, height=10_000, count=1, over=2)
    for sheet in SHEETS:
        assert alice.get(f"/projects/{project}/{sheet}").status_code == 200


def test_there_is_no_third_sheet(alice, project):
    assert alice.get(f"{project}/trunk").status_code == 404
