"""The four states, as a fragment with a URL of its own."""

import pytest

from webapp.db import db
from webapp.projects.models import Project


def load(app, project):
    with app.app_context():
        return db.session.scalars(db.select(Project).where(Project.id == project)).one()


def pressed(fragment):
    buttons = [
        part.split(">")[0] for part in fragment.split("<button")[1:] if 'name="state"' in part.split(">")[0]
    ]
    return [b.split('value="')[1].split('"')[0] for b in buttons if 'aria-pressed="true"' in b]


def test_the_fragment_is_a_form_and_no_page(alice, new_project):
    project = new_project(alice)
    fragment = alice.get(f"/projects/{project}/state").text
    assert fragment.strip().startswith("<form")
    assert fragment.strip().endswith("</form>")
    assert f'hx-post="/projects/{project}/state"' in fragment
    assert pressed(fragment) == ["planned"]


@pytest.mark.parametrize("state", ["in hand", "resting", "finished"])
def test_each_state_can_be_set_and_left(app, alice, new_project, state):
    project = new_project(alice)
    answer = alice.post(f"/projects/{project}/state", data={"state": state})
    assert (answer.status_code, pressed(answer.text)) == (200, [state])
    assert (load(app, project).state, load(app, project).plan_revision) == (state, 2)
    alice.post(f"/projects/{project}/state", data={"state": "planned"})
    assert load(app, project).state == "planned"


def test_the_same_state_again_changes_nothing(app, alice, new_project):
    project = new_project(alice, state="resting")
    alice.post(f"/projects/{project}/state", data={"state": "resting"})
    assert load(app, project).plan_revision == 1


@pytest.mark.parametrize("state", [None, "", "lost", "Planned", "true", "<b>"])
def test_a_wrong_state_is_told_in_the_fragment(app, alice, new_project, state):
    project = new_project(alice)
    answer = alice.post(f"/projects/{project}/state", data={} if state is None else {"state": state})
    assert answer.status_code == 422
    assert answer.text.strip().startswith("<form")
    assert "Choose one of the four states." in answer.text
    assert load(app, project).state == "planned"


def test_it_works_without_scripts(app, alice, new_project):
    """The form's own action leads back to the page."""
    project = new_project(alice, frame="hand")
    assert f'action="/projects/{project}"' in alice.get(f"/projects/{project}/state").text
    answer = alice.post(f"/projects/{project}", data={"state": "resting"})
    assert (answer.status_code, answer.location) == (303, f"/projects/{project}")
    assert (load(app, project).state, load(app, project).frame) == ("resting", "hand")
