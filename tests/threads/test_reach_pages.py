"""How far thread reaches, as its page says it and as a phone carries it."""

import re

import pytest

from tests.threads.lines import skeins
from tests.threads.stashed import asked, keep, legend, line
from webapp.threads.reach import of


@pytest.fixture
def project(alice, new_project):
    return new_project(alice, state="in hand")


# The page


def test_the_page_says_what_reaches_and_what_to_buy_of_the_same_lot_now(app, alice, project):
    legend(
        app,
        project,
        line("Moss 12", 2000, symbol="●"),
        line("Plum", 300, kind="silk"),
        line("Ecru", 50),
    )
    keep(app, project, "Moss 12", 0.75, lot="7A")
    keep(app, project, "Ecru")
    page = alice.get(f"/projects/{project}/thread/running").text
    found = re.findall(r"<h2>(.*?)</h2>", page)
    assert found == ["Not enough", "Not known", "Surely enough"]
    assert "Buy one more skein of the same lot now (7A)." in page
    assert "What there is of it is not known." in page
    for words in ("does not touch the old", "one strand of each", "unpick to an edge"):
        assert words in page


def test_what_is_left_is_entered_as_lengths(app, alice, project):
    (moss,) = legend(app, project, line("Moss 12", 2000))
    readings, address = (f"/projects/{project}/thread/{page}" for page in ("readings", "running"))
    answer = alice.post(readings, data={"what": "left", "line": str(moss), "much": "4 m"})
    assert (answer.status_code, answer.location) == (303, address)
    assert asked(app, project, of) == {"Moss 12": pytest.approx(skeins(0.5), abs=1)}
    assert "4.3\N{NO-BREAK SPACE}yd left" in alice.get(address).text


def test_another_stitchers_project_is_not_there(app, charlie, project):
    legend(app, project, line("Moss 12", 2000))
    assert charlie.get(f"/projects/{project}/thread/running").status_code == 404


# What a phone carries of it


def carried(client, project):
    return {
        one["key"]: one["lasts"] for one in client.get(f"/projects/{project}/snapshot").json["plan"]["legend"]
    }


def test_a_phone_is_told_when_thread_is_kept_counted_or_put_away(app, alice, project):
    legend(app, project, line("Moss 12", 2000))
    assert alice.post("/thread/stash", data={"thread": "moss 12"}).status_code == 303
    assert carried(alice, project) == {"Moss 12": pytest.approx(skeins(1), abs=1)}
    before = alice.get(f"/projects/{project}/snapshot").json["plan"]["revision"]
    id = re.search(r"/thread/stash/([0-9a-f-]{36})", alice.get("/thread/stash").text).group(1)
    alice.post(f"/thread/stash/{id}", data={"skeins": "2"})
    assert carried(alice, project) == {"Moss 12": pytest.approx(skeins(2), abs=1)}
    assert alice.get(f"/projects/{project}/snapshot").json["plan"]["revision"] > before
    alice.post(f"/thread/stash/{id}", data={"thread": "Fern 3"})
    assert carried(alice, project) == {"Moss 12": None}
    alice.post(f"/thread/stash/{id}", data={"thread": "Moss 12"})
    alice.post(f"/thread/stash/{id}/away", data={"away": "yes"})
    assert carried(alice, project) == {"Moss 12": None}


def test_a_phone_is_told_when_another_project_comes_to_share_a_thread(app, alice, project, new_project):
    other = new_project(alice, title="Jug", state="in hand")
    legend(app, project, line("Moss 12", 2000))
    alice.post("/thread/stash", data={"thread": "Moss 12", "skeins": "2"})
    assert carried(alice, project) == {"Moss 12": pytest.approx(skeins(2), abs=1)}
    (theirs,) = legend(app, other, line("Moss 12", 2000))
    alice.post(
        f"/projects/{other}/thread/readings", data={"what": "left", "line": str(theirs), "much": "2 skeins"}
    )
    assert carried(alice, project) == {"Moss 12": pytest.approx(skeins(1), abs=1)}


def test_a_phone_is_told_when_another_project_is_taken_in_hand_or_put_away(app, alice, project, new_project):
    other = new_project(alice, title="Jug")
    for one in (project, other):
        legend(app, one, line("Moss 12", 2000))
    alice.post("/thread/stash", data={"thread": "Moss 12", "skeins": "2"})
    assert carried(alice, project) == {"Moss 12": pytest.approx(skeins(2), abs=1)}
    alice.post(f"/projects/{other}/state", data={"state": "in hand"})
    assert carried(alice, project) == {"Moss 12": pytest.approx(skeins(1), abs=1)}
    alice.post(f"/projects/{other}/away", data={"away": "yes"})
    assert carried(alice, project) == {"Moss 12": pytest.approx(skeins(2), abs=1)}
