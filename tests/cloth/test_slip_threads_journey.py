"""A slip's threads in a real browser: both languages agree; without network, on paper, in the picture."""

import re
from dataclasses import asdict, replace
from random import Random
from typing import Any
from urllib.parse import urlencode

import pytest
from playwright.sync_api import expect

from tests.browser.phones import in_nobodys_way, lose_network, until
from tests.cloth.counter import CODE_DRAWN, SHIFTS, slot
from tests.cloth.forty import forty
from tests.cloth.languages import folder_of
from tests.cloth.slips import VECTORS, slip_of, tables
from webapp.cloth import class_threads, classroom, slip_rows, slip_text, slip_threads
from webapp.cloth.slip_text import write
from webapp.threads.legend import Line, Part

QUINCE = slip_of(VECTORS["slips"][0]["slip"])
FORTY = replace(QUINCE, threads=forty())
LONG = replace(
    QUINCE, threads=tuple(Line((Part("Полевые цветы"),), one.symbol, full=one.full) for one in forty())
)
CLASS = {"n": "10", "width": "140", "height": "168", "count": "28", "over": "2", "bolt_width": "55"}

THERE = """async ([folder, tables, slips, classes]) => {
  const [text, rows, lessons, room] = await Promise.all(
    ["slip_text", "slip_rows", "class_threads", "classroom"].map((name) => import(`${folder}/${name}.js`)));
  return [
    slips.map((one) => {
      const slip = text.read(one);
      const said = [rows.rows(slip, tables.threads), rows.texts(slip, tables.threads)];
      return [slip, text.write(slip), text.weight(one), text.coded(slip), ...said];
    }),
    classes.map((typed) => {
      const { values } = room.ask(typed);
      return [lessons.rows(values, tables.threads), lessons.texts(values, tables)];
    }),
  ];
}"""


def random_line(rng: Random) -> Line:
    """Make a line of a legend at random, of names few enough to meet again."""
    kinds = list(slip_threads.KINDS)
    parts = tuple(
        Part(rng.choice("AB_~é🧵"), rng.choice(kinds), rng.randint(1, 4), rng.choice(["", "", "C~_i"]))
        for _ in range(rng.choice([1, 1, 1, 2, 3]))
    )
    most = rng.choice([0, 20, 3_000, 1_000_000])
    symbol = rng.choice(["", "●", "A_~"])
    return Line(parts, symbol, **{name: rng.randint(0, most) for name in slip_threads.COUNTS})


def as_a_slip_has_it(line: Line) -> dict[str, Any]:
    """Give what a slip says of a line: the rest of it is her own."""
    names = ("thread", "kind", "strands", "instead")
    parts = [{name: getattr(part, name) for name in names} for part in line.parts]
    return {"symbol": line.symbol, "parts": parts, **line.counts._asdict()}


def test_both_languages_say_the_same_of_any_threads(page, server):
    page.goto(f"{server.url}/health")
    rng = Random(5)
    legends = [tuple(random_line(rng) for _ in range(rng.randint(0, 9))) for _ in range(150)]
    grounds = [
        {"count": rng.choice([11.0, 13.72, 28.0]), "across": rng.choice([None, 14.5])} for _ in legends
    ]
    slips = [replace(QUINCE, threads=one, **on) for one, on in zip(legends, grounds, strict=True)]
    slips += [FORTY, LONG]
    cut = {"by": "cut", "cut_width": "8", "cut_height": "10"}
    classes = [
        {**CLASS, **rng.choice([{}, {}, {"unit": "cm"}, cut]), "n": str(rng.randint(1, 200)),
         "threads": rng.choice([slip_threads.write(one)] * 9 + ["1~damaged"])}
        for one in legends
    ]  # fmt: skip
    texts = [write(slip) for slip in slips]
    said, lessons = page.evaluate(THERE, [folder_of(server.url), tables(), texts, classes])
    kinds = tables()["threads"]
    for slip, text, found in zip(slips, texts, said, strict=True):
        told = [slip_rows.rows(slip, kinds), slip_rows.texts(slip, kinds)]
        as_it_is = {**asdict(slip), "threads": [as_a_slip_has_it(one) for one in slip.threads]}
        assert found == [as_it_is, text, slip_text.weight(text), slip_text.coded(slip), *told]
    for typed, found in zip(classes, lessons, strict=True):
        values = classroom.ask(typed).values
        assert found == [class_threads.rows(values, kinds), class_threads.texts(values, tables())]


def opened(page, server, slip):
    page.goto(f"{server.url}/cloth/slip?{urlencode({'s': write(slip)})}")
    page.wait_for_selector('[data-island="slip"][data-live]')


def test_forty_threads_stand_still_and_axe_finds_nothing(page, server):
    page.add_init_script(SHIFTS)
    for slip in (FORTY, LONG):
        for width, height in ((360, 640), (390, 844)):
            page.set_viewport_size({"width": width, "height": height})
            opened(page, server, slip)
            assert page.evaluate("shifted") == 0
        in_nobodys_way(page)
    page.goto(f"{server.url}/cloth/class?{urlencode(CLASS | {'threads': slip_threads.write(FORTY.threads)})}")
    page.wait_for_selector("[data-bench][data-live]")
    expect(page.locator("[data-rows] tr")).to_have_count(40)
    in_nobodys_way(page)


def test_on_paper_the_threads_follow_and_the_code_keeps_its_millimetres(page, server):
    opened(page, server, FORTY)
    until(page, lambda: page.evaluate(CODE_DRAWN))
    sheet = page.pdf(prefer_css_page_size=True)
    assert 2 <= sheet.count(b"/Type /Page\n") <= 3
    page.emulate_media(media="print")
    wide = (
        page.evaluate("document.querySelector('[data-code] img').getBoundingClientRect().width") / 96 * 25.4
    )
    assert 60 <= wide <= 78  # half a millimetre a module
    expect(page.locator("[data-rows] tr").last).to_be_visible()


def test_its_picture_holds_the_threads_too(page, server):
    def high(slip):
        opened(page, server, slip)
        with page.expect_download() as kept:
            page.get_by_role("button", name="Picture").tap()
        return int.from_bytes(kept.value.path().read_bytes()[20:24], "big")

    eight = replace(QUINCE, threads=forty()[:8])
    assert high(FORTY) - high(eight) >= 32 * 16 * 2  # 32 lines more, of 16 px and more, twice as fine


@pytest.mark.browser_context_args(service_workers="allow")
def test_without_network_a_slip_shows_its_threads_and_goes_on_to_its_class(new_context, server):
    page = lose_network(new_context(), f"{server.url}/cloth/slip")
    opened(page, server, FORTY)
    expect(page.locator("[data-rows] tr")).to_have_count(40)
    expect(slot(page, "to-buy")).to_contain_text("each colour of one dye lot")
    page.get_by_text("Name it, or change it").tap()
    page.get_by_label("Name").fill("Tern")
    page.get_by_role("button", name="Make the slip").tap()
    expect(page.locator('[data-sheet] [data-slot="title"]')).to_have_text("Tern")
    expect(page.locator("[data-rows] tr")).to_have_count(40)
    page.get_by_role("link", name="For a class").tap()
    page.wait_for_selector("[data-bench][data-live]")
    page.get_by_label("How many").press_sequentially("10")
    page.get_by_role("link", name="55 in").tap()
    expect(slot(page, "needles")).to_contain_text("12 needles, size 24")
    expect(page.locator("[data-rows] tr")).to_have_count(40)
    expect(page.locator("[data-rows] tr").first).to_contain_text(re.compile("each \\d+ × 18 in, 2 strands"))
    page.get_by_label("A cut").tap()
    page.get_by_label("Cut wide", exact=True).fill("8")
    page.get_by_label("Cut high", exact=True).fill("10")
    expect(slot(page, "to-buy")).to_have_text(class_threads.BY_DESIGN)


def test_a_slip_whose_threads_its_code_cannot_hold_says_so(page, server):
    opened(page, server, LONG)
    expect(slot(page, "uncoded")).to_have_text("40 threads: too many for a code. The link has them.")
    expect(page.locator("[data-code]")).not_to_have_attribute("data-large", "")
