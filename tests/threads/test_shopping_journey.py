"""The shopping list in a shop: ticked without network, agreed on two phones, sent as text, printed."""

from dataclasses import dataclass

import pytest

from tests.browser.phones import Stitcher, complaints, in_nobodys_way, is_kept, until
from tests.threads.stashed import keep, legend, line

LIVE = "[data-shopping][data-live]"


@dataclass
class Shopper:
    """A stitcher with a list for two projects."""

    her: Stitcher
    jug: str

    @property
    def address(self) -> str:
        """Give the list's address."""
        return f"{self.her.url}/thread/shopping?project={self.her.project}&project={self.jug}"

    def had(self) -> list[dict[str, bool]]:
        """Tell what the house has ticked, by project."""
        latest = [self.her.sums(project)["latest"] for project in (self.her.project, self.jug)]
        return [{key[5:]: held[2] for key, held in one.items() if key.startswith("have ")} for one in latest]


@pytest.fixture(scope="session")
def browser_context_args(browser_context_args):
    """With the worker: the list opens without network."""
    return {**browser_context_args, "service_workers": "allow"}


@pytest.fixture
def alice(context, server) -> Shopper:
    """Two projects, with three threads between them."""
    her = Stitcher.begin(context, server)
    jug = her.new_project("Blue jug")
    legend(server.books, her.project, line("Moss 12", 2600, colour="#556b2f"), line("Plum", 300, kind="silk"))
    legend(server.books, jug, line("MOSS 12", 1500), line("Walnut 9", 300))
    keep(server.books, jug, "Walnut 9", 0.01, lot="8B")
    return Shopper(her, jug)


def open_list(alice, context=None):
    page = (context or alice.her.context).new_page()
    page.goto(alice.address)
    page.wait_for_selector(LIVE)
    return page


def names(page, which="To buy"):
    return page.get_by_role("list", name=which).locator("b bdi").all_inner_texts()


def box(page, name):
    return page.get_by_role("checkbox", name=name)


def test_it_is_ticked_without_network_and_agreed_after_the_sync_on_two_phones(alice, server, new_context):
    page = open_list(alice)
    until(page, lambda: is_kept(page))
    page.reload()
    page.wait_for_selector(LIVE)
    second = alice.her.sign_in_on(new_context())
    other = open_list(alice, second.context)
    assert names(other) == ["Moss 12", "Plum", "Walnut 9"]

    alice.her.context.set_offline(True)
    page.goto(alice.address)  # opened anew, in a shop without reception
    page.wait_for_selector(LIVE)
    box(page, "Moss 12").tap()
    box(page, "Plum").tap()
    until(page, lambda: names(page, "Ticked") == ["Moss 12", "Plum"])
    box(page, "Plum").tap()  # that was the wrong one
    until(page, lambda: names(page) == ["Plum", "Walnut 9"])
    page.goto(alice.address)
    page.wait_for_selector(LIVE)
    assert names(page, "Ticked") == ["Moss 12"], "it is kept on this phone"
    assert names(other) == ["Moss 12", "Plum", "Walnut 9"], "the other phone knows nothing of it yet"

    alice.her.context.set_offline(False)
    page.evaluate("dispatchEvent(new Event('online'))")
    until(page, lambda: alice.had() == [{"Moss 12": True, "Plum": False}, {"MOSS 12": True}])
    other.evaluate("dispatchEvent(new Event('focus'))")
    until(other, lambda: names(other, "Ticked") == ["Moss 12"])
    box(other, "Walnut 9").tap()
    until(other, lambda: alice.had()[1].get("Walnut 9"))
    page.evaluate("dispatchEvent(new Event('focus'))")
    until(page, lambda: names(page, "Ticked") == names(other, "Ticked") == ["Moss 12", "Walnut 9"])
    assert names(page) == names(other) == ["Plum"]
    assert server.audit() == "No difference."


def test_a_tick_is_one_act_with_an_entry_for_each_project_that_needs_it(alice):
    page = open_list(alice)
    box(page, "Moss 12").tap()
    until(page, lambda: alice.had() == [{"Moss 12": True}, {"MOSS 12": True}])
    tails = [alice.her.sums(project)["tail"] for project in (alice.her.project, alice.jug)]
    assert [[entry["kind"] for entry in tail] for tail in tails] == [["have"], ["have"]]
    assert tails[0][0]["act"] == tails[1][0]["act"]


def test_a_tick_made_before_the_page_is_alive_is_kept(alice):
    context = alice.her.context
    context.route("**/shopping_page.js", lambda route: page.wait_for_timeout(500) or route.continue_())
    page = context.new_page()
    page.goto(alice.address, wait_until="commit")
    box(page, "Moss 12").tap()
    page.wait_for_selector(LIVE)
    until(page, lambda: alice.had() == [{"Moss 12": True}, {"MOSS 12": True}])
    assert box(page, "Moss 12").is_checked()


def test_it_is_sent_as_text_by_what_the_phone_has(alice):
    page = open_list(alice)
    box(page, "Moss 12").tap()
    page.evaluate("() => { navigator.share = async (what) => { window.sent = what; } }")
    page.get_by_role("button", name="Share").tap()
    until(page, lambda: page.evaluate("window.sent"))
    text = "Thread for Harbour lanterns and Blue jug\n\n☐ Plum, silk: 1 skein\n☐ Walnut 9: 1 skein, lot 8B"
    assert page.evaluate("window.sent") == {"text": text}
    page.evaluate("navigator.share = undefined")
    alice.her.context.grant_permissions(["clipboard-read", "clipboard-write"])
    page.get_by_role("button", name="Share").tap()
    page.get_by_text("The list is copied").wait_for()
    assert page.evaluate("navigator.clipboard.readText()") == text
    page.evaluate("() => { navigator.clipboard.writeText = () => Promise.reject(new Error('not here')) }")
    page.get_by_role("button", name="Share").tap()
    assert page.get_by_role("textbox", name="The list as text").input_value() == text


def test_on_paper_there_are_boxes_to_tick_and_no_ink_wasted(alice):
    page = open_list(alice)
    box(page, "Plum").tap()
    page.emulate_media(media="print", color_scheme="light")
    assert page.evaluate("getComputedStyle(document.body).backgroundColor") == "rgb(255, 255, 255)"
    boxes = page.locator(".ticks li:visible .box")
    assert boxes.count() == 2, "what is ticked is not bought again"
    assert boxes.first.evaluate("e => getComputedStyle(e).fill") == "none"
    for gone in ("nav.places", ".acts", ".choose", ".swatch"):
        assert page.locator(gone).locator("visible=true").count() == 0
    pdf = page.pdf(format="A5")
    assert pdf.startswith(b"%PDF")
    assert pdf.count(b"/Type /Page\n") == 1


def test_the_pages_are_in_nobodys_way(alice, server):
    page = alice.her.context.new_page()
    said = complaints(page)
    kept = keep(
        server.books,
        alice.jug,
        "A thread whose band says more than any band has room for",
        1.5,
        colour="#9b3527",
    )
    running = f"/projects/{alice.jug}/thread/running"
    for path in (
        alice.address.removeprefix(alice.her.url),
        "/thread/shopping",
        "/thread/stash",
        "/thread/stash/new",
        f"/thread/stash/{kept}",
        running,
    ):
        page.goto(alice.her.url + path)
        if "project=" in path:
            page.wait_for_selector(LIVE)
            box(page, "Moss 12").tap()
            until(page, lambda: names(page, "Ticked"))
        for summary in page.locator("summary:visible").all():
            summary.tap()
        in_nobodys_way(page)
    assert said == []
