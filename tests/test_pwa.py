"""What makes the pages an app: the worker, the manifest, whose page is whose."""

import json
import re
import struct
from html.parser import HTMLParser

import pytest

from webapp.places import STATIC


def lists_of(client) -> dict[str, object]:
    text = client.get("/sw.js").text
    return json.loads(re.search(r"const \{ version, digest, files, pages \} = (\{.*\});", text).group(1))


def test_the_worker_is_asked_for_anew_each_time(client):
    answer = client.get("/sw.js")
    assert answer.mimetype == "text/javascript"
    assert answer.headers["Cache-Control"] == "no-cache"
    assert "default-src 'none'" in answer.headers["Content-Security-Policy"]


def test_everything_the_worker_keeps_is_there(client):
    kept = lists_of(client)
    for path in [*kept["files"], *kept["pages"]]:
        with client.get(path) as answer:
            assert answer.status_code == 200, path


def test_the_worker_keeps_every_page_that_needs_no_account_and_no_network(app, client):
    """Each page of cloth, and of thread, that is the same to whoever asks, and the two shells."""
    asked = [rule.rule for rule in app.url_map.iter_rules() if "GET" in rule.methods and not rule.arguments]
    open_to_all = {
        path
        for path in asked
        if path.startswith(("/cloth", "/thread", "/shell/"))
        and (answer := client.get(path)).status_code == 200
        and answer.text.startswith("<!doctype html>")
    }
    assert set(lists_of(client)["pages"]) == open_to_all
    assert len(open_to_all) > 2


def test_the_worker_keeps_every_script_and_style(client):
    kept = set(lists_of(client)["files"])
    prefix = f"/static/{lists_of(client)['digest']}/"
    for path in [*STATIC.rglob("*.js"), *STATIC.rglob("*.css")]:
        name = path.relative_to(STATIC).as_posix()
        assert (prefix + name in kept) == (name != "sw.js")


def test_only_as_a_module_can_the_worker_send(client):
    assert "import" not in client.get("/sw.js").text.split("\n")[0]
    first = client.get("/sw.js?module").text.split("\n")[0]
    path = re.fullmatch(r'import "(/static/\w+/js/pwa/wake\.js)";', first).group(1)
    assert client.get(path).status_code == 200


def test_the_manifest_names_icons_that_are_what_it_says(client):
    manifest = client.get("/manifest.webmanifest").json
    assert {
        "id",
        "start_url",
        "scope",
        "display",
        "name",
        "background_color",
        "theme_color",
    } <= manifest.keys()
    assert manifest["display"] == "standalone"
    assert any(icon.get("purpose") == "maskable" for icon in manifest["icons"])
    pictures = [
        one for one in manifest["icons"] + manifest.get("screenshots", []) if one["type"] == "image/png"
    ]
    for one in pictures:
        with client.get(one["src"]) as answer:
            assert "{}x{}".format(*struct.unpack(">II", answer.data[16:24])) == one["sizes"]


def test_its_shortcuts_lead_somewhere(client, alice):
    for shortcut in client.get("/manifest.webmanifest").json["shortcuts"]:
        assert alice.get(shortcut["url"]).status_code == 200, shortcut


class Ids(HTMLParser):
    """Collects the account a page says it was drawn for."""

    account = None

    def handle_starttag(self, tag, attrs):
        self.account = dict(attrs).get("data-account", self.account) if tag == "body" else self.account


def drawn_for(answer) -> str | None:
    page = Ids()
    page.feed(answer.text)
    return page.account


def test_every_page_says_whose_it_is_as_it_was_drawn(client, alice, charlie):
    hers = [alice.get("/projects"), charlie.get("/projects")]
    assert [answer.headers["X-Evenrow-Account"] for answer in hers] == [drawn_for(answer) for answer in hers]
    assert hers[0].headers["X-Evenrow-Account"] != hers[1].headers["X-Evenrow-Account"]
    assert client.get("/").headers["X-Evenrow-Account"] == "none"


@pytest.mark.parametrize("path", ["/shell/stitch", "/shell/offline"])
def test_a_shell_has_nobodys_values(alice, path):
    assert drawn_for(alice.get(path)) is None


def test_the_answer_to_a_sign_out_is_nobodys(alice):
    alice.post("/sign-out")
    assert alice.get("/").headers["X-Evenrow-Account"] == "none"
    assert (
        alice.get("/projects/0a0a0a0a-0000-4000-8000-000000000000/snapshot").headers["X-Evenrow-Account"]
        == "none"
    )
