// Lengths and areas in words: webapp/cloth/lengths.py in JavaScript. Lengths in mm; a unit is "in" or "cm".

import { FORGIVEN, INCH } from "./bounds.js";

const OTHER = { in: "cm", cm: "in" };
const LEAST = { in: "0.01", cm: "0.1" };
const PARTS = ["", "1/4", "1/2", "3/4"];
const SIGNS = { "1/4": "¼", "1/2": "½", "3/4": "¾" };
const HAIR = 1e-9;

/** Write a number, whole or to a hundredth at most, with its thousands apart. */
export const thousands = (value) => String(value).replace(/\B(?=(\d{3})+(?!\d))/g, ",");

/** Write a length that lies on a quarter inch: "15 3/4". */
export function quarters(mm) {
  const many = Math.floor((mm / INCH) * 4 + 0.5 + HAIR);
  const [whole, part] = [Math.floor(many / 4), PARTS[many % 4]];
  if (!part) return thousands(whole);
  return whole ? `${thousands(whole)} ${part}` : part;
}

/** Write inches to a hundredth, without idle zeros: "8.75". */
export const inches = (mm) => thousands(Math.floor((mm / INCH) * 100 + 0.5 + HAIR) / 100);

/** Write centimetres to a tenth, without an idle zero: "22.2". */
export const centimetres = (mm) => thousands(Math.floor(mm + 0.5 + HAIR) / 10);

/** Write a length without its unit; cut: one that lies on the tape's quarters. */
export function number(mm, unit, cut = false) {
  if (unit === "cm") return centimetres(mm);
  return cut ? quarters(mm) : inches(mm);
}

/** Write a length with its unit: "8.75 in". */
export const written = (mm, unit, cut = false) => `${number(mm, unit, cut)} ${unit}`;

function side(mm, unit, cut) {
  const text = number(mm, unit, cut);
  return text === "0" && mm > FORGIVEN ? `under ${LEAST[unit]}` : text;
}

/** Write a width and a height: "16 × 18 in". */
export const area = (width, height, unit, cut = false) => `${side(width, unit, cut)} × ${side(height, unit, cut)} ${unit}`;

/** Write a width and a height in her unit, and in the other: ["16 × 18 in", "40.6 × 45.7 cm"]. */
export const both = (width, height, unit, cut = false) => [area(width, height, unit, cut), area(width, height, OTHER[unit])];

/** Write the quarters in a text as single signs, where it is shown large or in a row: "15¾". */
export const signed = (text) => text.replace(/([0-9]) (?=[13]\/[24])/g, "$1").replace(/[13]\/[24]/g, (part) => SIGNS[part]);
