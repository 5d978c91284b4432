"""Where she stopped: a photograph as a sitting ends, and back after a long absence."""

import pytest
from PIL import Image
from playwright.sync_api import expect

from tests.browser.phones import in_nobodys_way, until
from tests.stitching.conftest import ago

SITTING = "00000000-0000-7000-8000-00000000000a"
LOST = "net::ERR_INTERNET_DISCONNECTED"


@pytest.fixture
def work(tmp_path):
    """A photograph as a camera takes it."""
    Image.effect_noise((2600, 1300), 40).save(tmp_path / "work.jpg")
    return tmp_path / "work.jpg"


def end(desk, photograph, line=""):
    """Tap once, and end the sitting with a photograph."""
    desk.tap()
    desk.act("sitting")
    choose(desk.page, photograph)
    desk.page.get_by_label("Where I stopped").fill(line)
    desk.answer("End")


def choose(page, photograph):
    field = page.get_by_label("A photograph")
    field.set_input_files(photograph)
    until(page, lambda: field.evaluate("(field) => field.files[0].name") == "photograph.jpg")


def kept(desk):
    """Give what the house has of the last photograph."""
    return desk.page.request.get(f"{desk.server.url}/projects/{desk.id}/stopped.json").json()["photograph"]


def test_a_photograph_is_taken_as_a_sitting_ends_and_the_line_is_its_own(desk, work):
    page = desk.open()
    end(desk, work, "at the lamp")
    expect(page.locator(".say")).to_contain_text("The photograph is kept.")
    found = kept(desk)
    assert (found["line"], found["width"], found["height"]) == ("at the lamp", 1600, 800)
    assert desk.snapshot()["note"]["text"] == "at the lamp"
    page.goto(f"{desk.server.url}/projects/{desk.id}/story")
    expect(page.get_by_alt_text("at the lamp")).to_be_visible()


def test_a_sitting_ends_without_one_as_before(desk):
    page = desk.open()
    desk.tap()
    desk.act("sitting")
    expect(page.get_by_label("A photograph")).to_have_attribute("capture", "environment")
    desk.answer("End")
    desk.wait_for("sitting", "Begin")
    assert kept(desk) is None


def test_without_network_that_is_said_and_nothing_else_is_lost(desk):
    page = desk.open()
    desk.tap()
    desk.act("sitting")  # the sheet itself comes by network the first time, where no worker keeps it
    page.get_by_role("button", name="Close").click()
    page.context.set_offline(True)
    desk.act("sitting")
    expect(page.get_by_label("A photograph")).to_be_disabled()
    expect(page.get_by_text("This needs the network; its story takes one later.")).to_be_visible()
    page.get_by_label("Where I stopped").fill("at the lamp")
    desk.answer("End")
    desk.wait_for("sitting", "Begin")
    page.context.set_offline(False)
    assert desk.snapshot()["note"]["text"] == "at the lamp"
    desk.errors[:] = [said for said in desk.errors if LOST not in said]


@pytest.mark.parametrize("by_hand", [False, True])
def test_what_could_not_be_sent_is_held_and_goes_once_the_network_is_back(desk, work, by_hand):
    page = desk.open()
    desk.tap()
    desk.act("sitting")
    choose(page, work)
    page.get_by_label("Where I stopped").fill("at the lamp")
    page.route("**/photographs", lambda route: route.abort())
    desk.answer("End")
    line = page.locator(".say")
    expect(line).to_contain_text("No network: the photograph goes once it is back.")
    desk.wait_for("sitting", "Begin")
    page.unroute("**/photographs")
    if by_hand:
        line.get_by_role("button", name="Try again").click()
    else:
        page.evaluate("dispatchEvent(new Event('online'))")
    expect(line).to_contain_text("The photograph is kept.")
    assert kept(desk)["line"] == "at the lamp"
    page.goto(f"{desk.server.url}/projects/{desk.id}/story")
    expect(page.get_by_text("Delete it", exact=True)).to_have_count(1)
    desk.errors[:] = [said for said in desk.errors if "ERR_FAILED" not in said]


def test_what_is_no_picture_is_said_in_the_houses_words(desk, tmp_path):
    page = desk.open()
    (tmp_path / "work.jpg").write_bytes(b"no picture")
    desk.tap()
    desk.act("sitting")
    page.get_by_label("A photograph").set_input_files(tmp_path / "work.jpg")
    desk.answer("End")
    expect(page.get_by_text("That is no picture that can be read.")).to_be_visible()
    desk.wait_for("sitting", "Begin")
    desk.errors[:] = [said for said in desk.errors if "422" not in said]


def test_finished_with_a_photograph_she_comes_to_the_project_once_it_is_kept(desk, work):
    page = desk.open(frame="hand", state="finished")
    desk.tap()
    desk.snapshot()
    page.goto(f"{desk.server.url}/projects/{desk.id}")
    page.get_by_role("link", name="See to it").click()
    choose(page, work)
    desk.answer("End")
    page.wait_for_url(f"**/projects/{desk.id}")
    assert kept(desk) is not None


def test_finished_with_what_is_no_picture_she_stays_to_read_why_and_leaves_when_she_will(desk, tmp_path):
    page = desk.open(frame="hand", state="finished")
    (tmp_path / "work.jpg").write_bytes(b"no picture")
    desk.tap()
    desk.snapshot()
    page.goto(f"{desk.server.url}/projects/{desk.id}")
    page.get_by_role("link", name="See to it").click()
    page.get_by_label("A photograph").set_input_files(tmp_path / "work.jpg")
    desk.answer("End")
    expect(page.get_by_text("That is no picture that can be read.")).to_be_visible()
    assert page.url.endswith("#finished")
    desk.wait_for("sitting", "Begin")
    desk.errors[:] = [said for said in desk.errors if "422" not in said]


def test_at_rest_and_on_its_frame_it_asks_about_that_alone(desk):
    page = desk.open(frame="hoop", state="resting")
    desk.journal({"kind": "frame", "state": "on"})
    page.goto(f"{desk.server.url}/projects/{desk.id}")
    page.get_by_role("link", name="See to it").click()
    expect(page.get_by_role("heading", name="It rests")).to_be_visible()
    desk.answer("Off the frame")
    page.wait_for_url(f"**/projects/{desk.id}")
    expect(page.get_by_role("link", name="Say where you stopped")).to_be_visible()


def test_put_to_rest_while_a_sitting_runs_it_leads_to_the_same_question(desk):
    page = desk.open(frame="scroll")
    desk.tap()
    desk.snapshot()
    page.goto(f"{desk.server.url}/projects/{desk.id}")
    page.get_by_role("button", name="Resting").click()
    page.get_by_role("link", name="See to it").click()
    sheet = page.locator("dialog")
    expect(sheet).to_contain_text("Take it off the frame.")
    expect(sheet).to_contain_text("A photograph")
    desk.answer("End, off the frame")
    page.wait_for_url(f"**/projects/{desk.id}")
    page.get_by_role("link", name="Say where you stopped").click()
    page.get_by_label("Where you stopped").fill("at the lamp")
    page.get_by_role("button", name="Keep it").click()
    page.wait_for_url(f"**/projects/{desk.id}")
    assert (
        page.request.get(f"{desk.server.url}/projects/{desk.id}/snapshot").json()["note"]["text"]
        == "at the lamp"
    )


def test_on_a_usual_visit_nothing_of_it_is_asked_for(desk):
    desk.project()
    desk.journal({"kind": "stitches", "row": 1, "by": 5, "at": ago(days=2)})
    asked = []
    desk.page.on("request", lambda request: asked.append(request.url))
    page = desk.open()
    page.wait_for_timeout(500)
    assert [url for url in asked if "stopped" in url or "photograph" in url] == []


def test_neither_the_sheet_nor_the_page_stands_in_anyones_way(desk, work):
    page = desk.open(frame="clamps")
    page.set_viewport_size({"width": 360, "height": 640})
    desk.tap()
    desk.act("sitting")
    choose(page, work)
    expect(page.get_by_role("button", name="End, left on")).to_be_in_viewport(ratio=1)
    in_nobodys_way(page)
    desk.answer("Close")
    page.goto(f"{desk.server.url}/projects/{desk.id}/stopped")
    in_nobodys_way(page)
    page.get_by_label("Where you stopped").fill("at the lamp")
    page.context.set_offline(True)
    page.get_by_role("button", name="Keep it").click()
    expect(page.get_by_text("No network: nothing was sent.")).to_be_visible()
    page.context.set_offline(False)
    page.get_by_role("button", name="Keep it").click()
    page.wait_for_url(f"**/projects/{desk.id}")
    desk.errors[:] = [said for said in desk.errors if LOST not in said]
