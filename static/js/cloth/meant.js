// Figures that no cloth can have: webapp/cloth/meant.py in JavaScript. A line is {counted, length, part, way} as typed.

import { INCH, measure } from "./gauge.js";
import { beyond, judge, likeliest } from "./naming.js";
import { Mistyped, amount, counted, length, together } from "./typed.js";
import { CLOTHS } from "./words.js";

const MILLIMETRE = 1;
const UNITS = { in: "inches", cm: "centimetres" };
const SO = { coarser: "coarse", finer: "fine" };

const standardsOf = (table, kind) => table.standards.filter((s) => s.kinds.includes(kind));

/** Make a reading of a count and a length, read on the tape that was chosen. */
export function asReading(number, mm, unit, { division, ends }, way) {
  const tape = unit === "in" ? INCH / Number(division) : MILLIMETRE;
  return { counted: number, length: mm, division: tape, pins: ends === "pins", way };
}

/** Ask back where no cloth of that kind can have such a count; "" where one can. */
export function doubt(reading, kind, table) {
  const than = beyond(measure([reading]), standardsOf(table, kind));
  return than && `No ${CLOTHS[kind]} is so ${SO[than]}. Check both figures: inches or centimetres?`;
}

/** Give what may have been meant by a line as typed that cannot be: [{change, count, sentence, fields}]. */
export function meant(line, choices, table, first) {
  return changes(line, choices, first).flatMap(([change, question, fields]) => {
    const count = named({ ...choices, ...line, ...fields }, table);
    return count === null ? [] : [{ change, count, sentence: `${question} It would be ${count}.`, fields }];
  });
}

function tried(reads) {
  try {
    return reads();
  } catch (error) {
    if (error instanceof Mistyped) return null;
    throw error;
  }
}

function named(given, table) {
  const reading = tried(() => {
    const number = counted(given.counted, given.kind);
    return asReading(number, ...length(given.length, given.part, given.unit), given, given.way);
  });
  return reading && likeliest(judge(measure([reading]), standardsOf(table, given.kind), table.none_weight));
}

function changes(line, { kind, unit }, first) {
  const read = tried(() => [amount(together(line.counted), ""), amount(line.length, "")]);
  if (!read || read[0][1]) return [];
  const [[number], [, typedUnit]] = read;
  const alone = !typedUnit && !line.part;
  const otherUnit = unit === "in" ? "cm" : "in";
  const otherKind = kind === "squares" ? "threads" : "squares";
  const swapped = { counted: line.length, length: line.counted };
  return [
    first && alone && ["unit", `Was the tape in ${UNITS[otherUnit]}?`, { unit: otherUnit }],
    first && ["kind", `Were those ${otherKind}?`, { kind: otherKind }],
    alone && ["swapped", "Figures the wrong way round?", swapped],
    ["halved", `Two counted for each ${kind === "squares" ? "square" : "thread"}?`, { counted: String(number / 2) }],
    kind === "threads" && ["doubled", "Stitches over two counted?", { counted: String(number * 2) }],
  ].filter(Boolean);
}
