"""Every address of the house, tried by a stranger and by another stitcher."""

import re
from uuid import UUID

import pytest

OPEN = {
    "/",
    "/accounts",
    "/accounts/new",
    "/accounts/unclaimed",
    "/cloth",
    "/cloth/gauge",
    "/cloth/gauge.json",
    "/cloth/gauge/projects",
    "/cloth/class",
    "/cloth/piece",
    "/cloth/piece/hers",
    "/cloth/ruler",
    "/cloth/slip",
    "/cloth/slip.svg",
    "/thread",
    "/cloth/size",
    "/cloth/size.json",
    "/frame/banner",
    "/health",
    "/manifest.webmanifest",
    "/reminders/calendar/<token>.ics",  # whoever has its secret
    "/reminders/email/<token>",  # likewise
    "/shell/offline",
    "/shell/stitch",
    "/shell/tonight",
    "/sign-in",
    "/sign-out",
    "/sw.js",
}
NOBODYS = UUID("019c3c00-0000-7000-8000-000000000000")


def doors(app, project=NOBODYS):
    """Name every address and way of asking; ids are of ``project`` and of nothing."""
    for rule in app.url_map.iter_rules():
        if rule.endpoint != "static":
            path = re.sub(r"<uuid:project(_id)?>", str(project), rule.rule)
            path = re.sub(r"<any\((\w+)[^)]*\):\w+>", r"\1", path)
            for method in sorted((rule.methods or set()) & {"GET", "POST", "PUT", "PATCH", "DELETE"}):
                yield method, re.sub(r"<uuid:\w+>", str(NOBODYS), path), rule.rule


def test_every_door_but_the_open_ones_is_shut_to_strangers(app, client):
    for method, path, rule in doors(app):
        if rule not in OPEN:
            answer = client.open(path, method=method)
            asked = answer.status_code == 401 or (answer.location or "").startswith("/sign-in?next=")
            assert asked, f"{method} {rule}: {answer.status_code}"


def test_the_open_ones_are_still_there(app):
    assert {rule.rule for rule in app.url_map.iter_rules()} >= OPEN


def test_charlie_finds_nothing_of_alices_behind_any_door(app, alice, charlie, new_project):
    project = new_project(alice, title="Quince tree by the harbour wall")
    for method, path, rule in doors(app, project):
        if rule == "/sign-out":
            continue
        answer = charlie.open(path, method=method)
        assert "Quince tree" not in answer.text, f"{method} {rule}"
        assert answer.status_code < 500, f"{method} {rule}"
        if "<uuid:project" in rule:
            assert answer.status_code == 404, f"{method} {rule}"
    assert "Quince tree" in alice.get(f"/projects/{project}").text


@pytest.mark.parametrize("id", ["1", "x", "../account", "%00", str(NOBODYS).upper()[:-1]])
def test_what_is_no_id_is_not_there(alice, id):
    assert alice.get(f"/projects/{id}").status_code == 404
    assert alice.post(f"/account/sessions/{id}/end").status_code == 404
