import pytest

ANY = "00000000-0000-7000-8000-000000000001"
DAYS = ["2026-02-09", "2026-02-10", "2026-02-11", "2026-02-12", "2026-02-13", "2026-02-14", "2026-02-15"]


def test_it_works(alice, new_project, sit, figures):
    lanterns = new_project(alice)
    sit(alice, lanterns, "2026-02-09T20:00", "2026-02-09T21:30", stitches=105)
    sit(alice, lanterns, "2026-02-11T19:00", "2026-02-11T19:35", stitches=40)
    week = figures(alice)
    assert (week["total_seconds"], week["stitches"]) == (7500, 145)
    assert [day["date"] for day in week["days"]] == DAYS
    assert [day["seconds"] for day in week["days"]] == [5400, 0, 2100, 0, 0, 0, 0]
    (only,) = week["projects"]
    assert (only["title"], only["sitting_seconds"]) == ("Harbour lanterns", 7500)
    assert only["stitches_per_hour"] == pytest.approx(145 / 7500 * 3600)


def test_the_page_says_the_same(alice, new_project, sit):
    sit(alice, new_project(alice), "2026-02-09T20:00", "2026-02-09T21:30", stitches=105)
    page = alice.get("/hours?week=2026-W07").text
    for words in ("Week 7", "9 to 15 February", "1:30", "105 stitches", "70 an hour", "Mon 9 February"):
        assert words in page, words
    assert page.count("<path") > 4


def test_thousands_stand_apart_in_all_figures(alice, new_project, sit):
    sit(alice, new_project(alice), "2026-02-09T20:00", "2026-02-09T21:30", stitches=4000)
    page = alice.get("/hours?week=2026-W07").text
    assert "4,000 stitches" in page
    assert "2,667 an hour" in page
    assert "4000" not in page


@pytest.mark.parametrize("address", ["/hours", "/hours?week=2026-W06", "/hours/sittings"])
def test_without_a_project_it_says_what_to_do_first(alice, address):
    page = alice.get(address).text
    assert "No project yet" in page
    assert 'href="/projects/new"' in page


def test_without_a_week_it_is_this_one(alice, figures):
    assert alice.get("/hours.json").json["week"] == "2026-W07"
    assert "Week 7" in alice.get("/hours").text


def test_the_part_alone_is_no_page(alice):
    part = alice.get("/hours/week?week=2026-W06").text
    assert part.lstrip().startswith('<div id="week"')
    assert "<html" not in part


def test_stitches_belong_to_the_day_of_their_own_time(alice, new_project, lay, figures):
    lanterns = new_project(alice)
    late = {"kind": "stitches", "row": 1, "by": 7, "at": "2026-02-10T23:59:59.999Z"}
    lay(alice, lanterns, late, late | {"by": 5, "at": "2026-02-11T00:00:00.000Z"})
    assert [day["stitches"] for day in figures(alice)["days"]] == [0, 7, 5, 0, 0, 0, 0]


@pytest.mark.parametrize(
    ("entry", "counted"),
    [
        ({"by": 9}, 9),
        ({"by": 9, "why": "stitched"}, 9),
        ({"by": -2}, -2),
        ({"by": -9, "why": "unpicked"}, 0),
        ({"by": 9, "why": "before"}, 0),
        ({"by": 9, "why": "corrected"}, 0),
        ({"by": 9, "pass": "back"}, 0),
        ({"by": 9, "pass": "cross"}, 9),
    ],
)
def test_only_crosses_that_she_stitched_count(alice, new_project, lay, figures, entry, counted):
    at = "2026-02-10T20:00:00.000Z"
    lay(alice, new_project(alice), {"kind": "stitches", "row": 1, "at": at, **entry})
    assert figures(alice)["stitches"] == counted


def test_what_was_undone_does_not_count(alice, new_project, lay, figures):
    lanterns, at = new_project(alice), "2026-02-10T20:00:00.000Z"
    (laid,) = lay(alice, lanterns, {"kind": "stitches", "row": 1, "by": 9, "at": at})
    lay(alice, lanterns, {"kind": "undo", "entry": laid, "at": at})
    assert figures(alice)["stitches"] == 0


def test_her_week_holds_the_iso_weeks_thursday_wherever_it_starts(alice, figures, app):
    week_starts_on(app, 6)
    week = figures(alice)
    assert (week["week"], week["first_date"], week["last_date"]) == ("2026-W07", "2026-02-08", "2026-02-14")


def test_a_sitting_over_midnight_is_split_and_no_second_lost(alice, new_project, sit, figures):
    sit(alice, new_project(alice), "2026-02-10T23:20", "2026-02-11T00:25")
    assert [day["seconds"] for day in figures(alice)["days"]] == [0, 2400, 1500, 0, 0, 0, 0]


def test_two_devices_at_once_are_counted_once(alice, new_project, sit, figures):
    lanterns = new_project(alice)
    sit(alice, lanterns, "2026-02-10T19:00", "2026-02-10T20:00")
    sit(alice, lanterns, "2026-02-10T19:30", "2026-02-10T20:30")
    assert figures(alice)["total_seconds"] == 5400


def test_where_two_projects_overlap_the_parts_still_add_up(alice, new_project, sit, figures):
    lanterns, quince = new_project(alice), new_project(alice, title="Quince tree")
    sit(alice, lanterns, "2026-02-10T19:00", "2026-02-10T21:00")
    sit(alice, quince, "2026-02-10T20:00", "2026-02-10T20:30", stitches=30)
    week = figures(alice)
    shares = {one["title"]: one for one in week["projects"]}
    assert shares["Harbour lanterns"]["seconds"] == 5400
    assert shares["Harbour lanterns"]["sitting_seconds"] == 7200
    assert shares["Quince tree"]["stitches_per_hour"] == 60
    assert sum(one["seconds"] for one in week["projects"]) == week["total_seconds"] == 7200


def test_a_sitting_still_open_counts_up_to_now_and_says_so(alice, new_project, sit, figures):
    sit(alice, new_project(alice), "2026-02-13T21:15")
    assert figures(alice)["total_seconds"] == 2700
    assert "still running, since 21:15." in alice.get("/hours").text


def test_one_left_running_counts_two_hours_past_its_last_stitch(alice, new_project, sit, figures):
    sit(alice, new_project(alice), "2026-02-11T20:00", stitches=12)
    assert figures(alice)["total_seconds"] == 7200
    assert "left running since 20:00 on Wed 11 February. It counts to 22:00" in alice.get("/hours").text


def test_usual_is_the_middle_of_the_four_weeks_before_up_to_the_same_point(alice, new_project, sit, figures):
    lanterns = new_project(alice)
    for day, hours in (("2026-02-03", 1), ("2026-01-27", 2), ("2026-01-20", 5)):
        sit(alice, lanterns, f"{day}T10:00", f"{day}T{10 + hours}:00")
    sit(alice, lanterns, "2026-02-07T10:00", "2026-02-07T20:00")  # a Saturday, not reached this week
    sit(alice, lanterns, "2025-12-30T10:00", "2025-12-30T20:00")  # too long ago
    sit(alice, lanterns, "2026-02-10T10:00", "2026-02-10T13:10")
    assert figures(alice)["usual_seconds"] == 7200
    page = alice.get("/hours").text
    assert "1 h 10 more" in page
    assert "by now" in page
    assert figures(alice, "2026-W06")["usual_seconds"] == 3.5 * 3600


def test_the_first_week_is_compared_with_nothing(alice, new_project, sit, figures):
    sit(alice, new_project(alice), "2026-02-10T10:00", "2026-02-10T13:10")
    assert figures(alice)["usual_seconds"] is None
    assert "usual" not in alice.get("/hours").text


def test_an_empty_week_says_what_to_do(alice, new_project):
    new_project(alice)
    assert "A sitting begins with the first tap on Stitch." in alice.get("/hours").text
    assert "add the sitting that was forgotten" in alice.get("/hours?week=2026-W02").text


def test_the_week_that_runs_leads_to_none_later(alice):
    assert "Later week" not in alice.get("/hours").text
    assert 'href="/hours?week=2026-W07"' in alice.get("/hours?week=2026-W06").text


@pytest.mark.parametrize(
    "week", ["", "2026", "2026-W54", "2025-W53", "<script>", "9" * 3000, "2026-W07\0", "%ff"]
)
def test_a_bad_week_is_answered_by_a_sentence(alice, week):
    for address in ("/hours", "/hours/week", "/hours/sittings", "/hours.json"):
        answer = alice.get(address, query_string=f"week={week}" if week == "%ff" else {"week": week})
        assert answer.status_code == 422
        assert "<script>" not in answer.text
    assert answer.json["error"].endswith(".")


def test_signed_out_pages_lead_to_the_door_and_figures_say_so(client):
    assert client.get("/hours?week=2026-W07").status_code == 303
    answer = client.get("/hours.json")
    assert (answer.status_code, answer.is_json) == (401, True)


def test_charlie_sees_nothing_of_alices(alice, charlie, new_project, sit, figures):
    sit(alice, new_project(alice), "2026-02-10T10:00", "2026-02-10T13:10", stitches=50)
    assert figures(charlie)["total_seconds"] == figures(charlie)["stitches"] == 0
    assert "Harbour" not in charlie.get("/hours").text + charlie.get("/hours/sittings").text


def test_a_title_is_never_markup(alice, new_project, sit):
    sit(alice, new_project(alice, title="<b>Moth</b>"), "2026-02-10T10:00", "2026-02-10T13:10")
    for address in ("/hours", "/hours/sittings"):
        assert "<b>Moth" not in alice.get(address).text


def test_a_phone_that_is_wrong_by_ages_does_not_stop_the_page(alice, new_project, lay):
    lanterns = new_project(alice)
    ages = ("0001-01-01T00:00:00.000Z", "9999-12-31T23:59:59.000Z")
    for at in ages:
        lay(alice, lanterns, {"kind": "begin", "at": at})
    lay(alice, lanterns, {"kind": "amend", "sitting": ANY, "begin": ages[0], "end": ages[1], "at": ages[0]})
    for address in ("/hours", "/hours/sittings", "/hours.json"):
        assert alice.get(address).status_code == 200


def week_starts_on(app, day):
    from webapp.accounts.models import Account
    from webapp.db import db, writing

    with app.app_context(), writing():
        db.session.scalars(db.select(Account)).one().week_start = day
        db.session.commit()


def test_moments_from_the_beginning_and_the_end_of_time_hinder_no_page(alice, new_project, sit, lay, figures):
    lanterns = new_project(alice)
    sit(alice, lanterns, "2026-02-09T20:00", "2026-02-09T21:30", stitches=105)
    last = "9999-12-31T23:59:59.999-14:00"
    ids = lay(alice, lanterns, {"kind": "begin", "at": "0001-01-01T00:00:00Z"}, {"kind": "begin", "at": last})
    lay(alice, lanterns, {"kind": "stitches", "row": 1, "by": 1, "at": last})
    assert figures(alice)["stitches"] == 105
    for path in ("/hours", "/hours/sittings", f"/projects/{lanterns}", f"/projects/{lanterns}/stitch"):
        assert alice.get(path).status_code == 200, path
    whole = {"begin": "0001-01-01T00:00:00Z", "end": last}
    lay(alice, lanterns, {"kind": "amend", "sitting": ids[0], "at": "2026-02-13T20:00:00Z", **whole})
    for path in ("/hours", "/hours/sittings"):
        assert alice.get(path).status_code == 200, path
