"""A legend on Stitch, and the strip of needles it makes."""

from uuid import uuid4

LINES = [
    {"symbol": "X", "thread": "Madder dark", "colour": "#9b3527", "full": "300"},
    {"symbol": "o", "thread": "Sea green", "colour": "#2e7d6b", "full": "40", "half": "6", "quarter": "4"},
    {"symbol": "/", "thread": "Charcoal", "colour": "#181715", "full": "20", "back": "30"},
]


def legend(desk, lines=LINES, **fields):
    """Give the project a legend by the form of its lines, and open it."""
    desk.project(**fields)
    for line in lines:
        desk.post(f"/projects/{desk.id}/thread/lines", **{"strands": "2"} | line | {"id": str(uuid4())})
    page = desk.open()
    page.wait_for_selector(".chip")
    return page


def chip(page, name):
    return page.get_by_role("button", name=name).and_(page.locator(".chip"))


def threads(desk):
    return {key: {name: n[:2] for name, n in by.items()} for key, by in desk.snapshot()["threads"].items()}


def press_long(page, button):
    box = button.bounding_box()
    page.mouse.move(box["x"] + 20, box["y"] + 20)
    page.mouse.down()
    page.wait_for_timeout(750)
    page.mouse.up()
