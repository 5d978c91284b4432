"""The worker: what opens without network, and a newer version offered, never forced."""

import json
import shutil

from tests.browser.phones import Stitcher, go, is_kept, lay, lose_network, painted, shown, until, waiting
from webapp.places import ROOT

ENTRY = "document.querySelector('script[type=module]').src"
STATE = "navigator.serviceWorker.getRegistration().then((r) => [!!r.active, !!r.waiting])"


def test_cloth_opens_from_a_cold_start_without_network_or_account(context, server):
    page = lose_network(context, f"{server.url}/cloth")
    for path in ("/cloth", "/cloth/gauge"):
        page.goto(server.url + path)
        assert page.get_by_role("link", name="Cloth").get_attribute("aria-current") == "page"
    page.goto(f"{server.url}/hours")
    assert page.get_by_role("heading", name="No network").is_visible()


def test_a_project_never_visited_opens_without_network_and_counts(alice, context):
    second = alice.new_project("Blue jug")
    page = alice.open("/projects")
    until(page, lambda: is_kept(page))
    until(page, lambda: second in page.evaluate("phone.projects()"))
    page.close()
    context.set_offline(True)
    page = alice.open(f"/projects/{second}/stitch")
    assert page.inner_text("[data-slot=title]") == "Blue jug"
    page.locator("[data-act=tap]").tap()
    assert painted(page) == 1
    go(page, f"{alice.url}/somewhere")
    page.get_by_role("link", name="Blue jug").click()
    until(page, lambda: page.locator("[data-live]").count())
    assert painted(page) == 1
    context.set_offline(False)
    page.evaluate("dispatchEvent(new Event('online'))")
    until(page, lambda: alice.sums(second)["stitches"] == 1)


def test_pages_she_has_seen_open_without_network(alice, context):
    page = alice.open("/hours")
    until(page, lambda: is_kept(page))
    page.goto(f"{alice.url}/hours")
    page.goto(f"{alice.url}/projects")
    context.set_offline(True)
    page.goto(f"{alice.url}/hours")
    assert page.get_by_role("link", name="Hours").get_attribute("aria-current") == "page"
    page.goto(f"{alice.url}/")
    assert page.get_by_role("link", name="Harbour lanterns").count()


def test_a_slow_house_is_not_waited_for_longer_than_two_seconds(alice, context):
    page = alice.open()
    until(page, lambda: is_kept(page))
    lay(page, alice.project, by=4)
    until(page, lambda: waiting(page) == 0)
    context.route("**/stitch", lambda route: page.wait_for_timeout(6000) or route.continue_())
    go(page, page.url)
    assert painted(page) == 4
    context.unroute_all(behavior="ignoreErrors")


def test_the_worker_sends_by_itself_when_the_network_is_back(alice, context):
    page = alice.open()
    until(page, lambda: is_kept(page))
    context.route("**/journal", lambda route: route.abort())
    lay(page, alice.project)
    until(page, lambda: page.evaluate("phone.state") == "waiting")
    page.close()
    context.unroute("**/journal")
    page = context.new_page()
    page.goto(f"{alice.url}/manifest.webmanifest")  # a page without our scripts
    worker = context.new_cdp_session(page)
    versions = []
    worker.on("ServiceWorker.workerRegistrationUpdated", lambda e: versions.extend(e["registrations"]))
    worker.send("ServiceWorker.enable")
    until(page, lambda: versions)
    wake = {
        "origin": alice.url,
        "registrationId": versions[0]["registrationId"],
        "tag": "send",
        "lastChance": True,
    }
    worker.send("ServiceWorker.dispatchSyncEvent", wake)
    until(page, lambda: alice.on_the_server() == 1)


def test_a_newer_version_is_offered_and_never_forced(own_server, context, tmp_path):
    her = Stitcher.begin(context, own_server)
    page = her.open()
    until(page, lambda: is_kept(page))
    go(page, page.url)
    own_server.stop()
    newer(own_server, tmp_path)
    before = page.evaluate(ENTRY)
    page.evaluate("navigator.serviceWorker.getRegistration().then((r) => r.update())")
    offer = page.get_by_role("button", name="Use it")
    offer.wait_for()
    assert page.evaluate(STATE) == [True, True]
    late = page.evaluate(
        f"import({ENTRY}.replace('app.js', 'stitching/says.js')).then((m) => Object.keys(m))"
    )
    assert late == ["open"], "what this page fetches late is still of its own version"
    lay(page, her.project)
    assert page.evaluate(ENTRY) == before
    with page.expect_event("load"):
        offer.click()
    assert page.evaluate(ENTRY) != before
    go(page, page.url)
    until(page, lambda: waiting(page) == 0 and her.on_the_server() == 1)
    assert shown(page, her.project) == 1


def newer(server, folder):
    """Serve the next version: the same, with one file more."""
    root = folder / "next"
    for name in ("webapp", "static", "templates", "shared"):
        shutil.copytree(ROOT / name, root / name)
    (root / "static" / "icons" / "new.svg").write_text("<svg xmlns='http://www.w3.org/2000/svg'/>")
    server.settings |= {"PYTHONPATH": str(root), "PYTHONSAFEPATH": "1"}
    server.start()


def test_it_can_be_installed(whole_browser, server, browser_context_args):
    context = whole_browser.new_context(**browser_context_args)
    alice = Stitcher.begin(context, server)
    page = alice.open("/projects")
    until(page, lambda: is_kept(page))
    page.goto(f"{alice.url}/projects")
    tools = context.new_cdp_session(page)
    faults = tools.send("Page.getInstallabilityErrors")["installabilityErrors"]
    assert [fault["errorId"] for fault in faults] == ["in-incognito"]
    found = tools.send("Page.getAppManifest")
    assert found["errors"] == []
    assert json.loads(found["data"])["id"] == "/"


def test_installing_is_offered_where_it_can_be_and_only_when_she_asks(alice):
    page = alice.open("/account")
    button = page.get_by_role("button", name="Put Evenrow on the home screen")
    assert button.is_hidden()
    page.evaluate(
        """() => dispatchEvent(Object.assign(new Event('beforeinstallprompt', { cancelable: true }), {
          prompt: async () => ({ outcome: (window.asked = 'accepted') }),
        }))"""
    )
    button.click()
    until(page, lambda: button.is_hidden())
    assert page.evaluate("asked") == "accepted"


def test_a_part_of_a_page_that_cannot_be_had_leads_to_its_whole_page(alice, page):
    page.goto(f"{alice.url}/hours")
    page.evaluate("navigator.serviceWorker.ready.then(() => 1)")
    page.reload()
    said = []
    page.on("console", lambda message: said.append(message.text) if "htmx" in message.text else None)
    page.context.set_offline(True)
    page.get_by_role("link", name="Earlier week").click()
    page.wait_for_url("**/hours?week=*")
    page.context.set_offline(False)
    assert said == []
