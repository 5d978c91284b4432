"""A phone in a real browser that takes pushes, at an address of the tests' own push service.

What came there is handed to its worker by the browser's own protocol.
"""

import json
from typing import Any

from playwright.sync_api import BrowserContext, Page, expect

from tests.browser.phones import Stitcher, is_kept, until
from tests.reminders.service import Browser

# The browser of the tests has no push service: its answers are given here, with keys that can be written to.
ADDRESS = """(given) => {
  const plain = (text) => atob(text.replaceAll('-', '+').replaceAll('_', '/'));
  const bytes = (text) => Uint8Array.from(plain(text), (c) => c.charCodeAt(0)).buffer;
  const key = 'the tests’ address';
  const read = () => JSON.parse(localStorage.getItem(key) || 'null');
  const made = (asked) => asked && {
    endpoint: given.endpoint,
    options: { applicationServerKey: bytes(asked) },
    toJSON: () => given,
    unsubscribe: async () => { localStorage.removeItem(key); return true; },
  };
  PushManager.prototype.getSubscription = async () => made(read());
  PushManager.prototype.subscribe = async ({ userVisibleOnly, applicationServerKey }) => {
    if (!userVisibleOnly) throw new Error('every push shows a notification');
    localStorage.setItem(key, JSON.stringify(applicationServerKey));
    return made(applicationServerKey);
  };
}"""
SHOWN = """async () => (await (await navigator.serviceWorker.ready).getNotifications()).map(
  ({ title, tag, data, actions }) => ({ title, tag, open: data.open, actions: actions.map((a) => a.action) })
)"""

# A browser asked what stands while it puts something up forgets what it put up: so first it is let be.
UP = """() => {
  const show = registration.showNotification.bind(registration);
  self.up ??= [];
  registration.showNotification = (...said) => { self.up.push(show(...said)); return self.up.at(-1); };
}"""
ALL_UP = "async (many) => self.up.length >= many && Boolean(await Promise.allSettled(self.up))"

TOUCH = """async (action) => {
  const opened = [];
  clients.openWindow = async (address) => { opened.push(address); };
  const [notification] = await registration.getNotifications();
  const event = new NotificationEvent('notificationclick', { notification, action });
  const waits = [];
  Object.defineProperty(event, 'waitUntil', { value: (promise) => waits.push(promise) });
  dispatchEvent(event);
  await Promise.all(waits);
  return opened;
}"""


def gives_address(context: BrowserContext, browser: Browser) -> None:
    """Let this phone's browser give the address of ``browser`` when a page asks for one."""
    given = json.dumps({"endpoint": browser.endpoint, "keys": browser.keys})
    context.add_init_script(f"({ADDRESS})({given})")
    context.grant_permissions(["notifications"])


class Sync:
    """The worker of a page's house, as the browser's own protocol reaches it."""

    def __init__(self, page: Page) -> None:
        until(page, lambda: is_kept(page))
        self.page = page
        self.protocol = page.context.new_cdp_session(page)
        found: list[dict[str, Any]] = []
        self.protocol.on(
            "ServiceWorker.workerRegistrationUpdated", lambda e: found.extend(e["registrations"])
        )
        self.protocol.send("ServiceWorker.enable")
        until(page, lambda: found)
        self.of = {
            "origin": page.evaluate("location.origin"),
            "registrationId": found[-1]["registrationId"],
        }

    def dispatch(self, tag: str) -> None:
        """Wake it, as the browser does when there is network again."""
        self.protocol.send("ServiceWorker.dispatchSyncEvent", {**self.of, "tag": tag, "lastChance": False})


class Worker(Sync):
    """The worker as one who takes pushes."""

    def __init__(self, page: Page) -> None:
        super().__init__(page)
        (self.worker,) = page.context.service_workers
        self.worker.evaluate(UP)
        self.many = 0

    def deliver(self, text: str) -> None:
        """Hand over a push, as the browser does when one came; wait until its notification is up."""
        self.protocol.send("ServiceWorker.deliverPushMessage", {**self.of, "data": text})
        self.many += 1
        until(self.page, lambda: self.worker.evaluate(ALL_UP, self.many))

    def touch(self, action: str) -> list[str]:
        """Touch the notification that stands, or a button of it; gives what is opened.

        A touch made by a script opens no window, so what is asked for is noted here.
        """
        return list(self.worker.evaluate(TOUCH, action))

    def shown(self) -> list[dict[str, Any]]:
        """List what stands on the lock screen."""
        return list(self.page.evaluate(SHOWN))


def on_page(her: Stitcher, path: str) -> Page:
    """Open a page of hers, and wait until it is at rest."""
    page = her.context.new_page()
    page.goto(her.url + path, wait_until="networkidle")
    return page


def turned_on(her: Stitcher) -> Page:
    """Turn reminders on on this phone, by its page."""
    page = on_page(her, "/reminders")
    page.get_by_role("button", name="Remind me on this phone").tap()
    expect(page.get_by_text("This phone reminds you.")).to_be_visible()
    return page
