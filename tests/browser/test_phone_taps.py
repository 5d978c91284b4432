"""Nothing tapped is lost or doubled: fast, on two pages or phones, answers lost, the power cut."""

import os
import signal
from itertools import pairwise
from pathlib import Path

import pytest

from tests.browser.phones import (
    FOLLOW,
    PASSPHRASE,
    Stitcher,
    go,
    is_kept,
    lay,
    painted,
    shown,
    tap_on,
    touch,
    until,
    waiting,
)
from tests.house import FLAGS


def test_two_hundred_taps_as_fast_as_they_come(alice):
    page = alice.open()
    touch(page, 20)
    tap_on(page, 180)
    assert painted(page) == 200
    until(page, lambda: waiting(page) == 0)
    assert painted(page) == 200
    assert alice.on_the_server() == 200
    assert alice.sums()["revision"] >= 200


SLOW_TO_WAKE = """for (const name of ["open", "has", "match"]) {
  const own = CacheStorage.prototype[name];
  CacheStorage.prototype[name] = async function (...given) {
    await new Promise((done) => setTimeout(done, 1500));
    return own.apply(this, given);
  };
}"""


def test_a_tap_before_the_page_has_come_to_life_counts(alice, context):
    page = context.new_page()
    page.add_init_script(SLOW_TO_WAKE)
    page.goto(f"{alice.url}/projects/{alice.project}/stitch", wait_until="commit")
    page.locator("[data-act=tap]").wait_for()
    page.wait_for_timeout(400)
    touch(page, 3)
    assert page.locator("[data-live][data-island=stitch]").count() == 0
    until(page, lambda: painted(page) == 3)
    until(page, lambda: alice.on_the_server() == 3)


def test_taps_are_kept_when_the_answer_is_lost(alice, context):
    page = alice.open()
    lost = []

    def lose(route):
        route.fetch()
        lost.append(route.request.post_data_json["entries"])
        route.abort("connectionreset")

    context.route("**/journal", lose, times=2)
    for _ in range(3):
        lay(page, alice.project)
    until(page, lambda: len(lost) == 1)
    assert alice.on_the_server() == 3
    assert (shown(page, alice.project), waiting(page)) == (3, 3)
    lay(page, alice.project)
    go(page, page.url)  # the page comes with a snapshot that holds them already
    assert painted(page) == 4
    until(page, lambda: painted(page) == 4 and alice.on_the_server() == 4)
    assert alice.sums()["revision"] == 4


def test_a_number_never_drops_or_jumps_on_its_way(alice, context):
    page = alice.open()
    page.evaluate(FOLLOW, alice.project)
    for _ in range(30):
        lay(page, alice.project)
        page.wait_for_timeout(60)
    until(page, lambda: waiting(page) == 0)
    seen = page.evaluate("seen")
    assert seen == sorted(seen), seen
    assert {b - a for a, b in pairwise(seen)} <= {0, 1}


def test_two_pages_of_one_phone_show_the_same(alice):
    one, other = alice.open(), alice.open()
    for page in (one, other, one):
        lay(page, alice.project)
    until(one, lambda: shown(one, alice.project) == shown(other, alice.project) == 3)
    until(one, lambda: waiting(one) + waiting(other) == 0)
    assert shown(one, alice.project) == shown(other, alice.project) == alice.on_the_server() == 3


def test_two_phones_agree(alice, new_context):
    one, other = alice.open(), alice.sign_in_on(new_context()).open()
    for page in (one, other):
        lay(page, alice.project)
    until(one, lambda: alice.on_the_server() == 2)
    for page in (one, other):
        page.evaluate("document.dispatchEvent(new Event('visibilitychange'))")
        until(page, lambda page=page: shown(page, alice.project) == 2)


def test_a_page_that_dies_in_the_middle_of_a_tap_loses_none(alice, browser):
    page = alice.open()
    tap_on(page, 60)
    before = painted(page)
    running = browser.new_browser_cdp_session().send("SystemInfo.getProcessInfo")["processInfo"]
    with page.expect_event("crash"):
        for process in running:
            if process["type"] == "renderer":
                os.kill(process["id"], signal.SIGKILL)
    page.close()
    again = alice.open()
    until(again, lambda: painted(again) == alice.on_the_server() == before == 60)


@pytest.fixture
def launch(browser_type, chromium_path, tmp_path, browser_context_args):
    """Start a browser that keeps what it keeps on the disk, as a phone does."""

    def start():
        return browser_type.launch_persistent_context(
            tmp_path / "phone", executable_path=chromium_path, args=FLAGS, **browser_context_args
        )

    return start


def kill(folder: Path) -> None:
    """End that browser as a flat battery does."""
    for process in Path("/proc").glob("[0-9]*"):
        try:
            if str(folder).encode() in (process / "cmdline").read_bytes():
                os.kill(int(process.name), signal.SIGKILL)
        except OSError:
            continue


def test_two_hundred_taps_without_network_and_the_power_cut_in_the_middle(launch, server, tmp_path):
    context = launch()
    her = Stitcher.begin(context, server)
    page = her.open()
    until(page, lambda: is_kept(page))
    context.set_offline(True)
    tap_on(page, 100)
    touch(page, 20)
    before = painted(page)
    assert before == 120
    until(page, lambda: not page.evaluate("phone.isHeldUp()"))  # the disk takes its milliseconds
    kill(tmp_path / "phone")

    context = launch()
    context.set_offline(True)
    her.context = context
    page = her.open()
    until(page, lambda: painted(page) == before)
    tap_on(page, 80)
    assert painted(page) == 200
    context.set_offline(False)
    her.post("/sign-in", name=her.name, passphrase=PASSPHRASE)  # a browser killed so soon forgets its cookie
    page.evaluate("dispatchEvent(new Event('online'))")
    until(page, lambda: waiting(page) == 0)
    assert painted(page) == her.on_the_server() == 200
    context.close()


def test_without_network_another_page_of_the_phone_shows_what_is_tapped_on_this_one(alice, context):
    first, second = alice.open(), alice.open()
    until(first, lambda: is_kept(first))
    context.set_offline(True)
    tap_on(first, 7)
    until(second, lambda: painted(second) == 7)
    tap_on(second, 2)
    until(first, lambda: painted(first) == 9)
    context.set_offline(False)
    for page in (first, second):
        page.evaluate("phone.send()")
    until(first, lambda: alice.on_the_server() == 9)


def test_a_page_left_on_a_row_says_that_it_was_closed_on_another(alice):
    first, second = alice.open(), alice.open()
    tap_on(first, 3)
    until(second, lambda: painted(second) == 3)
    first.click("[data-act=done]")
    until(second, lambda: "Row 2 is in hand elsewhere." in second.inner_text(".say"))
    tap_on(second, 1)
    until(second, lambda: "Row 1 was done. It is open again." in second.inner_text(".say"))
