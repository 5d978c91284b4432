// The lines of the form: from what was typed to readings, or to a sentence beside the field that cannot be meant.

import { asReading, doubt, meant } from "./meant.js";
import { Mistyped, counted, length, readBack } from "./typed.js";

const NAMES = ["counted", "length", "part", "way"];

/** Find a field of a line. */
export const fieldOf = (line, name) => line.querySelector(`[name="${name}"]`);
const typedIn = (line) => Object.fromEntries(NAMES.map((name) => [name, fieldOf(line, name).value]));
/** Tell whether nothing was typed in a line. */
export const isBlank = (line) => NAMES.slice(0, 3).every((name) => !fieldOf(line, name).value.trim());

/** Read the form: {kind, unit, readings, wrong}; `wrong` holds [line, field, sentence]. */
export function readLines(root, form, table) {
  const choices = choicesOf(form);
  const [first, ...more] = root.querySelectorAll("[data-line]");
  const read = { kind: choices.kind, unit: choices.unit, readings: [], wrong: [] };
  for (const line of [first, ...more.filter((one) => !isBlank(one))]) {
    const given = typedIn(line);
    const number = tried(read, line, "counted", () => counted(given.counted, choices.kind));
    const [mm, unit] = tried(read, line, "length", () => length(given.length, given.part, choices.unit)) ?? [];
    if (line === first) read.unit = unit ?? choices.unit;
    if (number === undefined || mm === undefined) continue;
    const reading = asReading(number, mm, unit, choices, given.way);
    const question = doubt(reading, choices.kind, table);
    if (question) read.wrong.push([line, "counted", question], [line, "length", question]);
    else read.readings.push(reading);
  }
  return read;
}

const choicesOf = (form) => Object.fromEntries(["kind", "unit", "division", "ends"].map((name) => [name, form.elements.namedItem(name).value]));

function tried(read, line, name, reads) {
  try {
    return reads();
  } catch (error) {
    if (!(error instanceof Mistyped)) throw error;
    read.wrong.push([line, name, error.message]);
    return undefined;
  }
}

/** Give what may have been meant by the first of the wrong lines (or the first) that can be read otherwise: [line, offers] or null. */
export function otherwise(root, form, table, wrong) {
  const first = root.querySelector("[data-line]");
  const found = [...new Set(wrong?.map(([line]) => line) ?? [first])].map((line) => [line, meant(typedIn(line), choicesOf(form), table, line === first)]);
  return found.find(([, offers]) => offers.length) ?? null;
}

/** Change fields of a line, or choices of the form, to what was meant. */
export function change(line, form, fields) {
  for (const [name, value] of Object.entries(fields)) (fieldOf(line, name) ?? form.elements.namedItem(name)).value = value;
}

/** While something is half typed, let no line say what followed from what stood there before. */
export function hush(root) {
  for (const about of root.querySelectorAll("[data-line] small:not(.error)")) about.textContent = about.dataset.said || about.dataset.hint;
}

/** Show each wrong line's sentence beside it, and take away those that are put right. */
export function showWrong(root, wrong) {
  for (const line of root.querySelectorAll("[data-line]")) {
    const about = line.querySelector("small");
    const mine = wrong.filter(([of]) => of === line);
    about.classList.toggle("error", mine.length > 0);
    about.textContent = mine[0]?.[2] ?? (readBack(fieldOf(line, "length").value) || about.dataset.said || about.dataset.hint);
    for (const name of ["counted", "length"]) {
      fieldOf(line, name).toggleAttribute("aria-invalid", false);
      if (mine.some(([, field]) => field === name)) fieldOf(line, name).setAttribute("aria-invalid", "true");
    }
  }
}

/** Keep one empty line at the end, up to twelve, so that there is always room for another place. */
export function makeRoom(root) {
  const lines = [...root.querySelectorAll("[data-line]")];
  const last = lines.at(-1);
  if (lines.length >= 12 || isBlank(last)) return;
  const line = last.cloneNode(true);
  for (const name of NAMES.slice(0, 3)) fieldOf(line, name).value = "";
  fieldOf(line, "way").value = fieldOf(last, "way").value;
  const about = line.querySelector("small");
  about.dataset.said = about.dataset.hint = about.textContent = "";
  about.className = "";
  about.id = `about-${lines.length}`;
  for (const input of line.querySelectorAll("input")) input.setAttribute("aria-describedby", about.id);
  last.after(line);
}
