// Lengths of thread in words: webapp/threads/in_words.py in JavaScript. Lengths in mm; a unit is "in" or "cm".

import { OTHER, thousands } from "../cloth/lengths.js";

/** Of a length of thread, yards where her unit is inches, else metres: mm. */
export const PER = { in: 914.4, cm: 1000 };
const NAMES = { in: "yd", cm: "m" };
const HAIR = 1e-9;
const WHOLE = 100;

/** Write a length of thread without its unit: "9.4". */
export function figure(mm, unit, way = "near") {
  const value = mm / PER[unit];
  const parts = value >= WHOLE ? 1 : 10;
  if (way === "up") return thousands(Math.ceil(value * parts - HAIR) / parts);
  const found = Math.floor(value * parts + (way === "down" ? HAIR : 0.5 + HAIR)) / parts;
  return !found && mm && way === "near" ? "under 0.1" : thousands(found);
}

/** Write a length of thread, which no line may part: "9.4 yd". */
export const run = (mm, unit, way = "near") => `${figure(mm, unit, way)}\u00a0${NAMES[unit]}`;

/** Write a length of thread in her unit and in the other: "9.4 yd (8.6 m)". */
export const both = (mm, unit) => `${run(mm, unit)} (${run(mm, OTHER[unit])})`;

/** Write a range of whole things: "2 to 3", or "2". */
export const ranged = (least, most) => (least === most ? thousands(least) : `${thousands(least)} to ${thousands(most)}`);
