"""Take README.md's pictures, and the installer's, from the demonstration at phone size."""

import sys
import tempfile
from collections.abc import Callable
from datetime import date, datetime, time
from pathlib import Path
from typing import Any

from playwright.sync_api import Browser, Page, sync_playwright

from tests.house import FLAGS, Server, find_chromium
from webapp.demo.scenario import NAME, PASSPHRASE
from webapp.places import STATIC

SIZE = {"width": 390, "height": 844}
EVENING = time(20, 41)
CLASS = "/cloth/class?n=10&by=cut&cut_width=15&cut_height=17&bolt_width=55"
THREAD = "/thread?stitches=1240&count=14&over=1&strands=2"
FOLDER = STATIC / "screens"


def stitch(page: Page) -> None:
    open_project(page, "Harbour lanterns")
    page.locator(".chip").nth(1).click()
    page.locator("[data-act=tap]").click()
    page.locator("[data-act=tap]").click()
    page.wait_for_timeout(1500)


def blocks(page: Page) -> None:
    open_project(page, "Quince tree")


def map_of_it(page: Page) -> None:
    open_project(page, "Harbour lanterns")
    page.locator("[data-act=map]").click()


def hours(page: Page) -> None:
    page.goto("/hours")
    page.get_by_role("link", name="Earlier week").click()


def gauge(page: Page) -> None:
    page.goto("/cloth/gauge")
    page.locator("input[type=text], input[inputmode]").first.fill("28")
    page.locator("input[type=text], input[inputmode]").nth(1).fill("2")


def size(page: Page) -> None:
    page.goto("/cloth/size?width=140&height=98&count=28&over=2&finish=framed&held=scroll")
    page.locator(".answer").first.evaluate("(node) => scrollTo(0, node.getBoundingClientRect().top - 12)")


def slip(page: Page) -> None:
    page.goto("/cloth/slip?width=112&height=84&count=14&finish=usual&held=hand&title=Quince tree")
    page.locator("svg").last.scroll_into_view_if_needed()


def legend(page: Page) -> None:
    page.goto("/thread")
    page.locator("main").get_by_role("link", name="Harbour lanterns").click()
    page.wait_for_url("**/thread")


def shopping(page: Page) -> None:
    legend(page)
    page.locator("main").get_by_role("link", name="Shopping list").click()
    page.wait_for_url("**/shopping?*")
    page.locator("main label").first.click()


SHOTS: dict[str, tuple[str, Callable[[Page], Any]]] = {
    "map": ("dark", map_of_it),
    "projects": ("light", lambda page: page.goto("/projects")),
    "gauge": ("dark", gauge),
    "size": ("light", size),
    "class": ("dark", lambda page: page.goto(CLASS)),
    "slip": ("light", slip),
    "hours": ("dark", hours),
    "hours-light": ("light", hours),
    "year": ("dark", lambda page: page.goto("/hours/year")),
    "year-light": ("light", lambda page: page.goto("/hours/year")),
    "blocks": ("light", blocks),
    "legend": ("light", legend),
    "shopping": ("dark", shopping),
    "thread": ("light", lambda page: page.goto(THREAD)),
    "stitch": ("dark", stitch),  # last: it begins a sitting
}


def open_project(page: Page, title: str) -> None:
    page.goto("/projects")
    address = page.locator("main a[href^='/projects/0']").filter(has_text=title).first.get_attribute("href")
    page.goto(address.removesuffix("/stitch") + "/stitch")
    page.wait_for_selector("[data-island=stitch][data-live]")


def take(browser: Browser, url: str, name: str) -> None:
    scheme, go = SHOTS[name]
    phone = {"viewport": SIZE, "device_scale_factor": 2, "is_mobile": True, "has_touch": True}
    zone = {"timezone_id": "Europe/London", "locale": "en-GB", "service_workers": "block"}
    context = browser.new_context(**phone, **zone, color_scheme=scheme, base_url=url)
    page = context.new_page()
    page.clock.install(time=datetime.combine(date.today(), EVENING))
    page.goto("/sign-in")
    page.locator("[name=name]").fill(NAME)
    page.locator("[name=passphrase]").fill(PASSPHRASE)
    page.locator("main form button.main").click()
    page.wait_for_url("**/projects")
    go(page)
    page.wait_for_timeout(800)
    page.screenshot(path=FOLDER / f"{name}.png")
    context.close()


def main(names: list[str]) -> None:
    FOLDER.mkdir(exist_ok=True)
    with tempfile.TemporaryDirectory() as folder, sync_playwright() as playwright:
        server = Server(Path(folder), command="demo")
        browser = playwright.chromium.launch(executable_path=find_chromium(), args=FLAGS)
        try:
            for name in names or SHOTS:
                take(browser, server.url, name)
                print(f"{name}.png")
        finally:
            browser.close()
            server.stop()


if __name__ == "__main__":
    main(sys.argv[1:])
