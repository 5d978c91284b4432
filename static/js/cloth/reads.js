// What is typed of designs, counts and lengths: webapp/cloth/reads.py in JavaScript. A question is {typed, values, errors};
// lengths in mm, a field left empty is null.

import { Mistyped, OF_AN_INCH, TWICE, amount } from "./typed.js";

const MM = { in: 25.4, cm: 10, mm: 1 };
const CHOICES = {
  unit: [["in", "cm"], "in"],
  over: [["1", "2", "3"], "1"],
  finish: [["framed", "usual", "small", "ornament"], "usual"],
  held: [["hoop", "clamps", "scroll", "stretched", "hand"], "hand"],
  frays: [["", "yes"], ""],
  by: [["design", "cut"], "design"],
  off: [["bolt", "piece"], "bolt"],
  turn: [["yes", "no"], "yes"],
};
const KEPT = 40;

/** Read a whole number from 1 on, or refuse it with a sentence. */
export function whole(text, high, sentence) {
  if (!/^[0-9]{1,6}$/.test(text) || Number(text) < 1 || Number(text) > high) throw new Mistyped(sentence);
  return Number(text);
}

const stitches = (text) => whole(text, 10_000, "Write stitches in digits, from 1 to 10,000.");
const cuts = (text) => whole(text, 200, "Write a number from 1 to 200.");

/** Read a number with its unit, or refuse it with a sentence. */
function number(text, sentence) {
  try {
    return amount(text, "14");
  } catch (error) {
    if (!(error instanceof Mistyped)) throw error;
    throw new Mistyped(sentence);
  }
}

/** Read a count per inch. */
export function count(text) {
  const sentence = "Write a count from 1 to 100, like 14 or 27.5.";
  const [found, unit] = number(text, sentence);
  if (unit || !(found >= 1 && found <= 100)) throw new Mistyped(sentence);
  return found;
}

/** Read a length in mm; a unit that is typed goes before the one that was chosen. */
export function span(text, unit, low, high, sentence) {
  const [found, named] = number(text, "Write a length, like 18, 17 1/2 or 45 cm.");
  const mm = found * MM[named ?? unit];
  if (!(low <= mm && mm <= high)) throw new Mistyped(sentence);
  return mm;
}

const PARTED = ["piece_width", "piece_height", "cut_width", "cut_height", "bolt_width"];
const PARTS = /^([1357]\/(16|8)|[13]\/4|1\/2|(9|11|13|15)\/16)$/;

/** Put the part of an inch that was chosen beside a length to what was typed, if it is in inches. */
function parted(text, part, unit) {
  if (!PARTS.test(part)) return text;
  let [found, named] = [0, null];
  try {
    [found, named] = amount(text || "0", "18");
  } catch (error) {
    if (!(error instanceof Mistyped)) throw error;
    return text;
  }
  if (unit !== "in" && (named ?? unit) !== "in") return text; // then no list of fractions is to be seen
  if ((named ?? unit) !== "in") throw new Mistyped(OF_AN_INCH);
  if (!Number.isInteger(found)) throw new Mistyped(TWICE);
  return `${found} ${part} in`;
}

const REACH = { in: "half an inch to 109 yards", cm: "1 cm to 100 m" };
const cloth = (text, unit) => span(text, unit, 10, 100_000, `Cloth is measured from ${REACH[unit]}.`);
const margin = (text, unit) => span(text, unit, 0, 900, `A margin is from nothing to ${unit === "in" ? "35 in" : "90 cm"}.`);

const READERS = {
  width: stitches, height: stitches, count, across: count, own: margin, n: cuts,
  piece_width: cloth, piece_height: cloth, cut_width: cloth, cut_height: cloth, bolt_width: cloth,
};

/** Give an address's fields [name, text] the names of the forms; what holds the cloth where it does not say: see webapp/cloth/reads.py. */
export function named(given) {
  const typed = Object.fromEntries([...given].map(([name, text]) => [name === "margin" ? "own" : name, text]));
  if (given.has("margin")) typed.own = given.get("margin");
  const isAsked = Object.keys(READERS).some((name) => name !== "count" && typed[name]?.trim());
  return { held: isAsked ? "hand" : "hoop", ...typed };
}

/** Give what was chosen among a few; what was not offered counts as not chosen. */
export function choices(typed, offered = CHOICES) {
  const given = Object.entries(offered).map(([name, [options, usual]]) => [name, options.includes(typed[name]) ? typed[name] : usual]);
  return Object.fromEntries(given);
}

/** Read the fields that are needed, and others where something is typed. */
export function read(typed, needed, other, readers = READERS, offered = CHOICES) {
  const kept = Object.fromEntries(Object.entries(typed).map(([name, text]) => [name, text.slice(0, KEPT)]));
  const asked = { typed: kept, values: choices(kept, offered), errors: {} };
  for (const name of [...needed, ...other]) {
    let text = (kept[name] ?? "").trim();
    asked.values[name] = null;
    try {
      if (PARTED.includes(name)) text = parted(text, kept[`${name}_part`] ?? "", asked.values.unit);
      if (!text && !needed.includes(name)) continue;
      asked.values[name] = readers[name](text, asked.values.unit);
    } catch (error) {
      if (!(error instanceof Mistyped)) throw error;
      asked.errors[name] = error.message;
    }
  }
  return asked;
}

/** Ask for both of two fields where only one is filled in. */
export function together(asked, one, other, sentence) {
  const { values, errors } = asked;
  for (const [name, beside] of [[one, other], [other, one]]) {
    if (values[name] === null && values[beside] !== null && !(name in errors)) errors[name] = sentence;
  }
}
