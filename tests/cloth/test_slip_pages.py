"""The slip's pages, and how a slip becomes a project, without a browser."""

import re
from dataclasses import replace
from html import unescape
from urllib.parse import urlencode

import pytest
from sqlalchemy import func, select

from tests.cloth.slips import VECTORS, slip_of
from tests.conftest import browser_of
from webapp import create_app
from webapp.accounts.models import Account
from webapp.cloth.slip_text import DAMAGED, FOREIGN, read, write
from webapp.db import db
from webapp.projects.models import Project

QUINCE = slip_of(VECTORS["slips"][0]["slip"])
TEXT = write(QUINCE)
ADDRESS = "/cloth/slip?" + urlencode({"s": TEXT})
FIGURES = {"title": "Quince tree", "width": "140", "height": "168", "count": "28", "over": "2"}
FIGURES |= {"finish": "framed", "held": "hand", "unit": "in"}


def slot(page, name):
    sheet = page.split("data-sheet")[1]
    return unescape(re.search(rf'data-slot="{name}"[^>]*>([^<]*)<', sheet).group(1))


def how_many(app, what):
    with app.app_context():
        return db.session.scalar(select(func.count()).select_from(what))


def test_figures_make_a_slip_whose_address_carries_it(client):
    answer = client.get("/cloth/slip", query_string=FIGURES)
    assert (answer.status_code, answer.location) == (303, ADDRESS)
    page = client.get(answer.location)
    assert page.status_code == 200
    for name, words in {"title": "Quince tree", "cut": "16 × 18 in", "finished": "10 × 12 in"}.items():
        assert slot(page.text, name) == words
    assert f'src="{ADDRESS.replace("slip?", "slip.svg?")}"' in unescape(page.text)
    assert 'name="s" value="' + TEXT in page.text


def test_without_figures_it_asks_for_them(client):
    page = client.get("/cloth/slip")
    assert page.status_code == 200
    assert "<img width" in page.text
    assert 'src="/cloth/slip.svg' not in page.text  # nothing to scan yet


@pytest.mark.parametrize(
    ("changed", "sentence"),
    [
        ({"width": "0"}, "Write stitches in digits, from 1 to 10,000."),
        ({"height": "tall"}, "Write stitches in digits, from 1 to 10,000."),
        ({"count": "500"}, "Write a count from 1 to 100, like 14 or 27.5."),
        ({"error": "7.1"}, "Write how far the count may be off, like 0.3: at most a quarter of it."),
        ({"error": "a bit"}, "Write how far the count may be off, like 0.3: at most a quarter of it."),
        ({"over": "3"}, "A slip is for stitches over one or two threads."),
        ({"title": "x" * 61}, "Shorten the name: it has 61 characters, and 60 fit."),
        ({"title": "two\nlines"}, "Keep the name to one line, without tabs or control characters."),
        ({"title": "\u200b"}, "Give a name that can be seen, or none."),
    ],
)
def test_what_cannot_be_meant_stays_typed_with_a_sentence_beside_it(client, changed, sentence):
    page = client.get("/cloth/slip", query_string=FIGURES | changed)
    assert page.status_code == 422
    assert sentence in unescape(page.text)
    assert 'value="168"' in page.text or "height" in changed


@pytest.mark.parametrize("text", ["", "x", TEXT[:-3], TEXT + "s", "<script>", "\x00", "ÿ" * 5000])
def test_a_damaged_or_foreign_slip_is_a_sentence_and_makes_nothing(app, client, alice, text):
    before = how_many(app, Account)
    for answer in (
        client.get("/cloth/slip", query_string={"s": text}),
        client.post("/cloth/slip", data={"s": text}),
        alice.post("/cloth/slip", data={"s": text}),
    ):
        assert answer.status_code == 422
        assert DAMAGED in answer.text or FOREIGN in answer.text
    assert (how_many(app, Project), how_many(app, Account)) == (0, before)


def test_markup_in_a_slip_is_text(client, alice):
    text = VECTORS["slips"][4]["text"]
    page = client.get("/cloth/slip", query_string={"s": text}).text
    assert "<b>a</b>" not in page
    assert "&lt;b&gt;a&lt;/b&gt;" in page
    made = alice.get(alice.post("/cloth/slip", data={"s": text}).location).text
    assert "<b>a</b>" not in made
    assert "&lt;b&gt;a&lt;/b&gt;" in made


def test_one_tap_makes_it_her_project_and_a_second_makes_no_other(app, alice):
    answers = [alice.post("/cloth/slip", data={"s": TEXT}) for _ in range(2)]
    assert {answer.status_code for answer in answers} == {303}
    assert answers[0].location == answers[1].location
    with app.app_context():
        (project,) = db.session.scalars(select(Project))
    plan = (project.title, project.width, project.height, project.count, project.over, project.frame)
    assert plan == ("Quince tree", 140, 168, 28.0, 2, "hand")
    assert "Quince tree" in alice.get(answers[0].location).text


UNEVEN = {"title": "Quince tree", "width": "120", "height": "80", "count": "14", "across": "13", "over": "1"}
UNEVEN |= {"finish": "framed", "held": "hand", "frays": "yes", "own": "2 1/4", "unit": "in", "error": "0.3"}


def test_a_project_made_of_a_slip_keeps_all_of_it_and_its_own_slip_is_the_same(alice):
    slip = alice.get("/cloth/slip", query_string=UNEVEN).location
    text = unescape(re.search('name="s" value="([^"]*)"', alice.get(slip).text).group(1))
    project = alice.post("/cloth/slip", data={"s": text}).location
    page = alice.get(project).text
    link = unescape(re.search(r'href="(/cloth/slip[^"]*)"', page).group(1))
    assert alice.get(link).location == slip
    size = slot(alice.get(slip).text, "finished")
    assert size == "8.57 × 6.15 in"  # 120 / 14 and 80 / 13 (by hand)
    assert size in page
    assert "14 count across, 13 down, over one" in page
    assert 'name="across" type="text" value="13"' in alice.get(f"{project}/edit").text


def test_a_count_measured_anew_has_another_error_than_the_old_one_s(alice):
    slip = alice.get("/cloth/slip", query_string=UNEVEN).location
    text = unescape(re.search('name="s" value="([^"]*)"', alice.get(slip).text).group(1))
    project = alice.post("/cloth/slip", data={"s": text}).location
    assert alice.post(project, data={"count": "16", "across": ""}).status_code == 303
    link = unescape(re.search(r'href="(/cloth/slip[^"]*)"', alice.get(project).text).group(1))
    page = alice.get(link, follow_redirects=True).text
    assert slot(page, "cloth") == "16 count, over one"
    assert slot(page, "why") == "your own, and ½ in that may fray"


def test_everyone_gets_a_project_of_her_own(alice, charlie):
    hers, his = (browser.post("/cloth/slip", data={"s": TEXT}).location for browser in (alice, charlie))
    assert hers != his
    assert charlie.get(hers).status_code == 404


def test_whoever_has_no_account_begins_with_it(app, client):
    answer = client.post("/cloth/slip", data={"s": TEXT, "zone": "Europe/Paris"})
    assert answer.status_code == 303
    assert "Quince tree" in client.get(answer.location).text
    with app.app_context():
        (account,) = db.session.scalars(select(Account))
    assert (account.zone, account.claimed) == ("Europe/Paris", False)
    assert client.post("/cloth/slip", data={"s": TEXT}).location == answer.location
    assert how_many(app, Account) == 1


def test_a_zone_that_is_none_does_not_keep_her_out(app, client):
    assert client.post("/cloth/slip", data={"s": TEXT, "zone": "Nowhere"}).status_code == 303
    with app.app_context():
        assert db.session.scalar(select(Account)).zone == "UTC"


def test_a_house_that_is_not_open_asks_her_to_sign_in_and_leads_back(config, alice):
    app = create_app(replace(config, sign_up="invite"))
    answer = browser_of(app).post("/cloth/slip", data={"s": TEXT})
    assert answer.status_code == 303
    assert answer.location.startswith("/sign-in?next=/cloth/slip?s%3D")
    assert how_many(app, Project) == 0


def test_another_site_cannot_make_projects(client, alice):
    headers = {"Sec-Fetch-Site": "cross-site"}
    assert alice.post("/cloth/slip", data={"s": TEXT}, headers=headers).status_code == 403


def test_a_project_has_its_slip(alice, new_project):
    project = new_project(alice, title="Quince tree " * 9, count=28, over=2, frame="scroll")
    link = unescape(re.search(r'href="(/cloth/slip[^"]*)"', alice.get(f"/projects/{project}").text).group(1))
    page = alice.get(link, follow_redirects=True)
    assert page.status_code == 200
    assert slot(page.text, "stitches") == "140 × 98 stitches"
    assert slot(page.text, "cloth") == "28 count, over two"
    assert slot(page.text, "night") == "Slacken the scroll frame every night."


def test_a_slip_without_a_title_is_named_by_its_size(alice):
    text = VECTORS["slips"][3]["text"]
    assert read(text).title == ""
    assert "31 × 30" in alice.get(alice.post("/cloth/slip", data={"s": text}).location).text
