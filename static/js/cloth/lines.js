// The lines of the form: from what was typed to readings, or to a sentence beside the field that cannot be meant.

import { INCH } from "./gauge.js";
import { Mistyped, counted, length, plausible } from "./typed.js";

const MILLIMETRE = 1;
const NAMES = ["counted", "length", "part", "way"];

const fieldOf = (line, name) => line.querySelector(`[name="${name}"]`);
const isBlank = (line) => NAMES.slice(0, 3).every((name) => !fieldOf(line, name).value.trim());

/** Read the form: {kind, unit, readings, wrong}; `wrong` holds [line, field, sentence]. */
export function readLines(root, form) {
  const { kind, ends, division } = Object.fromEntries(new FormData(form));
  const chosen = form.elements.namedItem("unit").checked ? "cm" : "in";
  const [first, ...more] = root.querySelectorAll("[data-line]");
  const read = { kind, unit: chosen, readings: [], wrong: [] };
  for (const line of [first, ...more.filter((one) => !isBlank(one))]) {
    const [many, span, part, way] = NAMES.map((name) => fieldOf(line, name).value);
    const number = tried(read, line, "counted", () => counted(many, kind));
    const [mm, unit] = tried(read, line, "length", () => length(span, part, chosen)) ?? [];
    if (line === first) read.unit = unit ?? chosen;
    if (number === undefined || mm === undefined) continue;
    const tape = unit === "in" ? INCH / Number(division) : MILLIMETRE;
    const reading = { counted: number, length: mm, division: tape, pins: ends === "pins", way };
    const meant = tried(read, line, "counted", () => plausible(reading));
    if (meant) read.readings.push(meant);
  }
  return read;
}

function tried(read, line, name, reads) {
  try {
    return reads();
  } catch (error) {
    if (!(error instanceof Mistyped)) throw error;
    read.wrong.push([line, name, error.message]);
    return undefined;
  }
}

/** Show each wrong line's sentence beside it, and take away those that are put right. */
export function showWrong(root, wrong) {
  for (const line of root.querySelectorAll("[data-line]")) {
    const about = line.querySelector("small");
    const mine = wrong.filter(([of]) => of === line);
    about.classList.toggle("error", mine.length > 0);
    about.textContent = mine[0]?.[2] ?? about.dataset.hint;
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
  about.id = `about-${lines.length}`;
  for (const input of line.querySelectorAll("input")) input.setAttribute("aria-describedby", about.id);
  last.after(line);
}
