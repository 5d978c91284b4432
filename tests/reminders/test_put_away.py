"""A project put away reminds of nothing; put away on its frame, its page says so once."""

import pytest

from tests.browser.phones import Stitcher, go
from tests.reminders.evening import BEDTIME, Evening
from tests.reminders.service import push_service
from tests.reminders.test_night_journey import zone_where_it_is

OFF = "is still on the hoop. Take it off for the night."


def put_away(client, project, away="yes"):
    return client.post(f"/projects/{project}/away", data={"away": away})


def said(client, address="/frame/banner"):
    return " ".join(client.get(address).text.split())


def test_it_works(alice, new_project, hold):
    project = new_project(alice)
    hold(alice, project, "on")
    assert OFF in said(alice)
    put_away(alice, project)
    assert said(alice) == ""
    put_away(alice, project, "no")
    assert OFF in said(alice)


def test_no_push_goes_out_for_it_and_for_the_others_one_does(app, config, alice, new_project, hold):
    away, other = new_project(alice), new_project(alice, title="Moth")
    hold(alice, away, "on")
    put_away(alice, away)
    with push_service() as service, app.app_context():
        evening = Evening.begin(config, service)
        evening.choose(show_title=True)
        browser = evening.subscribe()
        assert evening.round() == 0
        assert (evening.told(), browser.came) == ([], [])
        hold(alice, other, "on")
        assert evening.round(BEDTIME) == 1
        assert browser.came[0]["said"]["title"] == "Moth is still on the hoop."


@pytest.mark.parametrize(
    ("kind", "state", "words", "done"),
    [
        ("hoop", "on", "It is still on its frame.", "It is off"),
        ("clamps", "slack", "It is still on its frame.", "It is off"),
        ("scroll", "on", "It is still tight on its frame.", "It is slack"),
    ],
)
def test_put_away_on_its_frame_its_page_says_so_until_it_is_off(
    alice, new_project, hold, kind, state, words, done
):
    project = new_project(alice, frame=kind)
    hold(alice, project, state)
    answer = put_away(alice, project)
    assert (answer.status_code, answer.location) == (303, f"/projects/{project}?still=yes")
    page = said(alice, answer.location)
    assert f"{words} While it is put away, nothing reminds you of it." in page
    assert done in page
    assert words not in said(alice, f"/projects/{project}")
    asked = "slack" if kind == "scroll" else "off"
    back = {"Referer": f"http://localhost{answer.location}"}
    assert alice.post(f"/frame/{project}", data={"state": asked}, headers=back).location == answer.location
    assert words not in said(alice, answer.location)


@pytest.mark.parametrize(
    ("kind", "state"), [("hoop", "off"), ("scroll", "slack"), ("stretched", "on"), ("hand", "on")]
)
def test_put_away_as_it_may_stay_nothing_is_said(alice, new_project, hold, kind, state):
    project = new_project(alice, frame=kind)
    hold(alice, project, state)
    assert put_away(alice, project).location == "/projects"
    assert "still" not in said(alice, f"/projects/{project}?still=yes").split("<main")[1]


def test_a_phone_is_told_that_it_is_put_away(alice, new_project):
    project = new_project(alice)
    address = f"/projects/{project}/snapshot"
    first = alice.get(address).json["plan"]
    assert "away" not in first
    put_away(alice, project)
    put_away(alice, project)
    away = alice.get(address).json["plan"]
    assert (away["away"], away["revision"]) == (True, first["revision"] + 1)
    put_away(alice, project, "no")
    assert alice.get(address).json["plan"] == {**first, "revision": first["revision"] + 2}


def test_the_phone_says_nothing_of_it_either(context, server):
    alice = Stitcher.begin(context, server)
    settings = {"hand": "right", "unit": "in", "bedtime": "22:30", "week_start": "0"}
    alice.post("/account", zone=zone_where_it_is(23), **settings)
    alice.post(f"/frame/{alice.project}", state="on")
    page = context.new_page()
    go(page, f"{alice.url}/projects/{alice.project}")
    notice = page.locator(".tonight").get_by_text(OFF)
    notice.wait_for()
    page.get_by_role("button", name="Put away").click()
    page.wait_for_url("**/projects/*still=yes")
    page.get_by_text("nothing reminds you of it").wait_for()
    notice.wait_for(state="hidden")
    page.goto(f"{alice.url}/shell/tonight")
    page.get_by_text("Nothing this phone knows of is on a frame.").wait_for()
