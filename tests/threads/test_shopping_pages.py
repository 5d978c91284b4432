"""The page of the shopping list: which projects, what is short, what is ticked, as text."""

import html
import json
import re
from uuid import uuid4

import pytest

from tests.threads.stashed import keep, left, legend, line, part, stitched


@pytest.fixture
def lanterns(app, alice, new_project):
    """A project with a legend."""
    project = new_project(alice, state="in hand")
    legend(
        app,
        project,
        line("Moss 12", 2600),
        line("Fern 3", 900, instead="moss 12"),
        line("Plum", 300, kind="silk"),
    )
    return project


@pytest.fixture
def jug(app, alice, new_project):
    """A second one, that shares a thread with it."""
    project = new_project(alice, title="Blue jug")
    legend(app, project, line("MOSS 12", 1500))
    return project


def listed(page, name="To buy"):
    """Give what is on a list of the page: names, with how much and what else is said."""
    block = re.search(
        rf'<ul class="(?:card )?ticks" aria-label="{name}"[^>]*>(.*?)</ul>', page.text, re.DOTALL
    ).group(1)
    found = {}
    for item in re.findall(r"<li.*?</li>", block, re.DOTALL):
        said = [
            html.unescape(re.sub(r"<[^>]+>|\s+", " ", one))
            for one in re.findall(
                r"<(?:b|small|span class=\"much)[^>]*>(.*?)</(?:b|small|span)>", item, re.DOTALL
            )
        ]
        found[" ".join(said[0].split())] = [" ".join(one.split()) for one in said[1:]]
    return found


def ticks_of(page):
    return [json.loads(html.unescape(one)) for one in re.findall(r'data-ticks="([^"]+)"', page.text)]


def have(client, project, thread, is_had=True):
    entry = {"id": str(uuid4()), "kind": "have", "project": str(project), "at": "2026-02-03T20:14:05.120Z"}
    batch = {"sent_at": "2026-02-03T20:14:06Z", "entries": [entry | {"thread": thread, "have": is_had}]}
    assert client.post("/journal", json=batch).json["refused"] == []


def test_several_projects_are_one_list_with_each_thread_once(alice, lanterns, jug):
    page = alice.get(f"/thread/shopping?project={lanterns}&project={jug}")
    found = listed(page)
    assert list(found) == ["Moss 12", "Plum Silk"]
    assert found["Plum Silk"][0] == "1 skein"
    assert any("Instead of Fern 3" in said for said in found["Moss 12"])
    assert sorted(ticks_of(page)[0]) == sorted([[str(lanterns), "Moss 12"], [str(jug), "MOSS 12"]])


def test_needs_are_added_before_they_are_rounded(app, alice, new_project):
    """Six projects of a fifth of a skein come to two, not to six."""
    projects = [new_project(alice, title=f"Bookmark {n}") for n in range(6)]
    for project in projects:
        legend(app, project, line("Moss 12", 400))
    query = "&".join(f"project={project}" for project in projects)
    assert listed(alice.get(f"/thread/shopping?{query}"))["Moss 12"][0] == "2 skeins"


def test_the_order_of_projects_changes_nothing_but_their_own(alice, lanterns, jug):
    there, back = (
        alice.get(f"/thread/shopping?project={a}&project={b}") for a, b in ((lanterns, jug), (jug, lanterns))
    )
    assert listed(there) == listed(back)
    assert ticks_of(there) == ticks_of(back)


def test_the_stash_is_taken_off_and_what_there_is_enough_of_is_not_bought(app, alice, lanterns):
    before = listed(alice.get(f"/thread/shopping?project={lanterns}"))
    keep(app, lanterns, "moss 12", 1)
    keep(app, lanterns, "Plum", 1, kind="silk")
    page = alice.get(f"/thread/shopping?project={lanterns}")
    assert before["Moss 12"][0] == "2 skeins"
    assert listed(page)["Moss 12"][0] == "1 skein"
    assert "Plum Silk" not in listed(page)
    assert "Enough in the stash (1)" in page.text


def test_thread_put_away_is_not_had(app, alice, lanterns):
    id = keep(app, lanterns, "moss 12", 9)
    assert "Moss 12" not in listed(alice.get("/thread/shopping"))
    alice.post(f"/thread/stash/{id}/away", data={"away": "yes"})
    assert "Moss 12" in listed(alice.get("/thread/shopping"))


def test_what_is_laid_is_not_bought_again(app, alice, lanterns):
    stitched(app, lanterns, "Moss 12", 2600, why="before")
    assert listed(alice.get("/thread/shopping"))["moss 12"][0] == "1 skein", "for what Fern 3 was"


def test_what_is_left_is_had(app, alice, new_project):
    project = new_project(alice)
    (moss,) = legend(app, project, line("Moss 12", 2600))
    left(app, project, moss, 20_000)
    assert listed(alice.get("/thread/shopping")) == {}
    assert "Nothing is short." in alice.get("/thread/shopping").text


def test_two_lots_say_that_all_is_bought_of_one_at_once(app, alice, new_project):
    project = new_project(alice)
    legend(app, project, line("Moss 12", 2600, lots=["7A"]))
    keep(app, project, "Moss 12", 0.5, lot="8B")
    assert (
        "Two lots so far: 7A and 8B. Buy all of one lot at once."
        in listed(alice.get("/thread/shopping"))["Moss 12"]
    )


def test_what_is_ticked_stands_below(alice, lanterns, jug):
    have(alice, lanterns, "Moss 12")
    both = f"/thread/shopping?project={lanterns}&project={jug}"
    assert "Moss 12" in listed(alice.get(both)), "the jug's is not had yet"
    have(alice, jug, "MOSS 12")
    page = alice.get(both)
    assert "Moss 12" not in listed(page)
    assert list(listed(page, "Ticked")) == ["Moss 12"]
    assert "☐ Moss 12" not in page.text
    assert "☐ Plum, silk: 1 skein" in page.text


def test_which_projects_is_asked_where_there_are_several_and_not_for_one(alice, lanterns, charlie):
    assert list(listed(alice.get("/thread/shopping"))) == ["Moss 12", "Plum Silk"]
    assert "No project has a legend yet." in charlie.get("/thread/shopping").text


def test_several_are_offered_without_those_finished_or_put_away(app, alice, lanterns, jug, new_project):
    done, away = new_project(alice, title="Done", state="finished"), new_project(alice, title="Away")
    for project in (done, away):
        legend(app, project, line("Moss 12"))
    alice.post(f"/projects/{away}/away", data={"away": "yes"})
    page = alice.get("/thread/shopping").text
    assert re.findall(r'name="project" value="([^"]+)" checked', page) == [str(lanterns), str(jug)]
    assert "Done" not in page.split("<main")[1]


@pytest.mark.parametrize("query", ["project=x", "project=00000000-0000-4000-8000-000000000000", "project="])
def test_a_project_that_is_not_there_is_not_found(alice, lanterns, query):
    assert alice.get(f"/thread/shopping?{query}").status_code == 404


def test_another_stitchers_project_is_not_found(charlie, lanterns):
    assert charlie.get(f"/thread/shopping?project={lanterns}").status_code == 404


def test_a_blend_is_bought_part_by_part(app, alice, new_project):
    project = new_project(alice)
    legend(app, project, {"parts": [part("Ecru", strands=1), part("Frost", "filament", 1)], "full": 400})
    assert {name: said[0] for name, said in listed(alice.get("/thread/shopping")).items()} == {
        "Ecru": "1 skein",
        "Frost Blending filament": "1 spool",
    }


def test_names_are_text(app, alice, new_project):
    project = new_project(alice, title="<i>Jug</i>")
    legend(app, project, line("""<b>"Moss" & 'Fern'</b>"""))
    page = alice.get("/thread/shopping")
    assert "<b>&#34;" not in page.text
    assert "<i>Jug" not in page.text
    assert ticks_of(page) == [[[str(project), """<b>"Moss" & 'Fern'</b>"""]]]
