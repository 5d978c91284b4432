"""The fold of the phone, run in a real browser, against the vectors and the fold of the server."""

import json

import pytest
from hypothesis import HealthCheck, Phase, given, settings

from tests.journal import worlds
from tests.journal.test_fold import VECTORS
from webapp.journal.fold import advance, fold
from webapp.journal.whole import snapshot

FOLD = """async ([path, cases]) => {
  const { fold, advance, merge } = await import(path);
  const run = { fold: (c) => fold(c.plan, c.entries), advance: (c) => advance(c.snapshot, c.entries),
                merge: (c) => merge(c.stored, c.delta) };
  return cases.map((c) => run[c.run](c));
}"""


@pytest.fixture
def in_browser(server, page):
    """Run fold.js on many cases at once."""
    page.goto(f"{server.url}/health")
    digest = page.request.get(f"{server.url}/sign-in").text().split("/static/")[1].split("/")[0]
    path = f"/static/{digest}/js/journal/fold.js"
    return lambda cases: page.evaluate(FOLD, [path, cases])


def test_the_fold_gives_what_the_vectors_say_in_a_browser(in_browser):
    cases = [
        {"run": "fold", "plan": plan_of(case["given"]), "entries": case["given"]["entries"]}
        for case in VECTORS
    ]
    for case, view in zip(VECTORS, in_browser(cases), strict=True):
        view["sitting"] = view["sitting"] and view["sitting"]["id"]
        assert {key: view[key] for key in case["expect"]} == case["expect"], case["description"]


def plan_of(given):
    return {key: value for key, value in given.items() if key != "entries"}


def test_browser_and_server_fold_alike(in_browser):
    """Two hundred random worlds: from nothing, and on from a snapshot as it comes over the wire."""
    cases, views = [], []

    @settings(max_examples=200, deadline=None, database=None, phases=[Phase.generate],
              suppress_health_check=list(HealthCheck))  # fmt: skip
    @given(worlds.plans, worlds.journals | worlds.long_journals, worlds.journals)
    def collect(plan, first, second):
        before = json.loads(json.dumps(snapshot(plan, first)))
        second = worlds.nameable(before, first, second)
        cases.append({"run": "fold", "plan": plan, "entries": first})
        views.append(fold(plan, first))
        cases.append({"run": "advance", "snapshot": before, "entries": second})
        views.append(advance(before, second))

    collect()
    for view, right in zip(in_browser(cases), views, strict=True):
        assert view == json.loads(json.dumps(right))


def test_a_delta_merged_in_the_browser_is_the_whole_snapshot(in_browser):
    """By hand: row 1 stays, row 2 changes, row 3 is no longer touched."""
    parts = {"blocks": {}, "sums": {}, "latest": {}}
    stored = {
        "revision": 5,
        "since": 0,
        "rows": {"1": {"stitches": 1}, "2": {"stitches": 2}, "3": {"stitches": 3}},
        **parts,
    }
    delta = {"revision": 7, "since": 5, "rows": {"2": {"stitches": 9}, "3": None}, **parts}
    (merged,) = in_browser([{"run": "merge", "stored": stored, "delta": delta}])
    assert merged == {
        "revision": 7,
        "since": 0,
        "rows": {"1": {"stitches": 1}, "2": {"stitches": 9}},
        **parts,
    }
