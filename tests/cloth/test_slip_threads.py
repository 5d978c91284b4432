"""The threads of a slip without a browser: text, code, words, and how they become a legend."""

import re
from dataclasses import replace
from html import unescape
from urllib.parse import parse_qs, urlencode, urlsplit
from uuid import UUID

import pytest
import segno
from hypothesis import given, settings
from hypothesis import strategies as st
from sqlalchemy import select

from tests.cloth.forty import forty
from tests.cloth.slips import VECTORS, slip_of, tables
from tests.threads.legends import lay_down, line, part
from webapp.cloth import slip_rows, slip_text, slip_threads
from webapp.cloth.slip_code import code
from webapp.cloth.slip_text import MOST_CODED, MOST_LINKED, coded, read, weight, write
from webapp.cloth.slip_threads import Part, Thread
from webapp.db import db
from webapp.threads.from_slip import thread_from
from webapp.threads.legend_kept import line_of
from webapp.threads.models import LegendLine

KINDS = tables()["threads"]
QUINCE = slip_of(VECTORS["slips"][0]["slip"])
FORTY = replace(QUINCE, threads=forty())
RED = Thread("●", (Part("Red 321"),), full=900)
names = st.text(st.characters(exclude_categories=["Cc", "Cs", "Zl", "Zp"]), min_size=1, max_size=20)
seen = names.filter(lambda name: slip_text.fault(name) is None)
parts = st.builds(
    Part, seen, st.sampled_from(list(slip_threads.KINDS)), st.integers(1, 4), st.just("") | seen
)
many = st.integers(0, slip_threads.STITCHES)
threads = st.builds(
    Thread,
    st.just("") | seen.map(lambda symbol: symbol[:12]).filter(lambda symbol: slip_text.fault(symbol) is None),
    st.lists(parts, min_size=1, max_size=6).map(tuple),
    *[many] * 7,
).filter(lambda thread: len(thread.symbol) <= 12)
legends = st.lists(threads, max_size=8).map(tuple)


# Their text


def test_every_kind_of_thread_has_a_letter_of_its_own():
    assert set(slip_threads.KINDS) == set(KINDS)
    assert len(set(slip_threads.KINDS.values())) == len(KINDS)


@given(legends, st.sampled_from(["", "Quince tree", "~1~2~"]))
def test_any_threads_come_back_as_they_went_and_in_their_order(legend, title):
    slip = replace(QUINCE, threads=legend, title=title)
    address = "/cloth/slip?" + urlencode({"s": write(slip)})
    assert read(parse_qs(urlsplit(address).query)["s"][0]) == slip
    assert slip_threads.read(slip_threads.write(legend)) == legend


@given(legends)
def test_where_there_are_no_threads_the_text_is_as_it_ever_was(legend):
    bare = write(slip_text.without_threads(replace(QUINCE, threads=legend)))
    assert bare == VECTORS["slips"][0]["text"]
    assert bare.startswith("1~")


@given(legends.filter(bool), st.data())
def test_threads_changed_in_one_letter_are_refused(legend, data):
    text = write(replace(QUINCE, threads=legend))
    at = data.draw(st.integers(0, len(text) - 1))
    other = data.draw(st.sampled_from("~_0 2cx").filter(lambda sign: sign != text[at]))
    with pytest.raises(slip_text.Unreadable):
        read(text[:at] + other + text[at + 1 :])


# Their code


def test_a_legend_of_forty_threads_goes_into_one_code_that_fits_beside_the_drawing():
    """A code of version 32 with error correction M holds 1,538 bytes (ISO/IEC 18004, as segno has it)."""
    text = write(FORTY)
    assert weight(text) == len(urlencode({"s": text})) - 2
    assert 1_250 < weight(text) <= MOST_CODED  # about 33 bytes a thread
    assert coded(FORTY) == text
    address = "https://stitch.example/cloth/slip?" + urlencode({"s": text})
    made = segno.make(address, micro=False, error="m")
    assert made.version <= 32
    whole = float(re.search(r'width="([\d.]+)mm"', code(address)).group(1))
    assert whole <= 148 - 2 * 8 - 54  # beside the drawing on A5


def test_threads_too_many_for_a_code_are_left_out_of_it_and_the_page_says_so(client):
    cyrillic = tuple(
        Thread(one.symbol, (Part(f"Полевые цветы {n}"),), one.full) for n, one in enumerate(forty())
    )
    slip = replace(QUINCE, threads=cyrillic)
    assert weight(write(slip)) > MOST_CODED
    assert coded(slip) == write(QUINCE)
    page = unescape(client.get("/cloth/slip", query_string={"s": write(slip)}).text)
    assert "40 threads: too many for a code. The link has them." in page
    assert f"slip.svg?{urlencode({'s': write(QUINCE)})}" in page
    assert "Полевые цветы 39" in page
    drawn = [client.get("/cloth/slip.svg", query_string={"s": write(one)}).text for one in (slip, QUINCE)]
    assert drawn[0] == drawn[1]


@given(legends)
def test_the_bytes_of_a_text_are_those_of_its_address(legend):
    text = write(replace(QUINCE, threads=legend))
    assert weight(text) == len(urlencode({"s": text})) - 2


# What is said of them


def rows(*legend, **more):
    return slip_rows.rows(replace(QUINCE, threads=legend, **more), KINDS)


def test_each_line_says_its_thread_strands_and_what_to_buy():
    blend = Thread("B", (Part("Blue 7", "cotton", 1), Part("Silver", "filament", 1)), full=40)
    said = rows(RED, blend, Thread("C", (Part("Rose 2", "silk", 2, "Rose 7"),), full=10))
    assert said[0] == {
        "symbol": "●", "thread": "Red 321", "more": "", "strands": "2", "buy": "1 skein",
    }  # fmt: skip
    assert (said[1]["thread"], said[1]["strands"]) == ("Blue 7 + Silver", "1 + 1")
    assert (said[1]["more"], said[1]["buy"]) == ("Blending filament", "1 skein + 1 spool")
    assert (said[2]["thread"], said[2]["more"]) == ("Rose 7", "Silk, for Rose 2")


def test_a_thread_on_two_lines_is_bought_once_for_both():
    lines = [Thread(symbol, (Part("Red 321"),), full=900) for symbol in "AB"]
    said = rows(*lines)
    assert [row["buy"] for row in said] == [
        rows(Thread("A", (Part("Red 321"),), full=1800))[0]["buy"],
        "as above",
    ]


def test_beads_are_bought_with_some_to_spare():
    """A spare of 5 %, five at least: common practice, no source (threads/estimate.py)."""
    assert rows(Thread("", (Part("Black", "beads", 1),), beads=60))[0]["buy"] == "65 beads"


def test_a_thread_of_which_no_stitch_is_counted_says_so():
    assert rows(Thread("A", (Part("Red 321"),)))[0]["buy"] == "not counted"


@settings(deadline=None)
@given(legends)
def test_there_is_a_row_for_every_line_and_the_sum_is_of_what_they_say(legend):
    legend = tuple(thread for thread in legend if sum(p.strands for p in thread.parts) <= 24)
    said = slip_rows.rows(replace(QUINCE, threads=legend), KINDS)
    assert [row["symbol"] for row in said] == [thread.symbol for thread in legend]
    buy = [one for row in said for one in row["buy"].split(" + ")]
    summed = slip_rows.texts(replace(QUINCE, threads=legend), KINDS)["to-buy"]
    for sold in ("skein", "spool", "bead"):
        whole = sum(
            int(one.split(" ")[0].replace(",", "")) for one in buy if one.split(" ")[-1].rstrip("s") == sold
        )
        found = re.search(rf"([\d,]+) {sold}", summed)
        assert (int(found.group(1).replace(",", "")) if found else 0) == whole


# The page, and her project


def opened(client, slip):
    return client.get("/cloth/slip", query_string={"s": write(slip)})


def test_the_page_shows_the_threads_as_a_table_and_markup_in_them_is_text(client):
    page = opened(client, replace(QUINCE, threads=(RED, Thread("<i>", (Part("<b>Red</b>"),), 5)))).text
    assert page.count("<tr>") == 3
    assert "&lt;b&gt;Red&lt;/b&gt;" in page
    assert "<b>Red" not in page
    assert "To buy: 2 skeins, each colour of one dye lot." in page
    assert re.search(r"data-threads( hidden)?>", opened(client, QUINCE).text).group(1) == " hidden"


def test_a_slip_changed_by_its_form_keeps_its_threads(client):
    page = unescape(opened(client, replace(QUINCE, threads=(RED,))).text)
    kept = re.search('name="threads" value="([^"]*)"', page).group(1)
    figures = {"title": "Quince", "width": "90", "height": "60", "count": "14", "threads": kept}
    answer = client.get("/cloth/slip", query_string=figures)
    assert read(parse_qs(urlsplit(answer.location).query)["s"][0]).threads == (RED,)


def test_figures_with_damaged_threads_are_a_sentence_and_lose_them(client):
    figures = {"title": "Quince", "width": "90", "height": "60", "count": "14", "threads": "1~●~2cRed"}
    page = client.get("/cloth/slip", query_string=figures)
    assert page.status_code == 422
    assert slip_text.DAMAGED in page.text
    assert 'name="threads" value=""' in page.text


def legend_of(app, project):
    with app.app_context():
        query = select(LegendLine).where(LegendLine.project == project).order_by(LegendLine.position)
        lines = list(db.session.scalars(query))
        return lines, tuple(thread_from(line_of(row)) for row in lines)


def project_made(browser, slip):
    answer = browser.post("/cloth/slip", data={"s": write(slip)})
    assert answer.status_code == 303
    return UUID(answer.location.rsplit("/", 1)[1])


def test_a_slip_made_her_project_brings_its_legend_once(app, alice):
    projects = {project_made(alice, FORTY) for _ in range(3)}
    assert len(projects) == 1
    lines, legend = legend_of(app, projects.pop())
    assert legend == FORTY.threads
    assert len({line.key for line in lines}) == 40
    assert [line.position for line in lines] == list(range(1, 41))


def test_what_a_phone_carries_of_a_project_knows_the_legend_that_came_with_a_slip(app, alice):
    project = project_made(alice, FORTY)
    plan = alice.get(f"/projects/{project}/snapshot").json["plan"]
    assert [line["name"] for line in plan["legend"]] == [one.parts[0].thread for one in FORTY.threads]
    assert all(line["each"] > 0 for line in plan["legend"])
    legend = alice.get(f"/projects/{project}/thread")
    assert legend.status_code == 200
    assert legend.text.count('<li id="line-') == 40


def test_the_code_without_the_threads_and_the_link_with_them_make_one_project(app, alice):
    bare, full = project_made(alice, QUINCE), project_made(alice, FORTY)
    assert bare == full
    assert legend_of(app, full)[1] == FORTY.threads


def test_a_legend_that_is_there_already_stays_hers(app, alice):
    project = project_made(alice, QUINCE)
    lay_down(app, project, line(part("Mine"), symbol="A", full=1))
    project_made(alice, FORTY)
    assert [thread.parts[0].thread for thread in legend_of(app, project)[1]] == ["Mine"]


def test_lines_of_the_same_first_thread_have_keys_of_their_own(app, alice):
    name = "x" * 100
    slip = replace(QUINCE, threads=tuple(Thread(str(n), (Part(name),), n) for n in range(12)))
    lines, _legend = legend_of(app, project_made(alice, slip))
    assert len({line.key for line in lines}) == 12
    assert max(len(line.key) for line in lines) <= 100


def test_whoever_begins_with_a_slip_has_its_legend(app, client):
    assert legend_of(app, project_made(client, FORTY))[1] == FORTY.threads


def test_a_project_s_own_slip_has_its_legend(app, alice):
    page = unescape(alice.get(f"/projects/{project_made(alice, FORTY)}").text)
    link = re.search(r'href="(/cloth/slip[^"]*)"', page).group(1)
    assert "Cut, needle, threads" in page
    assert read(parse_qs(urlsplit(alice.get(link).location).query)["s"][0]) == FORTY


def test_a_legend_too_long_for_any_link_is_left_out_and_that_is_said(app, alice, new_project):
    project = new_project(alice)
    lay_down(app, project, *[line(part(f"{n} {'Щ' * 90}"), full=n) for n in range(40)])
    page = unescape(alice.get(f"/projects/{project}").text)
    assert "Its threads are too many for a link." in page
    link = re.search(r'href="(/cloth/slip[^"]*)"', page).group(1)
    assert read(parse_qs(urlsplit(alice.get(link).location).query)["s"][0]).threads == ()
    assert len(link) < MOST_LINKED
