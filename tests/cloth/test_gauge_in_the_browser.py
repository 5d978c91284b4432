"""The gauge in JavaScript, run in a real browser against the vectors and against Python."""

import pytest

from tests.cloth.languages import disagreements, folder_of, in_javascript, same
from tests.cloth.vectors import VECTORS
from webapp.cloth.standards import embedded

TYPED = """async ([folder, { counted, length, read_back: back }]) => {
  const typed = await import(`${folder}/typed.js`);
  const tried = (read) => {
    try { return { read: read() }; } catch (error) {
      if (!(error instanceof typed.Mistyped)) throw error;
      return { error: error.message };
    }
  };
  return [counted.map(({ given: { text, kind } }) => tried(() => typed.counted(text, kind))),
          length.map(({ given: { text, part, unit } }) => tried(() => typed.length(text, part, unit))),
          back.map(({ given }) => typed.readBack(given.text))];
}"""
ASKED_BACK = """async ([folder, table, cases]) => {
  const [typed, { asReading, doubt, meant }] = await Promise.all(
    ["typed", "meant"].map((name) => import(`${folder}/${name}.js`)));
  const questionOf = (line, choices) => {
    try {
      const [mm, unit] = typed.length(line.length, line.part, choices.unit);
      const reading = asReading(typed.counted(line.counted, choices.kind), mm, unit, choices, line.way);
      return doubt(reading, choices.kind, table);
    } catch (error) {
      if (!(error instanceof typed.Mistyped)) throw error;
      return error.message;
    }
  };
  return cases.map(({ given: { line, choices, first } }) => ({
    question: questionOf(line, choices),
    offers: meant(line, choices, table, first).map((o) => [o.change, o.count, o.sentence, o.fields]),
  }));
}"""


@pytest.fixture
def folder(page, server):
    page.goto(f"{server.url}/health")
    return folder_of(server.url)


def test_typed_text_is_read_as_the_vectors_say_in_a_browser(page, folder):
    read = page.evaluate(TYPED, [folder, VECTORS])
    for name, found in zip(("counted", "length", "read_back"), read, strict=True):
        assert found == [case["expect"] for case in VECTORS[name]]


def test_what_no_cloth_can_have_is_asked_back_in_a_browser(page, folder):
    found = page.evaluate(ASKED_BACK, [folder, embedded(), VECTORS["meant"]])
    assert found == [case["expect"] for case in VECTORS["meant"]]


def test_the_answers_are_as_the_vectors_say_in_a_browser(page, folder):
    cases = VECTORS["answers"]
    found = in_javascript(page, folder, [case["given"] for case in cases])
    for case, there in zip(cases, found, strict=True):
        assert same(case["expect"], there), case["description"]


def test_both_languages_give_the_same_answer_to_any_question(page, folder):
    assert disagreements(page, folder, counts=200, seed=5) == []
