"""The forms of a legend in the tests, sent as a browser sends them."""

import re
from html import unescape
from uuid import uuid4

from webapp.db import db
from webapp.projects.models import Project
from webapp.threads.models import LegendLine

MADDER = {"symbol": "X", "thread": "Madder", "colour": "#9b3527", "strands": "2", "full": "1,240"}


def keep(client, project, **fields):
    """Write a line; gives its id."""
    id = uuid4()
    sent = {**MADDER, **fields, "id": str(id)}
    answer = client.post(f"/projects/{project}/thread/lines", data=sent)
    assert answer.status_code == 303, answer.text
    return id


def rows(app, project):
    with app.app_context():
        query = db.select(LegendLine).where(LegendLine.project == project).order_by(LegendLine.position)
        return list(db.session.scalars(query))


def load(app, project):
    with app.app_context():
        return db.session.scalars(db.select(Project).where(Project.id == project)).one()


def form_in(page):
    """Give what the first form of a page would send as it was drawn, as her browser has it."""
    form = page.split("<main", 1)[1].split("<form", 1)[1].split("</form>")[0]
    sent = {}
    for tag in re.findall(r"<input[^>]*>", form):
        told = dict(re.findall(r'(\w+)="([^"]*)"', tag))
        if told.get("type") != "radio" or tag.endswith(" checked>"):
            sent[told["name"]] = unescape(told.get("value", ""))
    for name, options in re.findall(r'<select[^>]*name="(\w+)"[^>]*>(.*?)</select>', form, re.DOTALL):
        sent[name] = re.search(r'value="([^"]*)" selected', options)[1]
    return sent


def paste(client, project, text):
    """Paste a text; gives the answer."""
    return client.post(f"/projects/{project}/thread/paste", data={"text": text})


def previewed(page):
    """Give what the form of a preview would send."""
    packed = [unescape(text) for text in re.findall(r'name="row" value="([^"]*)"', page)]
    return {"batch": re.search(r'name="batch" value="([^"]*)"', page)[1], "row": packed}


def settle(client, project, page, **more):
    """Accept a preview, with what was typed into it."""
    return client.post(f"/projects/{project}/thread/paste", data={**previewed(page.text), **more})
