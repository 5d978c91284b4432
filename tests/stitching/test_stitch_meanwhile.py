"""A sheet is open about a sitting, and meanwhile it is ended or moved elsewhere."""

import pytest
from playwright.sync_api import expect

from tests.browser.phones import until
from tests.hours.test_pictures import picture
from tests.stitching.conftest import ago

SITTING = "00000000-0000-7000-8000-00000000000a"
ENDED = {"kind": "end", "sitting": SITTING}
MOVED = {"kind": "amend", "sitting": SITTING, "struck": True}
SAID = "It was ended or moved meanwhile."


def asked(desk, line=""):
    """Open the sheet that asks where she stopped, in a sitting whose work is on its hoop."""
    desk.project(frame="hoop")
    desk.journal(
        {"kind": "begin", "id": SITTING, "at": ago(minutes=35)},
        {"kind": "frame", "state": "on", "at": ago(minutes=35)},
        {"kind": "stitches", "row": 1, "by": 20, "at": ago(minutes=10)},
    )
    page = desk.open()
    desk.act("sitting")
    page.get_by_label("Where I stopped").fill(line)
    return page


def heard(desk, *entries):
    """Let another phone of hers lay entries, and this page hear of it."""
    desk.journal(*entries)
    desk.page.evaluate("dispatchEvent(new Event('online'))")
    desk.wait_for("sitting", "Begin")


@pytest.mark.parametrize("entry", [ENDED, MOVED])
def test_ended_elsewhere_while_she_is_asked_where_she_stopped_her_line_and_the_frame_are_kept(desk, entry):
    page = asked(desk, "lamp next")
    heard(desk, entry)
    desk.answer("End, off the frame")
    expect(page.locator("dialog")).to_have_count(0)
    found = desk.snapshot()
    assert (found["note"]["text"], found["frame"]["state"], found["sitting"]) == ("lamp next", "off", None)
    said = next(one for one in found["tail"] if one.get("note"))
    assert said["sitting"] != SITTING, "it keeps the end it was given elsewhere"


def test_what_was_ended_elsewhere_is_not_paused_and_that_is_said(desk):
    page = asked(desk)
    heard(desk, ENDED)
    desk.answer("Pause")
    expect(page.locator("dialog")).to_have_count(0)
    expect(page.locator(".say")).to_contain_text(SAID)
    assert [entry["kind"] for entry in desk.snapshot()["tail"]].count("end") == 1


def left_running(desk, *taps):
    """Come back to a sitting that was left running; gives the page, with the sheet that asks about it."""
    desk.project()
    desk.journal({"kind": "begin", "id": SITTING, "at": ago(hours=9)}, *taps)
    page = desk.open()
    page.get_by_role("heading", name="A sitting is still running").wait_for()
    return page


@pytest.mark.parametrize("entry", [ENDED, MOVED])
def test_the_sheet_about_a_sitting_left_running_goes_once_it_is_ended_or_moved_elsewhere(desk, entry):
    page = left_running(desk, {"kind": "stitches", "row": 1, "by": 30, "at": ago(hours=8)})
    heard(desk, entry)
    expect(page.locator("dialog")).to_have_count(0)
    expect(page.locator(".say")).to_contain_text(SAID)


@pytest.mark.parametrize("is_tapped", [True, False])
def test_what_this_phone_has_not_heard_of_yet_it_asks_before_it_puts_times_right(desk, is_tapped):
    page = left_running(desk, *[{"kind": "stitches", "row": 1, "by": 30, "at": ago(hours=8)}] * is_tapped)
    desk.journal(MOVED)
    page.locator("dialog .main").click()
    expect(page.locator(".say")).to_contain_text(SAID)
    expect(page.locator("dialog")).to_have_count(0)
    assert [entry["kind"] for entry in desk.snapshot()["tail"]].count("amend") == 1


def test_where_the_house_does_not_answer_it_is_put_right_by_what_the_phone_knows(desk):
    page = left_running(desk, {"kind": "stitches", "row": 1, "by": 30, "at": ago(hours=8)})
    page.route("**/snapshot?*", lambda route: route.abort())
    page.locator("dialog .main").click()
    desk.wait_for("sitting", "Begin")
    expect(page.locator("dialog")).to_have_count(0)
    expect(page.get_by_text(SAID)).to_have_count(0)
    assert desk.snapshot()["tail"][-1]["kind"] == "amend"
    desk.errors[:] = [said for said in desk.errors if "ERR_FAILED" not in said]


@pytest.mark.parametrize("kept", [True, False])
def test_she_is_asked_before_she_leaves_a_photograph_that_is_on_its_way_and_not_after(desk, tmp_path, kept):
    (tmp_path / "work.jpg").write_bytes(picture() if kept else b"no picture")
    page = asked(desk)
    page.get_by_label("A photograph").set_input_files(tmp_path / "work.jpg")
    held, told = [], []
    page.route("**/photographs", lambda route: held.append(route))
    page.on("dialog", lambda dialog: (told.append(dialog.type), dialog.dismiss()))
    desk.answer("End, left on")
    until(page, lambda: held)
    page.evaluate("location.assign('/hours')")
    until(page, lambda: told == ["beforeunload"])
    assert page.url.endswith("/stitch")
    held[0].continue_()
    expect(page.locator(".say")).to_contain_text(
        "is kept." if kept else "That is no picture that can be read."
    )
    page.goto(f"{desk.server.url}/hours")
    assert told == ["beforeunload"]
    desk.errors[:] = [said for said in desk.errors if "422" not in said]


def test_what_would_break_her_line_or_cannot_be_kept_costs_neither_the_line_nor_the_photograph(
    desk, tmp_path
):
    (tmp_path / "work.jpg").write_bytes(picture())
    page = asked(desk)
    page.get_by_label("A photograph").set_input_files(tmp_path / "work.jpg")
    pasted = r"'\tlamp \tnext\u2028\u2029row\u0085two\0\ud800, half'"
    page.get_by_label("Where I stopped").evaluate(f"(field) => {{ field.value = {pasted}; }}")
    desk.answer("End, left on")
    expect(page.locator(".say")).to_contain_text("The photograph is kept.")
    found = desk.snapshot()
    assert (found["note"]["text"], found["sitting"]) == ("lamp next row two, half", None)
    house = page.request.get(f"{desk.server.url}/projects/{desk.id}/stopped.json").json()
    assert house["photograph"]["line"] == "lamp next row two, half"
