"""A project's page, and changing it."""

from uuid import uuid4

import pytest

from webapp.db import db
from webapp.projects.models import Project


def load(app, project):
    with app.app_context():
        return db.session.scalars(db.select(Project).where(Project.id == project)).one()


def change(browser, project, **fields):
    return browser.post(f"/projects/{project}", data=fields)


def lay(browser, project, **place):
    entry = {"id": str(uuid4()), "kind": "stitches", "project": str(project), "by": 7, **place}
    sent = {"sent_at": "2026-02-03T20:00:00.000Z", "entries": [entry | {"at": "2026-02-03T20:00:00.000Z"}]}
    assert browser.post("/journal", json=sent).json["accepted"] == [entry["id"]]


def test_it_works(alice, new_project):
    project = new_project(alice)
    page = alice.get(f"/projects/{project}").text
    assert "<bdi>Harbour lanterns</bdi>" in page
    assert "140 × 98 stitches" in page
    assert "10 × 7 in" in page  # 140 and 98 over 14, by hand
    assert "14 count, over one" in page
    assert f'href="/projects/{project}/stitch"' in page


def test_the_size_is_in_her_unit(app, alice, new_project):
    project = new_project(alice)
    with app.app_context():
        from webapp.accounts.models import Account

        db.session.execute(db.update(Account).values(unit="cm"))
        db.session.commit()
    assert "25.4 × 17.8 cm" in alice.get(f"/projects/{project}").text


# 49 over 8 is 6.125, a half; 77 over 64 over two is 2.40625; by hand. 0.254 mm is less than a tenth of a cm.
@pytest.mark.parametrize(
    ("width", "height", "count", "over", "inches", "centimetres"),
    [
        (49, 77, 8, 1, "6.13 × 9.63 in", "15.6 × 24.4 cm"),
        (77, 7, 64, 2, "2.41 × 0.22 in", "6.1 × 0.6 cm"),
        (10_000, 5_000, 4, 1, "2,500 × 1,250 in", "6,350 × 3,175 cm"),
        (1, 10_000, 100, 1, "0.01 × 100 in", "under 0.1 × 254 cm"),
    ],
)
def test_every_page_says_one_size_of_a_design(
    alice, new_project, width, height, count, over, inches, centimetres
):
    """The project's own, the bench's, which says both units, and the gauge's, of cloth as it is planned."""
    plan = {"width": width, "height": height, "count": count, "over": over}
    project = new_project(alice, **plan)
    assert inches in alice.get(f"/projects/{project}").text
    bench = alice.get("/cloth/size", query_string=plan).text
    assert f'data-slot="finished">{inches}</b>' in bench
    assert f'data-slot="finished-other">{centimetres}</span>' in bench
    alice.post("/account", data={"unit": "cm", "zone": "UTC", "hand": "right", "week_start": "0"})
    assert centimetres in alice.get(f"/projects/{project}").text
    if 6 <= count <= 50:  # what the gauge measures
        assert f"on such a cloth, {centimetres}" in alice.get(f"/cloth/gauge/projects?count={count}").text


def test_work_already_on_the_cloth_is_asked_for_while_there_is_none(alice, new_project):
    project = new_project(alice)
    assert f'href="/projects/{project}/stitch#already"' in alice.get(f"/projects/{project}").text
    lay(alice, project, row=1)
    assert "#already" not in alice.get(f"/projects/{project}").text


def test_a_change_raises_the_plans_revision_by_one(app, alice, new_project):
    project = new_project(alice)
    answer = change(alice, project, title="Quince tree", width="90", height="120", count="28", over="2")
    assert (answer.status_code, answer.location) == (303, f"/projects/{project}")
    now = load(app, project)
    assert (now.title, now.width, now.height, now.count, now.over, now.plan_revision) == (
        "Quince tree", 90, 120, 28.0, 2, 2,
    )  # fmt: skip


def test_a_change_of_nothing_leaves_the_revision(app, alice, new_project):
    project = new_project(alice)
    change(alice, project, title="Harbour lanterns", width="140")
    change(alice, project)
    assert load(app, project).plan_revision == 1


def test_what_is_not_sent_stays(app, alice, new_project):
    project = new_project(alice, working="blocks", expected="120", frame="hand")
    change(alice, project, title="Quince tree")
    now = load(app, project)
    assert (now.working, now.expected, now.frame, now.height) == ("blocks", 120, "hand", 98)


def test_what_is_sent_blank_is_taken_out(app, alice, new_project):
    project = new_project(alice, expected="120")
    change(alice, project, expected="")
    assert load(app, project).expected is None


def test_a_start_that_follows_from_the_size_goes_on_following(app, alice, new_project):
    project = new_project(alice, direction="middle", start_way="left")
    change(alice, project, width="90", height="60")
    now = load(app, project)
    assert (now.first_row, now.start_column) == (30, 90)


@pytest.mark.parametrize(
    ("fields", "sentence"),
    [
        ({"title": " "}, "Give the project a title"),
        ({"width": "1.0"}, "in digits only"),
        ({"height": "19"}, "19 rows"),
        ({"width": "49"}, "49 columns"),
        ({"first_row": "99"}, "98 rows"),
        ({"state": "lost"}, "Choose one"),
        ({"count": "many"}, "from 1 to 100"),
    ],
)
def test_a_wrong_change_changes_nothing(app, alice, new_project, fields, sentence):
    project = new_project(alice, first_row=20, start_column=50)
    answer = change(alice, project, **{"frame": "hand"} | fields)
    assert answer.status_code == 422
    assert sentence in answer.text
    now = load(app, project)
    assert (now.title, now.width, now.height, now.frame, now.plan_revision) == (
        "Harbour lanterns", 140, 98, "hoop", 1,
    )  # fmt: skip


def test_the_form_shows_what_is_there(alice, new_project):
    project = new_project(alice, count="13.72", expected="130", working="blocks", step="ten")
    page = alice.get(f"/projects/{project}/edit").text
    for part in ('value="13.72"', 'value="130"', 'value="blocks" checked', 'value="ten" checked'):
        assert part in page


def test_a_size_below_the_work_warns_and_loses_nothing(alice, new_project):
    project = new_project(alice)
    lay(alice, project, row=98)
    lay(alice, project, block=[14, 1])
    assert "loses none of it" in alice.get(f"/projects/{project}/edit").text
    assert change(alice, project, width="100", height="50").status_code == 303
    page = alice.get(f"/projects/{project}").text
    assert "1 row and 1 block you worked lie outside this size" in page
    assert "14 stitches" in page
    change(alice, project, width="140", height="98")
    assert "outside this size" not in alice.get(f"/projects/{project}").text
    snapshot = alice.get(f"/projects/{project}/snapshot").json
    assert snapshot["rows"]["98"]["stitches"] == snapshot["blocks"]["14.1"]["stitches"] == 7


def test_put_away_and_taken_out(app, alice, new_project):
    project = new_project(alice)
    answer = alice.post(f"/projects/{project}/away", data={"away": "yes"})
    assert (answer.status_code, answer.location) == (303, "/projects")
    first = load(app, project).put_away
    alice.post(f"/projects/{project}/away")
    assert load(app, project).put_away == first
    assert "Take it out" in alice.get(f"/projects/{project}").text
    answer = alice.post(f"/projects/{project}/away", data={"away": "no"})
    assert (answer.status_code, answer.location) == (303, f"/projects/{project}")
    assert load(app, project).put_away is None


def test_away_is_yes_or_no(app, alice, new_project):
    project = new_project(alice)
    answer = alice.post(f"/projects/{project}/away", data={"away": "perhaps"})
    assert answer.status_code == 422
    assert "Choose whether to put it away" in answer.text
    assert load(app, project).put_away is None


ADDRESSES = [
    ("get", ""), ("post", ""), ("get", "/edit"), ("get", "/state"), ("post", "/state"), ("post", "/away"),
]  # fmt: skip


@pytest.mark.parametrize(("method", "address"), ADDRESSES)
def test_charlie_finds_nothing_of_hers(app, alice, charlie, new_project, method, address):
    project = new_project(alice)
    answer = getattr(charlie, method)(
        f"/projects/{project}{address}", data={"title": "Mine", "state": "resting"}
    )
    assert answer.status_code == 404
    assert "Harbour lanterns" not in answer.text
    now = load(app, project)
    assert (now.title, now.state, now.put_away) == ("Harbour lanterns", "planned", None)


@pytest.mark.parametrize("name", ["nothing", "1", "' OR 1=1", "570af072-0de3-40f0-b03b-d362859d226f"])
def test_what_is_not_there_is_not_found(alice, name):
    assert alice.get(f"/projects/{name}").status_code == 404
