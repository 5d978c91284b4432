"""Back after a long absence: what counts as one, and what of it this phone keeps."""

from uuid import UUID

import pytest
from playwright.sync_api import expect

from tests.browser.phones import Stitcher, in_nobodys_way, is_kept, until
from tests.hours.test_pictures import picture
from tests.stitching.away import SITTING, away
from tests.stitching.conftest import ago

STOPPED = "Where I stopped"


def long_ago(desk, *more):
    """Let her have stitched twenty days ago, and done since what was no stitching."""
    desk.project()
    desk.journal(
        {"kind": "begin", "id": SITTING, "at": ago(days=20, minutes=9)},
        {"kind": "stitches", "row": 37, "by": 52, "at": ago(days=20, minutes=5)},
        *more,
    )


ENDED = {"kind": "end", "sitting": SITTING, "at": ago(days=20)}
NO_STITCHING = {
    "times put right": {
        "kind": "amend",
        "sitting": SITTING,
        "begin": ago(days=20, minutes=30),
        "end": ago(days=20),
        "at": ago(minutes=5),
    },
    "thread ticked": {"kind": "have", "thread": "Red", "have": True, "at": ago(minutes=5)},
    "off the frame": {"kind": "frame", "state": "off", "at": ago(minutes=5)},
    "said at rest": {"kind": "end", "sitting": str(UUID(int=7)), "note": "lamp next", "at": ago(minutes=5)},
}


@pytest.mark.parametrize("entry", NO_STITCHING.values(), ids=NO_STITCHING)
def test_what_is_no_stitching_is_not_being_there(desk, entry):
    long_ago(desk, ENDED, entry)
    expect(desk.open().get_by_role("heading", name=STOPPED)).to_be_visible()


def test_more_threads_ticked_than_the_phone_knows_entries_hide_no_absence(desk):
    ticked = [
        {"kind": "have", "thread": f"Red {n}", "have": True, "at": ago(minutes=n + 1)} for n in range(60)
    ]
    long_ago(desk, ENDED, *ticked)
    expect(desk.open().get_by_role("heading", name=STOPPED)).to_be_visible()


@pytest.mark.parametrize("by", ["stitches", "undo"])
def test_a_stitch_or_one_taken_back_is_being_there(desk, by):
    long_ago(desk, ENDED)
    page = desk.open()
    desk.answer("Yes, it is")
    desk.act("undo") if by == "undo" else desk.tap()
    desk.snapshot()
    desk.open()
    page.wait_for_timeout(500)
    expect(page.get_by_role("heading", name=STOPPED)).to_have_count(0)


@pytest.mark.parametrize("answer", ["It ended", "It is still going on"])
def test_a_sitting_left_running_is_asked_about_first_then_where_she_stopped(desk, answer):
    long_ago(desk)
    page = desk.open()
    expect(page.get_by_role("heading", name="A sitting is still running")).to_be_visible()
    page.locator("dialog").get_by_role("button", name=answer).click()
    expect(page.get_by_role("heading", name=STOPPED)).to_be_visible()


def come_back(page, days):
    page.clock.fast_forward(days * 86_400_000)
    page.evaluate("document.dispatchEvent(new Event('visibilitychange'))")


def test_a_page_kept_open_for_weeks_says_it_once_as_it_is_seen_again(desk):
    desk.project()
    desk.journal({"kind": "stitches", "row": 37, "by": 52, "at": ago(minutes=5)})
    desk.page.clock.install()
    page = desk.open()
    heading = page.get_by_role("heading", name=STOPPED)
    come_back(page, 13)
    page.wait_for_timeout(500)
    expect(heading).to_have_count(0)
    come_back(page, 7)
    expect(heading).to_be_visible()
    desk.answer("Yes, it is")
    come_back(page, 1)
    page.wait_for_timeout(500)
    expect(heading).to_have_count(0)


def test_a_page_kept_open_asks_the_house_first_whether_she_stitched_elsewhere(desk):
    desk.project()
    desk.journal({"kind": "stitches", "row": 37, "by": 52, "at": ago(minutes=5)})
    desk.page.clock.install()
    page = desk.open()
    desk.journal({"kind": "stitches", "row": 37, "by": 1, "at": ago(days=-20, minutes=5)})
    come_back(page, 20)
    desk.wait_for("row_stitches", 53)
    page.wait_for_timeout(500)
    expect(page.get_by_role("heading", name=STOPPED)).to_have_count(0)


@pytest.mark.parametrize("sits", [False, True])
def test_put_to_rest_and_left_on_its_frame_it_offers_a_line_and_a_photograph_all_the_same(desk, sits):
    page = desk.open(frame="hoop")
    desk.journal({"kind": "frame", "state": "on"})
    if sits:
        desk.tap()
        desk.snapshot()
    page.goto(f"{desk.server.url}/projects/{desk.id}")
    page.get_by_role("button", name="Resting").click()
    page.get_by_role("link", name="See to it").click()
    desk.answer("End, left on" if sits else "Left on")
    page.wait_for_url(f"**/projects/{desk.id}")
    expect(page.get_by_text("The work is still on its frame.")).to_be_visible()
    in_nobodys_way(page)
    page.get_by_role("link", name="Say where you stopped").click()
    expect(page.get_by_label("Where you stopped")).to_be_visible()


KEPT = """async () => {
  const name = (await caches.keys()).find((name) => name.startsWith('evenrow-pages-'));
  const kept = name ? await (await caches.open(name)).keys() : [];
  return kept.map(({ url }) => new URL(url).pathname).filter((path) => /stopped.json|photographs/.test(path));
}"""


@pytest.mark.browser_context_args(service_workers="allow")
def test_looking_through_her_hours_pushes_nothing_out_of_what_helps_her_back_in(context, server):
    her = Stitcher.begin(context, server)
    away(her)
    page = her.open()
    expect(page.get_by_alt_text("The lamp post, second thread")).to_be_visible()
    until(page, lambda: is_kept(page))
    before = page.evaluate(KEPT)
    assert len(before) == 2
    pages = """async () => {
      const name = (await caches.keys()).find((name) => name.startsWith('evenrow-pages-'));
      return (await (await caches.open(name)).keys()).filter(({ url }) => url.includes('/hours?')).length;
    }"""
    for week in range(62):
        page.goto(f"{her.url}/hours?week={2024 + week // 52}-W{week % 52 + 1:02}")
    until(page, lambda: page.evaluate(pages) == 60)  # and no more: the newest are kept
    assert page.evaluate(KEPT) == before


def test_of_sixty_projects_that_is_kept_and_of_the_one_asked_about_longest_ago_no_more(context, server):
    her = Stitcher.begin(context, server)
    away(her)
    page = her.open()
    expect(page.get_by_alt_text("The lamp post, second thread")).to_be_visible()
    assert len(page.evaluate(KEPT)) == 2
    others = """async ([helps, other]) => {
      const base = document.querySelector('script[src$="app.js"]').src.replace('app.js', '');
      const cache = await caches.open(`evenrow-pages-${phone.account}`);
      const name = (n) => `/projects/00000000-0000-7000-8000-0000000000${n}/stopped.json`;
      for (let n = 10; n < 69; n++) await cache.put(name(n), new Response('{}'));
      await (await import(base + helps)).remember({ project: other, phone });
    }"""
    page.evaluate(others, ["stitching/helps.js", her.project])  # asked about again: the newest
    assert len(page.evaluate(KEPT)) == 61
    page.evaluate(others, ["stitching/helps.js", her.new_project("Quince tree")])
    kept = page.evaluate(KEPT)
    assert len(kept) == 60
    assert not [path for path in kept if her.project in path]


@pytest.mark.parametrize("where", ["stopped", "story"])
def test_a_photograph_taken_on_a_page_is_kept_for_where_there_is_no_network(context, server, where):
    her = Stitcher.begin(context, server)
    page = context.new_page()
    page.goto(f"{her.url}/projects/{her.project}/{where}")
    if where == "story":
        page.get_by_text("Add a photograph").click()
    file = {"name": "work.jpg", "mimeType": "image/jpeg", "buffer": picture(size=(640, 480))}
    page.get_by_label("Picture").set_input_files(file)
    page.get_by_role("button", name="Keep it").click()
    page.wait_for_url(f"**/projects/{her.project}" + ("/story" if where == "story" else ""))
    until(page, lambda: len(page.evaluate(KEPT)) == 2)
    if where == "stopped":
        return
    page.get_by_text("Delete it", exact=True).click()
    page.get_by_role("button", name="Delete this photograph for good").click()
    until(page, lambda: len(page.evaluate(KEPT)) == 1)
