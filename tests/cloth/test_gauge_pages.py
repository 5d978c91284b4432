"""The gauge's pages and its figures for scripts, without a browser."""

import pytest

from tests.cloth.gauged import ask
from tests.cloth.vectors import VECTORS, figures_of, named


def test_it_works_without_an_account(client):
    for address in ("/cloth", "/cloth/gauge"):
        answer = client.get(address)
        assert answer.status_code == 200
        assert "I counted" in answer.text
        assert "per 10 cm" not in answer.text  # no figure before anything is counted


def test_the_page_answers_the_form(client):
    page = ask(client, "28", "2")
    assert page.status_code == 200
    for said in ("count Aida", "Sure.", "12 and 16 are ruled out.", "13.5 to 14.7", "53 to 58 per 10 cm"):
        assert said in page.text


@pytest.mark.parametrize("case", VECTORS["answers"], ids=named)
def test_the_page_says_what_the_vectors_say(client, case):
    given = case["given"]
    columns = {"counted": [], "length": [], "way": []}
    for reading in given["readings"]:
        columns["counted"].append(f"{reading['counted']:g}")
        columns["length"].append(f"{reading['length'] / (25.4 if given['unit'] == 'in' else 10):g}")
        columns["way"].append(reading["way"])
    first = given["readings"][0]
    choices = {"kind": given["kind"], "unit": given["unit"], "ends": "pins" if first["pins"] else "marks"}
    choices["division"] = "8" if first["division"] > 3 else "16"
    page = client.get("/cloth/gauge", query_string={**choices, **columns})
    assert page.status_code == 200
    said = dict(case["expect"]["sentences"])
    elsewhere = {"answer", "verdict", "holes"} | ({"hint", "over", "care"} if "hint" in said else set())
    assert said["verdict"] in page.text
    assert said["holes"] in page.text
    for part in said.keys() - elsewhere:
        assert f'<p class="{part}">{said[part]}</p>' in page.text


def test_cloth_that_is_not_square_is_not_called_sure(client):
    figures = client.get(
        "/cloth/gauge.json?squares=56&squares=64&length=4&length=4&way=along&way=across"
    ).json
    assert figures["sure_per_inch"] is None
    said = figures["sentences"]
    assert said["answer"] == "14 and 16 count, along and across."
    assert said["verdict"] == "Not square."
    assert said["rest"] == "12 and 18 are ruled out."


def test_the_figures_for_scripts_are_those_of_the_page(client):
    figures = client.get("/cloth/gauge.json?squares=28&length=2&unit=in").json
    given = {"kind": "squares", "unit": "in", "readings": VECTORS["answers"][0]["given"]["readings"]}
    expected = figures_of(given)
    assert figures["count_per_inch"] == pytest.approx(14)
    assert figures["low_per_inch"] == pytest.approx(expected["low"], rel=1e-9)
    assert figures["high_per_inch"] == pytest.approx(expected["high"], rel=1e-9)
    assert figures["sure_per_inch"] == 14
    assert figures["sentences"] == dict(expected["sentences"])
    by_count = {one["count_per_inch"]: one["verdict"] for one in figures["standards"]}
    assert by_count[14] == "could be"
    assert by_count[16] == "ruled out"


def test_a_script_may_give_several_places_both_ways(client):
    query = "threads=126&length=10&way=along&threads=137&length=10&way=across&unit=cm"
    figures = client.get(f"/cloth/gauge.json?{query}").json
    assert figures["counted"] == "threads"
    assert figures["square"]["verdict"] == "uneven"
    assert figures["across"]["count_per_inch"] == pytest.approx(137 * 0.254)


NUMBER = "Write a number, like 28 or 27.5."
CHECK = "Check both figures: inches or centimetres?"
SHORT = "Measure at least half an inch (1.3 cm); four inches (10 cm) is better."


@pytest.mark.parametrize(
    ("counted", "length", "sentence"),
    [
        ("", "2", "Write how many squares you counted."),
        ("28", "", "Write the length you measured."),
        ("0", "2", "Count at least 4 squares; more is surer."),
        ("-28", "2", "Count at least 4 squares; more is surer."),
        ("500", "1", f"No Aida is so fine. {CHECK}"),
        ("140", "2", f"No Aida is so fine. {CHECK}"),
        ("28", "2 cm", f"No Aida is so fine. {CHECK}"),
        ("5", "4", f"No Aida is so coarse. {CHECK}"),
        ("nan", "2", NUMBER),
        ("inf", "2", NUMBER),
        ("1e9", "2", NUMBER),
        ("true", "2", NUMBER),
        ("<script>alert(1)</script>", "2", NUMBER),
        ("9" * 39, "2", NUMBER),
        ("9" * 5000, "2", "That is too long."),
        ("28\x00", "2", NUMBER),
        ("28", "0", SHORT),
        ("28", "-1", SHORT),
        ("28", "1 5/4", "Write a fraction like 1 3/4."),
        ("28", "0/4", "Write a fraction like 1 3/4."),
        ("28", "1 3/5", "A tape has halves, quarters, eighths and sixteenths: write it like 1 3/4."),
        ("28", "99999", "Measure 40 in (1 m) at most."),
        ("28", "two", "Write a number, like 2, 1 3/4 or 4.5."),
        ("3,000", "40", "Count 2000 squares at most."),
    ],
)
def test_what_cannot_be_meant_is_a_sentence_and_no_figure(client, counted, length, sentence):
    page = ask(client, counted, length)
    assert page.status_code == 422
    assert 'class="error" data-hint="' in page.text
    assert sentence in page.text
    assert "per 10 cm" not in page.text
    assert "<script>alert" not in page.text
    figures = client.get(
        "/cloth/gauge.json", query_string={"squares": counted, "length": length, "unit": "in"}
    )
    assert figures.status_code == 422
    assert figures.json["error"] == sentence


def test_a_fraction_of_an_inch_beside_centimetres_is_refused_on_the_page_and_to_a_script(client):
    page = ask(client, "28", "5 cm", part="1/2")
    sentence = "The fraction beside it is of an inch: write inches, or choose no fraction."
    assert page.status_code == 422
    assert sentence in page.text
    answer = client.get("/cloth/gauge.json?squares=28&length=5 cm&part=1/2&unit=in")
    assert (answer.status_code, answer.json["errors"]) == (422, {"length": [sentence]})


@pytest.mark.parametrize("kind", ["squares", "threads"])
def test_too_many_places_are_an_error_of_what_the_script_called_them(client, kind):
    query = "&".join([f"{kind}={28 if kind == 'squares' else 56}&length=2"] * 13)
    assert client.get(f"/cloth/gauge.json?{query}").json["errors"] == {kind: ["12 places at once at most."]}


def test_a_thousand_threads_are_read_however_they_are_parted(client):
    for counted in ("1,000", "1.000", "1 000", "1000"):
        figures = client.get("/cloth/gauge.json", query_string={"threads": counted, "length": "40"}).json
        assert figures["count_per_inch"] == pytest.approx(25)
    asked_back = client.get("/cloth/gauge.json?squares=1,000&length=40").json
    assert asked_back["error"] == f"No Aida is so fine. {CHECK}"
    assert asked_back["perhaps"][0]["sentence"] == "Were those threads? It would be 25."


def test_three_places_alike_have_no_spread_and_so_no_degrees_of_freedom(client):
    query = "&".join(["squares=28&length=2"] * 3)
    figures = client.get(f"/cloth/gauge.json?{query}").json
    assert figures["degrees_of_freedom"] is None
    assert figures["coverage_factor"] == 1.96


def test_a_fraction_of_more_than_one_is_read_back_beside_the_field(client):
    page = ask(client, "28", "7/4")
    assert page.status_code == 200
    assert "7/4 is read as 1 3/4." in page.text


def test_what_was_typed_is_kept(client):
    page = ask(client, "2b", "1 3/4", kind="threads")
    assert (
        'form="gauge" name="counted" inputmode="decimal" enterkeyhint="next" maxlength="16" value="2b"'
        in page.text
    )
    assert 'value="1 3/4"' in page.text
    assert 'value="threads" checked' in page.text


@pytest.mark.parametrize(
    "query",
    [
        "counted=28&length=2&unit=feet",
        "counted=28&length=2&kind=holes",
        "counted=28&length=2&way=askew",
        "counted=28&length=2&part=7/3",
        "counted=28&length=2&division=3",
        "counted=%ff%fe&length=2",
        "&".join(["counted=28&length=2"] * 40),
        "counted=28&length=2&way=across",
    ],
)
def test_a_question_that_no_form_asks_is_refused_with_a_sentence(client, query):
    page = client.get(f"/cloth/gauge?{query}")
    assert page.status_code == 422
    assert 'class="error"' in page.text or 'role="alert"' in page.text
    script = query.replace("counted", "squares").replace("kind=holes", "threads=28")
    assert client.get(f"/cloth/gauge.json?{script}").status_code == 422


@pytest.mark.parametrize("query", ["", "squares=28", "length=2", "squares=28&threads=28&length=2"])
def test_a_script_is_told_what_is_missing(client, query):
    answer = client.get(f"/cloth/gauge.json?{query}")
    assert answer.status_code == 422
    assert answer.json["error"].endswith(".")


@pytest.mark.parametrize(
    ("counted", "length", "part", "count"),
    [
        ("28", "2,0", "", 14),
        ("28", "2 in", "", 14),
        ("27,5", "5 cm", "", 27.5 / 5 * 2.54),
        ("28", "1¾", "", 16),
        ("28", "1-3/4", "", 16),
        ("28", "7/4", "", 16),
        ("28", "1", "3/4", 16),
        ("12", "", "3/4", 16),
    ],
)
def test_a_comma_a_fraction_and_a_unit_are_understood(client, counted, length, part, count):
    query = {"squares": counted, "length": length, "part": part, "unit": "in"}
    assert client.get("/cloth/gauge.json", query_string=query).json["count_per_inch"] == pytest.approx(count)
