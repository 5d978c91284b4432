"""What the first load of the counter weighs as ``serve`` sends it, and whether anything moves."""

import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from playwright.sync_api import BrowserContext, Page, sync_playwright

from tests.house import FLAGS, Server, find_chromium

MOVED = """() => new Promise((done) => {
  let moved = 0;
  new PerformanceObserver((list) => {
    for (const entry of list.getEntries()) if (!entry.hadRecentInput) moved += entry.value;
  }).observe({ type: "layout-shift", buffered: true });
  setTimeout(() => done(moved), 1000);
})"""


def figures() -> Iterator[str]:
    with tempfile.TemporaryDirectory() as folder, phone(Path(folder)) as (context, url):
        project = begin(context, url)
        page = context.new_page()
        loads = listen(page)
        page.goto(f"{project}/stitch", wait_until="networkidle")
        moved = page.evaluate(MOVED)
        total = sum(loads.values())
        answers = f"{len(loads)} answers, headers included"
        yield f"weight: first load of the counter: {total / 1000:.2f} kB on the wire in {answers}"
        for address, size in sorted(loads.items(), key=lambda found: -found[1])[:30]:
            yield f"weight:   {size / 1000:5.1f} kB {address.rsplit('/', 1)[1]}"
        yield f"weight: layout shift {moved}"


def listen(page: Page) -> dict[str, float]:
    """Note what the page's own loads weigh; the worker's, which fill its store later, are not among them."""
    loads: dict[str, float] = {}
    addresses: dict[str, str] = {}
    session = page.context.new_cdp_session(page)
    session.send("Network.enable")
    session.send("Network.setCacheDisabled", {"cacheDisabled": True})
    session.on("Network.requestWillBeSent", lambda e: addresses.update({e["requestId"]: e["request"]["url"]}))

    def finished(event: dict[str, Any]) -> None:
        loads[addresses[event["requestId"]]] = event["encodedDataLength"]

    session.on("Network.loadingFinished", finished)
    return loads


@contextmanager
def phone(folder: Path) -> Iterator[tuple[BrowserContext, str]]:
    """Open a small phone on a house of its own."""
    server = Server(folder / "house")
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=find_chromium(), args=FLAGS)
        try:
            yield (
                browser.new_context(viewport={"width": 360, "height": 640}, has_touch=True, is_mobile=True),
                server.url,
            )
        finally:
            browser.close()
            server.stop()


def begin(context: BrowserContext, url: str) -> str:
    """Begin as a newcomer does, with one project; gives its address."""
    page = context.new_page()
    page.goto(url)
    page.get_by_role("button", name="Begin").click()
    for name, value in {"title": "Harbour lanterns", "width": "140", "height": "98"}.items():
        page.locator(f"[name={name}]").fill(value)
    page.locator("main form button.main").click()
    page.wait_for_url("**/projects/*-*")
    address = page.url.split("?")[0].removesuffix("/stitch")
    page.close()
    return address
