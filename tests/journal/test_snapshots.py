"""What a batch or a question is answered with: no more of a snapshot than has changed."""

from tests.journal.posted import post, stitches


def test_a_snapshot_not_changed_since_is_not_sent_again(alice, project):
    post(alice, stitches(project))
    first = alice.get(f"/projects/{project}/snapshot")
    assert first.headers["ETag"] == '"1"'
    again = alice.get(f"/projects/{project}/snapshot", headers={"If-None-Match": first.headers["ETag"]})
    assert again.status_code == 304


def test_a_newer_plan_is_sent_though_no_entry_was_added(alice, project):
    first = alice.get(f"/projects/{project}/snapshot")
    alice.post(f"/projects/{project}/state", data={"state": "resting"})
    asked = {"If-None-Match": first.headers["ETag"]}
    again = alice.get(f"/projects/{project}/snapshot?plan={first.json['plan']['revision']}", headers=asked)
    assert again.json["plan"]["state"] == "resting"


def test_only_the_places_changed_since_a_known_revision_come_back(alice, project):
    post(alice, stitches(project), stitches(project, 2, row=13))
    known = {str(project): 2}
    snapshot = post(alice, stitches(project, 3, row=14), known=known).json["projects"][str(project)]
    assert snapshot["rows"] == {"14": {"stitches": 1, "done": False}}
    assert (snapshot["since"], snapshot["stitches"]) == (2, 3)


def test_the_first_stitch_takes_a_planned_project_in_hand(alice, project):
    before = alice.get(f"/projects/{project}/snapshot").json["plan"]
    after = post(alice, stitches(project)).json["projects"][str(project)]["plan"]
    assert (before["state"], after["state"]) == ("planned", "in hand")
    assert after["revision"] > before["revision"]
