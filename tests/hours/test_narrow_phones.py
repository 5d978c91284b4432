"""Hours and a story on the narrowest of phones, with as much on them as a year brings."""

from datetime import date, timedelta
from uuid import uuid4

import pytest
from PIL import Image

from tests.browser.phones import OURS, Stitcher

NARROW = [(360, 640), (320, 568)]
LONG = ["The harbour at Martinmas with all its lanterns lit and the boats come home", "Quince" * 20]


@pytest.fixture
def alice(context, server):
    return Stitcher.arrive(context, server)


def lay(alice, entries):
    """Send entries to the journal as phones do, so many at once."""
    for first in range(0, len(entries), 400):
        sent = {"entries": [{"id": str(uuid4()), **entry} for entry in entries[first : first + 400]]}
        answer = alice.context.request.post(f"{alice.url}/journal", data=sent, headers=OURS)
        assert answer.ok, answer.text()
        assert answer.json()["refused"] == []


def evening(project, day, row, stitches, minutes):
    """Sit down at seven, and lay so many in a row by the end."""
    sat, hour = str(uuid4()), 19 + minutes // 60
    end = f"{day}T{hour}:{minutes % 60:02}:00.000Z"
    return [
        {"id": sat, "kind": "begin", "project": project, "at": f"{day}T19:00:00.000Z"},
        {"kind": "stitches", "project": project, "row": row, "by": stitches, "at": end},
        {"kind": "done", "project": project, "row": row, "done": True, "at": end},
        {"kind": "end", "project": project, "sitting": sat, "at": end},
    ]


def beyond(page):
    """Name what stands out of the middle of the page, or makes it wider than the phone."""
    return page.evaluate(
        """() => {
          const { left, right } = document.querySelector("main").getBoundingClientRect();
          const out = (one) => one.left < left + 15.5 || one.right > right - 15.5;
          const wide = document.documentElement.scrollWidth > innerWidth ? ["the page"] : [];
          const cells = [...document.querySelectorAll("main table, main figure, main dl, main p, main td")];
          const seen = cells.filter((one) => one.checkVisibility() && !one.closest(".unseen, .card"));
          const lying = seen.filter((one) => out(one.getBoundingClientRect()));
          return [...wide, ...lying.map((one) => one.outerHTML.slice(0, 80))];
        }"""
    )


def test_a_year_of_eight_hundred_hours_is_no_wider_than_the_phone(alice, page):
    projects = [alice.new_project(title) for title in LONG]
    first = date(2024, 1, 2)
    days = [(n, projects[n % 2], first + timedelta(days=n)) for n in range(320)]
    lay(
        alice,
        [entry for n, project, day in days for entry in evening(project, day, n // 2 % 98 + 1, 1234, 150)],
    )
    for address in ("/hours/year?year=2024", "/hours/month?month=2024-07", "/hours?week=2024-W28"):
        for width, height in NARROW:
            page.set_viewport_size({"width": width, "height": height})
            page.goto(alice.url + address)
            page.evaluate("document.querySelectorAll('details').forEach((one) => (one.open = true))")
            assert page.locator("[data-projects] tbody tr").count() == 2
            assert beyond(page) == [], (address, width)
            for title in page.locator("[data-projects] .named > span").all():
                assert title.bounding_box()["width"] >= 75, (address, width)
    page.goto(f"{alice.url}/hours/year?year=2024")
    assert "800:00" in page.inner_text("main")


@pytest.fixture
def story(alice, page, tmp_path):
    """The story of a project of six weeks, most of another year, with a last line and two photographs."""
    lanterns = alice.new_project(height="20")
    days = [(n, date.today() - timedelta(weeks=ago)) for n, ago in enumerate((66, 64, 62, 60, 58, 0))]
    lay(alice, [entry for n, day in days for entry in evening(lanterns, day, n + 1, 200, 60)])
    sat, at = str(uuid4()), "2025-02-02T20:00:00.000Z"
    last = [{"id": sat, "kind": "begin"}, {"kind": "end", "sitting": sat, "note": "lamp next"}]
    lay(alice, [{**entry, "project": lanterns, "at": at} for entry in last])
    Image.new("RGB", (60, 40)).save(tmp_path / "work.jpg")
    page.set_viewport_size({"width": 360, "height": 640})
    for line in ("the quay", "the lamp"):
        page.goto(f"{alice.url}/projects/{lanterns}/story")
        page.get_by_text("Add a photograph").click()
        page.get_by_label("Picture").set_input_files(tmp_path / "work.jpg")
        page.get_by_label("Where you stopped").fill(line)
        page.get_by_role("button", name="Keep it").click()
        page.get_by_text(line).first.wait_for()
    return page


def test_where_she_stopped_and_when_are_two_lines(story):
    found = story.evaluate(
        """() => [...document.querySelectorAll(".stopped p, .photograph figcaption > span")].map((one) => {
          const [text, date] = [document.createRange(), one.querySelector(".quiet").getBoundingClientRect()];
          text.selectNode(one.firstChild);
          return [one.firstChild.data.trim(), date.top >= text.getBoundingClientRect().bottom - 2];
        })"""
    )
    assert dict(found) == {"lamp next": True, "the lamp": True, "the quay": True}


@pytest.mark.parametrize("letters", ["100%", "150%"])
def test_the_drawings_of_a_growing_cloth_stand_level_with_their_dates_below_their_middles(story, letters):
    story.evaluate("(size) => { document.documentElement.style.fontSize = size; }", letters)
    rows = story.evaluate(
        """() => [...document.querySelectorAll(".grew li")].map((one) => {
          const [drawing, said] = [one.querySelector("svg"), document.createRange()];
          said.selectNodeContents(one.querySelector("span"));
          const lines = [...said.getClientRects()].map((line) => (line.left + line.right) / 2);
          const box = drawing.getBoundingClientRect();
          return [one.getBoundingClientRect().top, box.top, (box.left + box.right) / 2, lines];
        })"""
    )
    assert len({top for top, _, _, _ in rows}) >= 2  # more than one row of them
    assert {len(lines) for _, _, _, lines in rows} == ({1} if letters == "100%" else {1, 2})
    for row, drawing, middle, lines in rows:
        assert drawing == pytest.approx(row, abs=0.5)
        assert lines == pytest.approx([middle] * len(lines), abs=1)
