from uuid import uuid4

import pytest

WEEK = {"week": "2026-W07"}


def seconds(client):
    return client.get("/hours.json?week=2026-W07").json["total_seconds"]


def times(begin="2026-02-10T20:00", end="2026-02-10T21:10", **more):
    return {"once": str(uuid4()), "begin": begin, "end": end, **WEEK, **more}


@pytest.fixture
def sitting(alice, lanterns, sit):
    """A sitting of 1 h 30; gives its address."""
    return f"/hours/sittings/{lanterns}/{sit(alice, lanterns, '2026-02-10T20:00', '2026-02-10T21:30')}"


def test_the_weeks_sittings_are_listed(alice, sitting):
    page = alice.get("/hours/sittings?week=2026-W07").text
    for words in ("Tue 10 February", "20:00 to 21:30", "1:30", "Harbour lanterns"):
        assert words in page
    assert "20:00 to 21:30" not in alice.get("/hours/sittings?week=2026-W06").text


def test_times_are_changed(alice, sitting):
    answer = alice.post(sitting, data=times())
    assert (answer.status_code, answer.location) == (303, "/hours/sittings?week=2026-W07")
    assert seconds(alice) == 4200


def test_the_list_alone_is_answered_where_the_page_stays(alice, sitting):
    answer = alice.post(f"{sitting}/list", data=times())
    assert answer.status_code == 200
    assert answer.text.lstrip().startswith('<div id="sittings"')
    assert "20:00 to 21:10" in answer.text
    assert "Kept." in answer.text


def test_nothing_is_rewritten(alice, sitting, lanterns):
    before = alice.get(f"/projects/{lanterns}/snapshot").json
    alice.post(sitting, data=times())
    after = alice.get(f"/projects/{lanterns}/snapshot").json
    assert after["revision"] == before["revision"] + 1
    assert after["tail"][: len(before["tail"])] == before["tail"]
    assert after["tail"][-1]["kind"] == "amend"


def test_the_same_form_sent_twice_counts_once(alice, sitting, lanterns):
    form = times()
    for _ in range(2):
        assert alice.post(sitting, data=form).status_code == 303
    assert alice.get(f"/projects/{lanterns}/snapshot").json["revision"] == 3


def test_a_form_gone_back_to_and_changed_counts_anew(alice, sitting):
    form = times()
    alice.post(sitting, data=form)
    alice.post(sitting, data=form | {"end": "2026-02-10T20:30"})
    assert seconds(alice) == 1800


def test_a_time_left_as_it_was_keeps_its_seconds(alice, lanterns, lay):
    begin = {"id": str(uuid4()), "kind": "begin", "at": "2026-02-10T20:00:40.250Z"}
    lay(alice, lanterns, begin, {"kind": "end", "sitting": begin["id"], "at": "2026-02-10T21:30:10.000Z"})
    alice.post(f"/hours/sittings/{lanterns}/{begin['id']}", data=times(end="2026-02-10T21:00"))
    assert seconds(alice) == 3559.75


def test_a_sitting_is_struck_out_and_put_back(alice, sitting):
    alice.post(f"{sitting}/strike", data={"once": str(uuid4()), **WEEK})
    assert seconds(alice) == 0
    assert "Put back" in alice.get("/hours/sittings?week=2026-W07").text
    alice.post(f"{sitting}/return", data={"once": str(uuid4()), **WEEK})
    assert seconds(alice) == 5400
    assert "Put back" not in alice.get("/hours/sittings?week=2026-W07").text


def test_struck_out_twice_it_is_put_back_at_once(alice, sitting):
    alice.post(sitting, data=times())
    for _ in range(2):
        alice.post(f"{sitting}/strike", data={"once": str(uuid4()), **WEEK})
    answer = alice.post(f"{sitting}/return/list", data={"once": str(uuid4()), **WEEK})
    assert "Put back." in answer.text
    assert seconds(alice) == 4200


def test_what_is_not_struck_out_is_put_back_without_harm(alice, sitting):
    assert alice.post(f"{sitting}/return", data={"once": str(uuid4()), **WEEK}).status_code == 303
    assert seconds(alice) == 5400


def test_a_fix_holds_over_what_a_fast_clock_said(alice, sitting, lanterns, lay):
    fast = {"begin": "2026-02-10T20:00:00.000Z", "end": "2026-02-10T20:05:00.000Z"}
    id = sitting.rsplit("/", 1)[1]
    lay(alice, lanterns, {"kind": "amend", "sitting": id, "at": "2026-02-13T22:01:30.000Z", **fast})
    alice.post(sitting, data=times())
    assert seconds(alice) == 4200


def test_a_forgotten_sitting_is_added_once(alice, lanterns):
    form = times(project=str(lanterns))
    for _ in range(2):
        assert alice.post("/hours/sittings", data=form).status_code == 303
    assert seconds(alice) == 4200
    assert "20:00 to 21:10" in alice.get("/hours/sittings?week=2026-W07").text


def test_an_added_one_can_be_struck_out_and_put_back(alice, lanterns):
    form = times(project=str(lanterns))
    alice.post("/hours/sittings", data=form)
    added = f"/hours/sittings/{lanterns}/{form['once']}"
    alice.post(f"{added}/strike", data={"once": str(uuid4()), **WEEK})
    assert seconds(alice) == 0
    alice.post(f"{added}/return", data={"once": str(uuid4()), **WEEK})
    assert seconds(alice) == 4200


def test_one_left_running_is_offered_its_last_stitch(alice, lanterns, sit):
    sit(alice, lanterns, "2026-02-11T20:00", stitches=12)
    page = alice.get("/hours/sittings?week=2026-W07").text
    assert "20:00, left running" in page
    assert 'value="2026-02-11T20:00"' in page


def test_pauses_under_half_an_hour_are_shown_as_one_sitting(alice, lanterns, sit):
    sit(alice, lanterns, "2026-02-10T19:00", "2026-02-10T20:00")
    sit(alice, lanterns, "2026-02-10T20:29", "2026-02-10T21:00")
    sit(alice, lanterns, "2026-02-10T21:30", "2026-02-10T22:00")
    page = alice.get("/hours/sittings?week=2026-W07").text
    assert page.count("<section") == 2
    assert page.count("Keep these times") == 3
    assert "1:31" in page


def test_the_hour_that_came_twice_is_the_earlier(alice, lanterns, friday_evening, app):
    friday_evening.move_to("2026-11-01T10:00:00Z")
    alice.post("/hours/sittings", data=times("2026-10-25T01:10", "2026-10-25T01:50", project=str(lanterns)))
    assert alice.get("/hours.json?week=2026-W43").json["total_seconds"] == 2400


FAR = "9999-12-31T23:59"
WRONG = [
    ({"begin": ""}, "Say when it began."),
    ({"end": ""}, "Say when it ended."),
    ({"begin": "yesterday"}, "That is no date and time."),
    ({"begin": "2026-02-30T20:00"}, "That is no date and time."),
    ({"begin": "2026-02-10"}, "That is no date and time."),
    ({"begin": "2026-02-10T20:00Z"}, "That is no date and time."),
    ({"begin": "٢٠٢٦-02-10T20:00"}, "That is no date and time."),
    ({"begin": "0001-01-01T00:00"}, "The year must lie between"),
    ({"end": FAR}, "The year must lie between"),
    ({"begin": "<script>alert(1)</script>"}, "That is no date and time."),
    ({"begin": "9" * 100_000}, "That is no date and time."),
    ({"end": "2026-02-10T19:00"}, "The end must come after the beginning."),
    ({"end": "2026-02-10T20:00"}, "The end must come after the beginning."),
    ({"end": "2026-02-11T20:01"}, "That is over 24 hours."),
    ({"begin": "2026-02-13T21:00", "end": "2026-02-13T22:30"}, "That has not come yet."),
    ({"begin": "2026-02-13T22:30", "end": "2026-02-13T22:45"}, "That has not come yet."),
    ({"begin": "2025-03-30T01:30", "end": "2025-03-30T03:00"}, "There was no 01:30 that day"),
    ({"begin": "2025-03-30T00:30", "end": "2025-03-30T01:30"}, "There was no 01:30 that day"),
    ({"once": "7"}, "This form is not ours any more."),
    ({"once": ""}, "This form is not ours any more."),
]


@pytest.mark.parametrize(("typed", "sentence"), WRONG)
def test_wrong_times_are_answered_by_a_sentence_and_nothing_is_written(alice, sitting, typed, sentence):
    for address, whole in ((sitting, True), (f"{sitting}/list", False)):
        answer = alice.post(address, data=times() | typed)
        assert answer.status_code == 422
        assert sentence in answer.text
        assert "<script>alert" not in answer.text
        assert ("<html" in answer.text) == whole
    assert seconds(alice) == 5400


NO_PROJECT = [
    ({"project": ""}, "Choose the project."),
    ({"project": "lanterns"}, "Choose the project."),
    ({"project": str(uuid4())}, "There is no such project of yours."),
]


@pytest.mark.parametrize(("typed", "sentence"), [*WRONG[::4], *NO_PROJECT])
def test_nothing_wrong_is_added(alice, lanterns, typed, sentence):
    for address, whole in (("/hours/sittings", True), ("/hours/sittings/list", False)):
        answer = alice.post(address, data=times(project=str(lanterns)) | typed)
        assert answer.status_code == 422
        assert sentence in answer.text
        assert '<details class="card" open>' in answer.text
        assert ("<html" in answer.text) == whole
    assert seconds(alice) == 0


def test_what_was_typed_is_still_there(alice, sitting):
    answer = alice.post(f"{sitting}/list", data=times(end="2026-02-10T19:05"))
    assert 'value="2026-02-10T19:05"' in answer.text
    assert answer.text.count("details open") == 1


@pytest.mark.parametrize("body", [b"\xff\xfe\x00", b"begin=%FF%FE&end=%00", b"x" * 10_000_000])
def test_a_body_that_is_no_form_is_answered_by_a_sentence(alice, sitting, body):
    answer = alice.post(sitting, data=body, content_type="application/x-www-form-urlencoded")
    assert answer.status_code in (400, 413, 422)
    assert seconds(alice) == 5400


@pytest.mark.parametrize("end", ["", "/list", "/strike", "/strike/list", "/return", "/return/list"])
def test_charlie_changes_nothing_of_alices(alice, charlie, sitting, end):
    assert charlie.post(sitting + end, data=times()).status_code == 404
    assert seconds(alice) == 5400


def test_charlie_adds_nothing_to_alices_project(alice, charlie, lanterns):
    answer = charlie.post("/hours/sittings", data=times(project=str(lanterns)))
    assert answer.status_code == 422
    assert "There is no such project of yours." in answer.text
    assert seconds(alice) == seconds(charlie) == 0


def test_without_signing_in_nothing_is_changed(alice, client, sitting):
    assert client.post(sitting, data=times()).status_code == 303
    assert seconds(alice) == 5400


@pytest.mark.parametrize("part", ["", "/list"])
def test_with_a_week_that_cannot_be_shown_nothing_is_written(alice, lanterns, part):
    typed = times(project=str(lanterns)) | {"week": "banana"}
    assert alice.post(f"/hours/sittings{part}", data=typed).status_code == 422
    assert seconds(alice) == 0
