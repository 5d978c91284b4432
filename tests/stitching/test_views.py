import json
import re
from uuid import uuid4

import pytest

from tests.conftest import browser_of
from webapp.journal.fold import advance


def stitch(project) -> str:
    return f"/projects/{project}/stitch"


def test_it_works(alice, new_project):
    answer = alice.get(stitch(new_project(alice)))
    assert answer.status_code == 200
    assert "Harbour lanterns" in answer.text


def test_a_sign_in_is_asked_for(app, alice, new_project):
    answer = browser_of(app).get(stitch(new_project(alice)))
    assert answer.status_code == 303
    assert answer.location.startswith("/sign-in?next=")


def test_charlie_sees_nothing_of_it(alice, charlie, new_project):
    answer = charlie.get(stitch(new_project(alice)))
    assert answer.status_code == 404
    assert "Harbour" not in answer.text


NOT_THERE = ("01a211f5-35bd-7260-aba3-2504c6e2ebb4", "1", "%FF", "x" * 3000)


@pytest.mark.parametrize("address", [stitch(project) for project in NOT_THERE])
def test_what_is_not_there_is_answered_with_a_sentence(alice, address):
    answer = alice.get(address)
    assert answer.status_code == 404
    assert "There is nothing here, or it is not yours." in answer.text


def test_markup_in_a_title_stays_text(alice, new_project):
    page = alice.get(stitch(new_project(alice, title="</script><img src=x onerror=alert(1)>")))
    assert "<img" not in page.text
    assert page.text.count("</script>") == page.text.count("<script")


def test_the_shell_is_drawn_for_nobody(alice, new_project):
    project = new_project(alice)
    shell = alice.get("/shell/stitch")
    assert shell.status_code == 200
    for hers in ("Harbour", str(project), "data-account", "data-snapshot", "data-bedtime"):
        assert hers not in shell.text


def test_the_shell_is_the_same_page(client, alice, new_project):
    page, shell = alice.get(stitch(new_project(alice))), client.get("/shell/stitch")
    for handle in ("tap", "back", "undo", "done", "sitting", "frame", "step", "bare", "map", "says", "more"):
        assert f'data-act="{handle}"' in page.text
        assert f'data-act="{handle}"' in shell.text


def test_the_page_is_light(alice, new_project):
    # Of the 30 kB that the first load may weigh, 4.5 are the page's own.
    page = alice.get(stitch(new_project(alice)), headers={"Accept-Encoding": "br"})
    assert len(page.data) < 4500


def test_the_snapshot_a_page_carries_leaves_out_what_follows_from_the_rest(alice, new_project):
    project = new_project(alice)
    at = "2026-02-03T20:14:05.120Z"
    kinds = (
        [{"kind": "stitches", "row": row, "by": 10 * row} for row in range(1, 8)]
        + [{"kind": "done", "row": row, "done": True} for row in range(1, 7)]
        + [{"kind": "stitches", "block": [2, 3], "by": 4}, {"kind": "stitches", "pass": "back", "by": 9}]
        + [
            {"kind": "begin"},
            {"kind": "end", "sitting": str(uuid4()), "note": "By the lamp"},
            {"kind": "begin"},
        ]
    )
    entries = [{"id": str(uuid4()), "project": str(project), "at": at, **one} for one in kinds]
    assert alice.post("/journal", json={"sent_at": at, "entries": entries}).json["refused"] == []
    whole = alice.get(f"/projects/{project}/snapshot").json
    page = alice.get(stitch(project)).text
    carried = json.loads(re.search(r"data-snapshot>(.*?)</script>", page)[1])
    left_out = whole.keys() - carried.keys()
    assert {"rows", "blocks", "passes", "row", "stitches"} <= left_out
    view = {"since": 0, "project": str(project), **advance(carried, [])}
    assert {name: view[name] for name in left_out} == {name: whole[name] for name in left_out}
    assert {name: whole[name] for name in carried} == carried
