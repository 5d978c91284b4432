"""The legend of a project, and one line of it: written, changed, moved, removed, read by scripts."""

from tests.threads.legend_forms import MADDER, form_in, keep, load, rows
from webapp.threads.estimate import Counts, estimate
from webapp.threads.geometry import ground_of
from webapp.threads.kinds import worked
from webapp.threads.tables import kinds


def test_a_line_is_kept_as_it_is_written(app, alice, new_project):
    project = new_project(alice)
    keep(alice, project, half="30", back="12½", lots="12, 15", instead="Rust", note="two\r\nlines")
    (row,) = rows(app, project)
    assert (row.key, row.symbol, row.colour, row.full, row.half, row.back) == (
        *("Madder", "X", "#9b3527", 1240, 30, 13),
    )
    assert row.parts == [
        {"thread": "Madder", "kind": "cotton", "strands": 2, "instead": "Rust", "lots": ["12", "15"]}
    ]
    assert row.note == "two\nlines"
    page = alice.get(f"/projects/{project}/thread").text
    for said in (
        "Rust",
        "for <bdi>Madder</bdi>",
        "2 strands · 1,240 full, 30 half, 13 back · lot 12, lot 15",
    ):
        assert said in page


def test_a_name_is_enough_and_its_kind_brings_its_habits(app, alice, new_project):
    project = new_project(alice, count=28, over=2)
    for name in ("Madder", "Silver filament", "Blue wool", "Night silk", "Seed beads"):
        alice.post(f"/projects/{project}/thread/lines", data={"thread": name})
    found = [(row.parts[0]["kind"], row.parts[0]["strands"]) for row in rows(app, project)]
    assert found == [("cotton", 2), ("filament", 1), ("wool", 1), ("silk", 2), ("beads", 1)]
    assert [row.position for row in rows(app, project)] == [1, 2, 3, 4, 5]


def test_strands_that_are_not_said_follow_the_cloth(app, alice, new_project):
    project = new_project(alice, count=11)
    alice.post(f"/projects/{project}/thread/lines", data={"thread": "Madder"})
    assert rows(app, project)[0].parts[0]["strands"] == 3  # patchesofpink.com, blog.blondelibrarian.net


def test_a_blend_has_a_thread_of_each(app, alice, new_project):
    project = new_project(alice)
    keep(alice, project, thread="Walnut", strands="1", thread2="Silver filament", kind2="")
    (row,) = rows(app, project)
    assert [(part["thread"], part["kind"], part["strands"]) for part in row.parts] == [
        *(("Walnut", "cotton", 1), ("Silver filament", "filament", 1)),
    ]
    page = alice.get(f"/projects/{project}/thread").text
    assert "1 skein" in page
    assert "1 spool" in page


def test_a_form_sent_twice_makes_one_line(app, alice, new_project):
    project = new_project(alice)
    id = keep(alice, project)
    alice.post(f"/projects/{project}/thread/lines", data={**MADDER, "id": str(id)})
    assert len(rows(app, project)) == 1


def test_two_lines_of_one_name_have_a_key_each_and_keep_it(app, alice, new_project):
    project = new_project(alice)
    first, _second = keep(alice, project), keep(alice, project, symbol="o")
    assert [row.key for row in rows(app, project)] == ["Madder", "Madder 2"]
    alice.post(f"/projects/{project}/thread/lines/{first}", data={"thread": "Madder, old"})
    assert [row.key for row in rows(app, project)] == ["Madder", "Madder 2"]


def test_two_phones_change_what_each_of_them_touched(app, alice, new_project):
    project = new_project(alice)
    address = f"/projects/{project}/thread/lines/{keep(alice, project)}"
    on_one, on_other = form_in(alice.get(address).text), form_in(alice.get(address).text)
    assert alice.post(address, data={**on_one, "full": "1,300"}).status_code == 303
    assert alice.post(address, data={**on_other, "strands": "3", "symbol": ""}).status_code == 303
    (row,) = rows(app, project)
    assert (row.full, row.parts[0]["strands"], row.symbol, row.colour) == (1300, 3, "", "#9b3527")


def test_what_is_not_sent_stays_and_what_is_sent_empty_is_emptied(app, alice, new_project):
    project = new_project(alice)
    address = f"/projects/{project}/thread/lines/{keep(alice, project, half='30', note='a note')}"
    alice.post(address, data={"half": ""})
    (row,) = rows(app, project)
    assert (row.full, row.half, row.note, row.symbol) == (1240, 0, "a note", "X")


def test_the_form_gives_back_what_was_kept(app, alice, new_project):
    project = new_project(alice)
    alice.post("/account", data={"unit": "cm", "zone": "UTC", "hand": "right", "week_start": "0"})
    line = {"working": "40 cm", "patches": "7", "method": "each", "scatter": "scattered"}
    address = f"/projects/{project}/thread/lines/{keep(alice, project, **line)}"
    form = form_in(alice.get(address).text)
    assert {name: form[name] for name in line} == line | {"working": "40"}
    assert alice.post(address, data=form).status_code == 303
    assert rows(app, project)[0].working == 400


def test_lines_move_by_one_and_stop_at_the_end(app, alice, new_project):
    project = new_project(alice)
    ids = [keep(alice, project, thread=name) for name in ("Madder", "Weld", "Woad")]
    for way in ("up", "up", "up"):
        alice.post(f"/projects/{project}/thread/lines/{ids[2]}/move", data={"way": way})
    assert [row.key for row in rows(app, project)] == ["Woad", "Madder", "Weld"]
    alice.post(f"/projects/{project}/thread/lines/{ids[2]}/move", data={"way": "down"})
    assert [row.position for row in rows(app, project)] == [1, 2, 3]
    assert [row.key for row in rows(app, project)] == ["Madder", "Woad", "Weld"]
    assert (
        alice.post(f"/projects/{project}/thread/lines/{ids[2]}/move", data={"way": "away"}).status_code == 422
    )


def test_a_line_is_removed(app, alice, new_project):
    project = new_project(alice)
    id = keep(alice, project)
    assert alice.post(f"/projects/{project}/thread/lines/{id}/remove").status_code == 303
    assert rows(app, project) == []
    assert "Paste it" in alice.get(f"/projects/{project}/thread").text


def test_totals_are_held_against_what_the_chart_prints_or_nothing_is_claimed(app, alice, new_project):
    project = new_project(alice)
    address = f"/projects/{project}/thread"
    keep(alice, project, full="9,812")
    assert "9,812 full crosses in all." in alice.get(address).text
    alice.post(address, data={"chart_total": "9,800"})
    assert "Legend 9,812, chart 9,800: 12 more." in alice.get(address).text
    alice.post(address, data={"chart_total": "9 812"})
    assert "9,812 full crosses, as on the chart." in alice.get(address).text
    wrong = alice.post(address, data={"chart_total": "many"})
    assert (wrong.status_code, load(app, project).chart_total) == (422, 9812)
    assert 'value="many"' in wrong.text
    alice.post(address, data={"chart_total": ""})
    assert load(app, project).chart_total is None


def test_a_script_gets_the_same_figures_unrounded(alice, new_project):
    project = new_project(alice, count=14)
    keep(alice, project)
    figures = alice.get(f"/projects/{project}/thread.json").json
    (line,) = figures["lines"]
    (thread,) = line["threads"]
    how = worked(kinds(), [("cotton", 2)])[0]
    takes = estimate(ground_of(14), Counts(full=1240), how, kinds()["cotton"])
    assert thread["sold_usual_mm"] == takes.sold.usual
    assert thread["sold_high_m"] == takes.sold.high / 1000
    assert thread["each_low_in"] == takes.each.low / 25.4
    assert (thread["units_least"], thread["units_most"]) == takes.units
    assert (line["key"], line["full_stitches"], figures["legend_full_stitches"]) == ("Madder", 1240, 1240)
    assert figures["to_buy"] == [{"sold": "skein", "least": takes.units[0], "most": takes.units[1]}]


def test_a_thread_on_two_lines_is_bought_once(alice, new_project):
    project = new_project(alice)
    keep(alice, project, full="300")
    keep(alice, project, symbol="o", thread="Rust", instead="madder", full="300")
    assert alice.get(f"/projects/{project}/thread.json").json["to_buy"][0]["most"] == 1


def test_the_project_leads_to_its_legend(alice, new_project):
    project = new_project(alice)
    assert "No legend yet" in alice.get(f"/projects/{project}").text
    keep(alice, project)
    page = alice.get(f"/projects/{project}").text
    assert "1 line in the legend" in page
    assert f'href="/projects/{project}/thread"' in page
