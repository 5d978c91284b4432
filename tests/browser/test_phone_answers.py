"""What the phone does with every answer, and with none: only the journal's own word settles an entry."""

import json
import time

import pytest

from tests.browser.phones import go, lay, shown, state, until, waiting

CAFE = {"status": 200, "content_type": "text/html", "body": "<h1>Free internet! Sign in here.</h1>"}
ODD = {"status": 200, "content_type": "application/json", "body": json.dumps({"ok": True})}
ANSWERS = [
    pytest.param(CAFE, "waiting", id="a café's sign-in page"),
    pytest.param(ODD, "waiting", id="JSON of somebody else"),
    pytest.param({"status": 302, "headers": {"Location": "/cloth"}}, "waiting", id="a redirect"),
    pytest.param({"status": 500, "body": "oh"}, "waiting", id="the server fails"),
    pytest.param({"status": 429, "headers": {"Retry-After": "120"}}, "waiting", id="too often"),
    pytest.param({"status": 401, "body": "{}"}, "sign-in", id="not signed in"),
    pytest.param({"status": 409, "body": "{}"}, "other-account", id="somebody else is signed in"),
]


@pytest.mark.parametrize(("answer", "becomes"), ANSWERS)
def test_whatever_is_no_answer_of_the_journal_settles_nothing(alice, context, answer, becomes):
    page = alice.open()
    context.route("**/journal", lambda route: route.fulfill(**answer))
    lay(page, alice.project)
    until(page, lambda: state(page) == becomes)
    assert (waiting(page), shown(page, alice.project), alice.on_the_server()) == (1, 1, 0)
    context.unroute("**/journal")
    page.evaluate("dispatchEvent(new Event('online'))")
    if answer["status"] == 429:  # asked to stay away for two minutes, it does
        page.wait_for_timeout(500)
        assert alice.on_the_server() == 0
    else:
        until(page, lambda: waiting(page) == 0)
        assert shown(page, alice.project) == alice.on_the_server() == 1


def test_a_silent_house_is_given_up_after_twenty_seconds(alice, context):
    page = context.new_page()
    page.clock.install()
    go(page, f"{alice.url}/projects/{alice.project}/stitch")
    context.route("**/journal", lambda route: None)
    with page.expect_request("**/journal"):
        lay(page, alice.project)
        page.clock.run_for(1_000)
    page.clock.run_for(19_000)
    assert state(page) == "sending"
    page.clock.run_for(1_000)
    until(page, lambda: state(page) == "waiting")
    assert waiting(page) == 1
    context.unroute_all(behavior="ignoreErrors")


def test_it_says_what_she_can_do(alice, context):
    page = alice.open()
    context.route("**/journal", lambda route: route.fulfill(status=401, body="{}"))
    lay(page, alice.project)
    line = page.locator(".notices")
    until(page, lambda: "Sign in to send 1." in line.inner_text())
    assert (
        line.get_by_role("link", name="Sign in").get_attribute("href").startswith("/sign-in?next=%2Fprojects")
    )
    context.unroute("**/journal")
    page.evaluate("phone.send()")
    until(page, lambda: line.inner_text() == "")


def test_a_batch_that_is_too_large_is_halved_until_it_fits(alice, context):
    page = alice.open()
    sizes = []

    def narrow(route):
        sizes.append(len(route.request.post_data_json["entries"]))
        if sizes[-1] > 3:
            route.fulfill(status=413, body="<h1>Too large</h1>")
        else:
            route.continue_()

    context.route("**/journal", narrow)
    page.evaluate("(p) => phone.lay(p, Array(10).fill({kind: 'stitches', row: 1, by: 1}))", alice.project)
    until(page, lambda: waiting(page) == 0)
    assert sizes[:3] == [10, 5, 3]
    assert shown(page, alice.project) == alice.on_the_server() == 10


def test_only_the_entry_that_spoils_a_batch_is_set_aside(alice, context):
    page = alice.open()

    def choke(route):
        rows = [entry.get("row") for entry in route.request.post_data_json["entries"]]
        if 13 in rows:
            route.fulfill(
                status=422, content_type="application/json", body=json.dumps({"error": "Not row 13."})
            )
        else:
            route.continue_()

    context.route("**/journal", choke)
    page.evaluate(
        "(p) => phone.lay(p, [1, 2, 13, 4, 5].map((row) => ({kind: 'stitches', row, by: 1})))", alice.project
    )
    until(page, lambda: waiting(page) == 0)
    assert alice.on_the_server() == shown(page, alice.project) == 4
    assert page.evaluate("phone.refused().map(({entry, why}) => [entry.row, why])") == [[13, "Not row 13."]]


def test_what_is_refused_is_shown_with_its_reason_saved_and_sent_again(alice, context):
    page = alice.open()
    lay(page, alice.project, row=20_000)  # no chart has so many
    lay(page, alice.project)
    until(page, lambda: waiting(page) == 0)
    assert alice.on_the_server() == shown(page, alice.project) == 1
    page.reload()
    page.get_by_role("button", name="Look").click()
    dialog = page.get_by_role("dialog")
    assert "must be from 1 to 10000" in dialog.inner_text()
    with page.expect_download() as download:
        dialog.get_by_role("button", name="Save to a file").click()
    saved = json.loads(download.value.path().read_text())
    assert saved[0]["entry"]["row"] == 20_000
    with page.expect_request("**/journal") as sent:
        dialog.get_by_role("button", name="Send again").click()
    assert sent.value.post_data_json["entries"][0]["row"] == 20_000


def test_after_a_failure_it_tries_again_by_itself_ever_later(alice, context):
    page = alice.open()
    tries = []
    page.on("request", lambda sent: tries.append(time.monotonic()) if sent.url.endswith("/journal") else None)
    context.route("**/journal", lambda route: route.abort(), times=3)
    lay(page, alice.project)
    until(page, lambda: waiting(page) == 0, seconds=20)
    assert len(tries) == 4
    assert tries[3] - tries[1] > 2.5  # after a failure half a second to one, then one to two, two to four
    assert alice.on_the_server() == 1
