"""A stitcher's phones in the tests: she begins, has a project, and taps; what a page must never do."""

import time
from collections.abc import Callable
from dataclasses import dataclass
from uuid import uuid4

from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import BrowserContext, Page

from tests.house import Server

OURS = {"Sec-Fetch-Site": "same-origin"}
PASSPHRASE = "a long enough passphrase"

# The page's own phone; modules are made once a page, so this is the one that its islands have.
PHONE = """async (given) => {
  const base = document.querySelector('script[src$="app.js"]').src.replace('app.js', '');
  const { openPhone } = await import(base + 'journal/phone.js');
  const { owner } = await import(base + 'journal/owner.js');
  window.phone = await openPhone({ account: given ?? document.body.dataset.account ?? await owner() });
}"""
MODULES = """(path) => import(document.querySelector('script[src$="app.js"]').src.replace('app.js', path))"""


# Notes every number that is shown of a project from here on.
FOLLOW = """(project) => {
  window.seen = [];
  phone.addEventListener('change', () => seen.push(phone.view(project)?.stitches));
}"""


def until(page: Page, is_so: Callable[[], object], seconds: float = 15) -> None:
    """Wait for something to be so, while the page goes on."""
    end = time.monotonic() + seconds
    while not (said := is_so()):
        assert time.monotonic() < end, f"still {said!r} after {seconds} s"
        page.wait_for_timeout(40)


@dataclass
class Stitcher:
    """One stitcher on one phone (a browser context)."""

    context: BrowserContext
    url: str
    name: str
    project: str = ""

    @classmethod
    def arrive(cls, context: BrowserContext, server: Server, url: str = "") -> "Stitcher":
        """Let her in, with nothing begun yet."""
        her = cls(context, url or server.url, f"Alice {uuid4()}")
        cookie = {"name": "evenrow", "value": server.let_in(her.name), "url": her.url}
        context.add_cookies([{**cookie, "httpOnly": True, "sameSite": "Lax"}])
        return her

    @classmethod
    def begin(cls, context: BrowserContext, server: Server, url: str = "") -> "Stitcher":
        """Let her in, and make a project."""
        her = cls.arrive(context, server, url)
        her.project = her.new_project()
        return her

    def post(self, path: str, **form: str) -> str:
        answer = self.context.request.post(self.url + path, form=form, headers=OURS, max_redirects=0)
        assert answer.status == 303, f"{path}: {answer.status} {answer.text()[:300]}"
        return str(answer.headers["location"])

    def new_project(self, title: str = "Harbour lanterns", **plan: str) -> str:
        usual = {"title": title, "width": "300", "height": "98", "count": "14", "over": "1"}
        return self.post("/projects", **usual | plan).rsplit("/", 1)[1]

    def sign_in_on(self, context: BrowserContext) -> "Stitcher":
        """Sign in on a second phone."""
        other = Stitcher(context, self.url, self.name, self.project)
        other.post("/sign-in", name=self.name, passphrase=PASSPHRASE)
        return other

    def open(self, path: str = "") -> Page:
        """Open Stitch, ready for taps."""
        page = self.context.new_page()
        go(page, self.url + (path or f"/projects/{self.project}/stitch"))
        return page

    def sums(self, project: str = "") -> dict[str, object]:
        """Ask the house how the project stands."""
        answer = self.context.request.get(f"{self.url}/projects/{project or self.project}/snapshot")
        assert answer.ok, answer.text()
        return dict(answer.json())

    def on_the_server(self) -> int:
        return int(str(self.sums()["stitches"]))


def go(page: Page, address: str) -> None:
    page.goto(address)
    page.evaluate(PHONE)
    for island in page.locator("[data-island=stitch]").all():
        until(page, lambda island=island: island.get_attribute("data-live") is not None)


def lay(page: Page, project: str, by: int = 1, row: int = 1) -> None:
    """Lay stitches as the tap field does."""
    page.evaluate("([p, row, by]) => phone.lay(p, [{kind: 'stitches', row, by}])", [project, row, by])


def shown(page: Page, project: str) -> int:
    return int(page.evaluate("(p) => phone.view(p)?.stitches ?? -1", project))


def painted(page: Page) -> int:
    return int(page.inner_text("[data-slot=row_stitches]"))


def waiting(page: Page) -> int:
    return int(page.evaluate("phone.waiting()"))


def state(page: Page) -> str:
    return str(page.evaluate("phone.state"))


def is_kept(page: Page) -> bool:
    """Tell whether the worker is there, for opening without network."""
    return bool(
        page.evaluate(
            "navigator.serviceWorker.getRegistration().then((r) => r?.active?.state === 'activated')"
        )
    )


def tap_on(page: Page, times: int) -> None:
    """Tap the field as fast as can be."""
    page.evaluate(
        "(n) => { for (const field = document.querySelector('[data-act=tap]'); n--; ) field.click() }", times
    )


def touch(page: Page, times: int) -> None:
    """Touch the field as a thumb does."""
    box = page.locator("[data-act=tap]").bounding_box()
    assert box is not None
    for n in range(times):
        page.touchscreen.tap(box["x"] + box["width"] / 2 + n % 3, box["y"] + box["height"] / 2)


def lose_network(context: BrowserContext, address: str) -> Page:
    """Open a page, wait until the worker keeps what opens without network, close it and lose that."""
    page = context.new_page()
    page.goto(address)
    until(page, lambda: is_kept(page))
    page.close()
    context.set_offline(True)
    return context.new_page()


def complaints(page: Page) -> list[str]:
    """Gather what the browser complains of on a page from here on."""
    said: list[str] = []
    page.on("console", lambda message: said.append(message.text) if message.type == "error" else None)
    page.on("pageerror", lambda error: said.append(str(error)))
    return said


def axe_finds_nothing(page: Page) -> None:
    """Ask axe about a page as it stands, in the light and in the dark, where only its colours are others."""
    for scheme, asked in (("light", {}), ("dark", {"runOnly": ["color-contrast"]})):
        page.emulate_media(color_scheme=scheme)
        found = Axe().run(page, options=asked).response["violations"]
        assert [(v["id"], [n["html"] for n in v["nodes"]]) for v in found] == [], (page.url, scheme)


def in_nobodys_way(page: Page) -> None:
    """Hold a page to it on both phones: nothing is wider, a finger finds everything, axe finds nothing."""
    for width, height in ((390, 844), (360, 640)):
        page.set_viewport_size({"width": width, "height": height})
        assert page.evaluate("document.documentElement.scrollWidth <= innerWidth"), (page.url, width)
        touched = page.locator("a:visible, button:visible, summary:visible, input:visible, select:visible")
        small = touched.evaluate_all(
            "all => all.filter(e => e.getBoundingClientRect().height < 48).map(e => e.outerHTML)"
        )
        assert small == [], (page.url, width)
    axe_finds_nothing(page)
