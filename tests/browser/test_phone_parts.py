"""What the phone's journeys do not reach: clocks, full stores, old snapshots, what is forgotten."""

from datetime import UTC, datetime

import pytest

from tests.browser.phones import MODULES, go, lay, painted, shown, state, until, waiting

NO_DATABASE = "indexedDB.open = () => { throw new Error('not on this phone') }"
NO_ROOM = "Storage.prototype.setItem = () => { throw new DOMException('full', 'QuotaExceededError') }"
STAMPS = """async () => {
  const { stamp, ownNow } = await (MODULES)('journal/stamps.js');
  const [real, stamps] = [Date.now, []];
  for (const hours of [0, 0, 0, -9, 5, -100_000, 1]) {
    Date.now = () => real() + hours * 3_600_000;
    for (let n = 0; n < 3; n++) stamps.push(stamp());
  }
  return [stamps, ownNow()];
}"""


LAY_AND_LOOK = """(project) => {
  phone.lay(project, [{kind: 'stitches', row: 1, by: 1}]);
  return Object.entries(localStorage).find(([key]) => key.includes(':entry:'));
}"""
LAY_IN_VAIN = """(project) =>
  phone.lay(project, [{kind: 'stitches', row: 1, by: 1}]).catch((error) => error.message)"""
PRUNE = """async (project) => {
  const { prune } = await (MODULES)('journal/prune.js');
  const [day, now] = [86_400_000, Date.now()];
  const old = (n, age) => ({ id: `${age} ${n}`, when: now - age * day, entry: { project } });
  await phone.store.change(async (t) => {
    for (let n = 0; n < 5100; n++) await t.put('settled', old(n, n < 200 ? 20 : 15));
  });
  await prune(phone, now);
  return phone.store.read(async (t) => [await t.count('settled'), !!(await t.get('settled', '15 5000'))]);
}"""


def test_ids_and_moments_rise_whatever_the_clock_does(alice):
    page = alice.open()
    stamps, now = page.evaluate(STAMPS.replace("MODULES", MODULES))
    for name in ("id", "at"):
        values = [stamp[name] for stamp in stamps]
        assert values == sorted(values)
    ids = {stamp["id"] for stamp in stamps}
    assert len(ids) == len(stamps)
    assert all(id[14] == "7" and id[19] in "89ab" for id in ids)  # RFC 9562, section 5.7
    assert now >= round(datetime.fromisoformat(stamps[-1]["at"]).timestamp() * 1000)


def test_a_clock_that_is_years_off_is_put_right(alice, context):
    context.add_init_script("{ const real = Date.now; Date.now = () => real() - 3 * 365 * 86_400_000 }")
    page = alice.open()
    lay(page, alice.project)
    until(page, lambda: waiting(page) == 0)
    now = datetime.now(UTC).timestamp()
    tail = alice.sums()["tail"]
    assert abs(datetime.fromisoformat(tail[-1]["at"]).timestamp() - now) < 60
    assert abs(page.evaluate("phone.now()") / 1000 - now) < 60
    assert page.evaluate("(p) => phone.last(p).at(-1).by", alice.project) == 1


def test_a_key_that_a_killed_browser_brings_back_is_not_counted_again(alice, context):
    page = alice.open()
    key = page.evaluate(LAY_AND_LOOK, alice.project)
    assert key[0].startswith("evenrow:")
    until(page, lambda: waiting(page) == 0)
    page.evaluate("([key, value]) => localStorage.setItem(key, value)", key)
    sent = []
    context.on("request", lambda request: sent.append(request) if request.url.endswith("/journal") else None)
    go(page, page.url)
    assert (shown(page, alice.project), waiting(page), sent) == (1, 0, [])
    assert page.evaluate("(key) => localStorage.getItem(key)", key[0]) is None


def test_with_a_full_ledge_the_database_has_it(alice, context):
    context.add_init_script(NO_ROOM)
    page = alice.open()
    context.route("**/journal", lambda route: route.abort())
    lay(page, alice.project)
    assert shown(page, alice.project) == 1
    go(page, page.url)
    assert (shown(page, alice.project), waiting(page)) == (1, 1)
    context.unroute("**/journal")
    page.evaluate("phone.send()")
    until(page, lambda: alice.on_the_server() == 1)


def test_without_a_database_the_ledge_has_it_all_the_same(alice, context):
    context.add_init_script(NO_DATABASE)
    page = alice.open()
    context.route("**/journal", lambda route: (route.fetch(), route.abort()))
    lay(page, alice.project)
    until(page, lambda: state(page) == "waiting" and alice.on_the_server() == 1)
    context.unroute("**/journal")
    go(page, page.url)
    until(page, lambda: waiting(page) == 0)
    assert painted(page) == shown(page, alice.project) == alice.on_the_server() == 1
    lay(page, alice.project, row=20_000)
    until(page, lambda: waiting(page) == 0)
    go(page, page.url)
    assert page.evaluate("phone.refused().length") == 1


def test_what_neither_store_takes_is_not_shown_and_that_is_said(alice, context):
    context.add_init_script(NO_DATABASE + ";" + NO_ROOM)
    page = alice.open()
    said = page.evaluate(LAY_IN_VAIN, alice.project)
    assert said == "This phone has no room left, so that was not kept."
    assert state(page) == "not-kept"
    assert (shown(page, alice.project), waiting(page)) == (0, 0)
    until(page, lambda: "not kept" in page.inner_text(".notices"))


def test_an_older_snapshot_is_not_taken(alice):
    page = alice.open()
    old = alice.sums()
    lay(page, alice.project)
    until(page, lambda: waiting(page) == 0)
    page.evaluate("(old) => phone.take(old)", old)
    assert shown(page, alice.project) == 1


def test_more_than_a_batch_goes_in_several(alice, context):
    page = alice.open()
    sizes = []
    context.on(
        "request",
        lambda r: sizes.append(len(r.post_data_json["entries"])) if r.url.endswith("/journal") else None,
    )
    page.evaluate("(p) => phone.lay(p, Array(1100).fill({kind: 'stitches', row: 1, by: 1}))", alice.project)
    until(page, lambda: waiting(page) == 0)
    assert sizes == [500, 500, 100]
    assert shown(page, alice.project) == alice.on_the_server() == 1100


def test_a_newer_page_gets_the_database_and_taps_are_still_kept(alice, context):
    page = alice.open()
    upgrade = """(name) => new Promise((done) => {
      indexedDB.open(name, 2).onsuccess = ({ target }) => done(target.result.close());
    })"""
    page.evaluate(upgrade, page.evaluate("'evenrow-' + phone.account"))
    page.get_by_role("button", name="Use it here too").wait_for()
    lay(page, alice.project)
    assert (shown(page, alice.project), waiting(page)) == (1, 1)
    assert page.evaluate("Object.keys(localStorage).some((key) => key.includes(':entry:'))")


def test_only_the_newest_and_the_latest_settled_are_remembered(alice):
    page = alice.open()
    left = page.evaluate(PRUNE.replace("MODULES", MODULES), alice.project)
    assert left == [5000, True]


def test_each_minute_of_a_sitting_it_asks_how_things_stand(alice, new_context):
    other = alice.sign_in_on(new_context()).open()
    lay(other, alice.project)
    page = alice.context.new_page()
    page.clock.install()
    go(page, f"{alice.url}/projects/{alice.project}/stitch")
    page.evaluate("(p) => phone.lay(p, [{kind: 'begin'}])", alice.project)
    page.clock.run_for(2_000)
    until(page, lambda: waiting(page) == 0)
    lay(other, alice.project, by=30)
    until(other, lambda: alice.on_the_server() == 31)
    page.clock.run_for(60_000)
    until(page, lambda: shown(page, alice.project) == 31)


@pytest.mark.parametrize("named", ["entry", "act"])
def test_what_is_undone_is_not_offered_for_undoing_again(alice, named):
    page = alice.open()
    act = "01a211ec-1564-7ecc-8b48-775ddcc4a05c"
    undo = """([project, named, act]) => {
      phone.lay(project, [{kind: 'stitches', row: 1, by: 2}]);
      phone.lay(project, [{kind: 'stitches', row: 1, by: 3, act}]);
      phone.lay(project, [{kind: 'undo', [named]: named === 'act' ? act : phone.last(project).at(-1).id}]);
      return phone.last(project).map((entry) => entry.by);
    }"""
    assert page.evaluate(undo, [alice.project, named, act]) == [2]
    until(page, lambda: waiting(page) == 0)
    assert page.evaluate("(p) => phone.last(p).map((entry) => entry.by)", alice.project) == [2]
