// What is typed into quick thread: the readers of webapp/threads/quick.py in JavaScript.

import { choices, count, read, span, whole } from "../cloth/reads.js";
import { Mistyped, amount } from "../cloth/typed.js";
import { PER } from "./in_words.js";

const CHOICES = {
  unit: [["in", "cm"], "in"],
  over: [["1", "2", "3"], "1"],
  by: [["stitches", "block", "printed"], "stitches"],
  kind: [["cotton", "hand-dyed", "silk", "wool", "satin", "metallic", "filament", "beads"], "cotton"],
  method: [["", "rows", "each"], ""],
  scatter: [["together", "mixed", "scattered"], "mixed"],
};
const NEEDED = { stitches: ["stitches"], block: ["block", "blocks"], printed: ["printed", "printed_count", "printed_strands"] };
const OTHER = ["strands", "working", "gave", "skein"];
const MOST = 999_999;
const PARTED = /^[0-9]{1,3}([,. '’][0-9]{3})+$/;
const RUN = /^(.*?) ?(m|metres?|meters?|yd|yds|yards?)$/;

function stitches(text) {
  const plain = PARTED.test(text) ? text.replace(/[,. '’]/g, "") : text;
  return whole(plain, MOST, "Write stitches in digits, from 1 to 999,999.");
}

function skein(text, unit) {
  const wrong = new Mistyped("Write how long it is, like 8 m or 8.7 yd.");
  const [, alone, named] = RUN.exec(text.toLowerCase()) ?? [null, text, null];
  let [number, other] = [0, null];
  try {
    [number, other] = amount(alone, "8");
  } catch (error) {
    if (!(error instanceof Mistyped)) throw error;
    throw wrong;
  }
  const per = named ? (named.startsWith("m") ? "cm" : "in") : unit;
  const mm = number * PER[per];
  if (other || !(mm >= 500 && mm <= 2_000_000)) throw wrong;
  return mm;
}

const strands = (text) => whole(text, 12, "Write strands in digits, from 1 to 12.");

const READERS = {
  stitches, block: stitches, skein, strands, count,
  printed_strands: strands, printed_count: count,
  blocks: (text) => whole(text, 9999, "Write how many blocks, from 1 to 9,999."),
  printed: (text) => whole(text, 999, "Write whole skeins, from 1 to 999."),
  gave: (text) => whole(text, 500, "Write the crosses it gave, from 1 to 500."),
  working: (text, unit) => span(text, unit, 150, 2000, "A working length is from 6 to 78 in (15 cm to 2 m)."),
};

/** Read what was typed, but for what only the reckoning can refuse. */
export function typedIn(typed) {
  const { by } = choices(typed, CHOICES);
  const asked = read(typed, [...NEEDED[by], "count"], OTHER, READERS, CHOICES);
  const { values, errors } = asked;
  const isRight = () => !Object.keys(errors).length;
  if (isRight() && values.count < Number(values.over)) {
    errors.count = "Fewer than one stitch an inch: check the count, and over one or two.";
  }
  if (isRight() && by === "block" && values.block * values.blocks > MOST) errors.blocks = "That is more than 999,999 stitches.";
  return asked;
}
