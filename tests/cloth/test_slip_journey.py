"""The slip in a real browser at phone size: both languages agree; printed, and read without network."""

import re
from urllib.parse import urlencode

import pytest
from playwright.sync_api import expect

from tests.browser.phones import axe_finds_nothing, lose_network, until
from tests.cloth.counter import CODE_DRAWN, SHIFTS
from tests.cloth.languages import folder_of
from tests.cloth.slips import VECTORS, said_of, slip_of, tables
from webapp.cloth import slip_rows, slip_saying
from webapp.cloth.slip_text import write

THERE = """async ([folder, tables, slips, refused]) => {
  const [text, saying, asking, rows] = await Promise.all(
    ["slip_text", "slip_saying", "slip_asking", "slip_rows"].map((name) => import(`${folder}/${name}.js`)));
  const fault = (one) => {
    try { return text.read(one); } catch (error) {
      if (!(error instanceof text.Unreadable)) throw error;
      return error.message;
    }
  };
  return [
    slips.map((one) => {
      const slip = text.read(one);
      const again = asking.ask(asking.typedOf(slip)).slip;
      return [slip, text.write(slip), saying.slots(slip, tables), saying.shapes(slip, tables), again,
        rows.rows(slip, tables.threads)];
    }),
    refused.map(fault),
  ];
}"""
TEXT = VECTORS["slips"][0]["text"]
LONGEST = write(slip_of(VECTORS["slips"][2]["slip"] | {"title": "Щ" * 60, "width": 3333, "height": 2411}))
QUERY = urlencode({"s": TEXT})


def test_both_languages_read_write_and_say_a_slip_alike(page, server):
    page.goto(f"{server.url}/health")
    texts = [case["text"] for case in VECTORS["slips"]]
    refused = [case["text"] for case in VECTORS["refused"]]
    slips, faults = page.evaluate(THERE, [folder_of(server.url), tables(), texts, refused])
    for case, (slip, text, said, drawn, again, rows) in zip(VECTORS["slips"], slips, strict=True):
        made = slip_of(case["slip"])
        assert (slip, text) == ({"threads": []} | case["slip"], case["text"])
        assert said == said_of(made)
        assert drawn == slip_saying.shapes(made, tables())
        assert rows == slip_rows.rows(made, tables()["threads"])
        assert again == slip | {"own": again["own"]}  # her own margin is written to a hundredth
    assert faults == [case["error"] for case in VECTORS["refused"]]


@pytest.fixture
def slip(page, server):
    page.add_init_script(SHIFTS)
    page.goto(f"{server.url}/cloth/slip?{QUERY}")
    page.wait_for_selector('[data-island="slip"][data-live]')
    return page


def test_the_sheet_stands_still_and_axe_finds_nothing(slip):
    for width, height in ((360, 640), (390, 844)):
        slip.set_viewport_size({"width": width, "height": height})
        slip.reload()
        slip.wait_for_selector('[data-island="slip"][data-live]')
        assert slip.evaluate("shifted") == 0
        assert slip.evaluate("document.documentElement.scrollWidth") <= width
    slip.get_by_text("Name it, or change it").tap()
    slip.get_by_text("Finish, frame, margin").tap()
    axe_finds_nothing(slip)


def test_any_slip_is_one_sheet_of_a5(slip, server):
    for text in (TEXT, LONGEST):
        slip.goto(f"{server.url}/cloth/slip?{urlencode({'s': text})}")
        until(slip, lambda: slip.evaluate(CODE_DRAWN))
        sheet = slip.pdf(prefer_css_page_size=True)
        assert sheet.count(b"/Type /Page\n") == 1
        assert b"/MediaBox [0 0 420" in sheet  # 148 mm in points


def test_on_paper_all_is_black_on_white_and_the_code_measures_what_it_should(slip):
    slip.emulate_media(media="print")
    colours = slip.evaluate("""["color", "background-color"].map((name) =>
      getComputedStyle(document.querySelector("[data-sheet] h2")).getPropertyValue(name))""")
    assert colours[0] == "rgb(0, 0, 0)"
    assert slip.evaluate("getComputedStyle(document.body).backgroundColor") == "rgb(255, 255, 255)"
    side = (
        slip.evaluate("document.querySelector('[data-code] img').getBoundingClientRect().width") / 96 * 25.4
    )
    assert side * 37 / 45 >= 24.9  # version 5: 37 modules and 4 of quiet on either side
    for hidden in ("Print", "Make it a project here"):
        expect(slip.get_by_role("button", name=hidden)).to_be_hidden()


def test_its_picture_holds_as_much_as_the_sheet(slip):
    with slip.expect_download() as kept:
        slip.get_by_role("button", name="Picture").tap()
    data = kept.value.path().read_bytes()
    wide, high = (int.from_bytes(data[at : at + 4], "big") for at in (16, 20))
    assert (data[:4], wide) == (b"\x89PNG", 1280)
    assert high > 1600
    assert len(data) > 50_000  # words, drawing and code: a blank of that size packs to a tenth of it


@pytest.mark.browser_context_args(service_workers="allow")
def test_without_network_a_link_opens_and_figures_make_a_slip(new_context, server):
    context = new_context(permissions=["clipboard-read", "clipboard-write"])
    page = lose_network(context, f"{server.url}/cloth/slip")
    page.goto(f"{server.url}/cloth/slip?{QUERY}")
    expect(page.locator('[data-sheet] [data-slot="cut"]')).to_have_text("16 × 18 in")
    expect(page.locator("[data-code]")).to_be_hidden()
    page.get_by_role("button", name="Make it a project here").tap()
    expect(page.get_by_text("No network: it can be made a project when that is back.")).to_be_visible()
    page.get_by_text("Name it, or change it").tap()
    page.get_by_label("Name").fill("Tern & gull ~ 2")
    page.get_by_role("button", name="Make the slip").tap()
    expect(page.locator('[data-sheet] [data-slot="title"]')).to_have_text("Tern & gull ~ 2")
    page.get_by_role("button", name="Copy link").tap()
    expect(page.get_by_text("The link is copied.")).to_be_visible()
    link = page.evaluate("navigator.clipboard.readText()")
    page.goto(f"{server.url}/cloth/slip?s={TEXT[:-4]}")
    expect(page.get_by_role("alert").filter(has_text="damaged on the way")).to_be_visible()
    context.set_offline(False)
    page.goto(link)
    page.get_by_role("button", name="Make it a project here").tap()
    expect(page).to_have_url(re.compile("/projects/[0-9a-f-]{36}$"))
    expect(page.get_by_text("Tern & gull ~ 2").first).to_be_visible()
