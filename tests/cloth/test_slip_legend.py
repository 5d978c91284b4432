"""The threads of a slip on its page, and how they become the legend of a project and its slip again."""

import re
from dataclasses import replace
from html import unescape
from urllib.parse import parse_qs, urlsplit
from uuid import UUID

from sqlalchemy import select

from tests.cloth.forty import forty
from tests.cloth.slips import VECTORS, slip_of
from tests.threads.stashed import legend, line
from webapp.cloth import slip_text
from webapp.cloth.slip_text import MOST_LINKED, read, write
from webapp.db import db
from webapp.threads.legend import Line, Part
from webapp.threads.legend_kept import line_of
from webapp.threads.models import LegendLine

QUINCE = slip_of(VECTORS["slips"][0]["slip"])
FORTY = replace(QUINCE, threads=forty())
RED = Line((Part("Red 321"),), "●", full=900)


# The page


def opened(client, slip):
    return client.get("/cloth/slip", query_string={"s": write(slip)})


def test_the_page_shows_the_threads_as_a_table_and_markup_in_them_is_text(client):
    page = opened(client, replace(QUINCE, threads=(RED, Line((Part("<b>Red</b>"),), "<i>", full=5)))).text
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


# Her project


def legend_of(app, project):
    with app.app_context():
        query = select(LegendLine).where(LegendLine.project == project).order_by(LegendLine.position)
        lines = list(db.session.scalars(query))
        return lines, tuple(line_of(row) for row in lines)


def project_made(browser, slip):
    answer = browser.post("/cloth/slip", data={"s": write(slip)})
    assert answer.status_code == 303
    return UUID(answer.location.rsplit("/", 1)[1])


def test_a_slip_made_her_project_brings_its_legend_once(app, alice):
    projects = {project_made(alice, FORTY) for _ in range(3)}
    assert len(projects) == 1
    lines, brought = legend_of(app, projects.pop())
    assert brought == FORTY.threads
    assert len({line.key for line in lines}) == 40
    assert [line.position for line in lines] == list(range(1, 41))


def test_what_a_phone_carries_of_a_project_knows_the_legend_that_came_with_a_slip(app, alice):
    project = project_made(alice, FORTY)
    plan = alice.get(f"/projects/{project}/snapshot").json["plan"]
    assert [line["name"] for line in plan["legend"]] == [one.parts[0].thread for one in FORTY.threads]
    assert all(line["each"] > 0 for line in plan["legend"])
    page = alice.get(f"/projects/{project}/thread")
    assert page.status_code == 200
    assert page.text.count('<li id="line-') == 40


def test_the_code_without_the_threads_and_the_link_with_them_make_one_project(app, alice):
    bare, full = project_made(alice, QUINCE), project_made(alice, FORTY)
    assert bare == full
    assert legend_of(app, full)[1] == FORTY.threads


def test_a_legend_that_is_there_already_stays_hers(app, alice):
    project = project_made(alice, QUINCE)
    legend(app, project, line("Mine", symbol="A"))
    project_made(alice, FORTY)
    assert [one.parts[0].thread for one in legend_of(app, project)[1]] == ["Mine"]


def test_lines_of_the_same_first_thread_have_keys_of_their_own(app, alice):
    name = "x" * 100
    slip = replace(QUINCE, threads=tuple(Line((Part(name),), str(n), full=n) for n in range(12)))
    lines, _brought = legend_of(app, project_made(alice, slip))
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
    legend(app, project, *[line(f"{n} {'Щ' * 90}", n) for n in range(40)])
    page = unescape(alice.get(f"/projects/{project}").text)
    assert "Its threads are too many for a link." in page
    link = re.search(r'href="(/cloth/slip[^"]*)"', page).group(1)
    assert read(parse_qs(urlsplit(alice.get(link).location).query)["s"][0]).threads == ()
    assert len(link) < MOST_LINKED
