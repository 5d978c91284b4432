// Lengths and areas in words: webapp/cloth/lengths.py in JavaScript. Lengths in mm; a unit is "in" or "cm"; a way is near, up or down.

import { FORGIVEN, INCH } from "./bounds.js";

/** The unit that is not hers. */
export const OTHER = { in: "cm", cm: "in" };
const PER = { in: INCH, cm: 10 };
const LEAST = { in: "0.01", cm: "0.1" };
const PARTS = ["", "1/16", "⅛", "3/16", "¼", "5/16", "⅜", "7/16", "½", "9/16", "⅝", "11/16", "¾", "13/16", "⅞", "15/16"];
const HAIR = 1e-9;

/** Write a number, whole or to a hundredth at most, with its thousands apart. */
export const thousands = (value) => String(value).replace(/\B(?=(\d{3})+(?!\d))/g, ",");

function rounded(value, way) {
  if (way === "up") return Math.ceil(value - FORGIVEN);
  return Math.floor(value + (way === "down" ? FORGIVEN : 0.5 + HAIR));
}

/** Write inches as a tape has them: "15¾". */
export function tape(mm, way = "near") {
  const sixteenths = (mm / INCH) * 16;
  let found = Math.floor(sixteenths + 0.5);
  if (Math.abs(found - sixteenths) > FORGIVEN) found = 2 * rounded(sixteenths / 2, way);
  const [whole, part] = [Math.floor(found / 16), PARTS[found % 16]];
  if (!whole && part) return part;
  return `${thousands(whole)}${part.length > 1 ? " " : ""}${part}`;
}

const side = (mm, unit, way) => (unit === "cm" ? centimetres(mm, way) : tape(mm, way));

/** Write a length that is laid out on cloth, with its unit: "15¾ in". */
export const laid = (mm, unit, way = "near") => `${side(mm, unit, way)} ${unit}`;

/** Write a width and a height that are laid out on cloth: "15¾ × 18 in". */
export const laidArea = (width, height, unit, way = "near") => `${side(width, unit, way)} × ${side(height, unit, way)} ${unit}`;

/** Write a cut in her unit, and in the other, where it is rounded up: ["16¾ × 18 in", "42.6 × 45.8 cm"]. */
export const toCut = (width, height, unit) => [laidArea(width, height, unit), laidArea(width, height, OTHER[unit], "up")];

/** Write inches to a hundredth, without idle zeros: "8.75". */
export const inches = (mm) => thousands(Math.floor((mm / INCH) * 100 + 0.5 + HAIR) / 100);

/** Write centimetres to a tenth, without an idle zero: "22.2". */
export const centimetres = (mm, way = "near") => thousands(rounded(mm, way) / 10);

/** Write a finished length without its unit. */
export const number = (mm, unit) => (unit === "cm" ? centimetres(mm) : inches(mm));

/** Write a finished length with its unit: "8.75 in". */
export const written = (mm, unit) => `${number(mm, unit)} ${unit}`;

function finished(mm, unit) {
  const text = number(mm, unit);
  return text === "0" && mm > FORGIVEN ? `under ${LEAST[unit]}` : text;
}

/** Write a finished width and height: "10 × 12 in". */
export const area = (width, height, unit) => `${finished(width, unit)} × ${finished(height, unit)} ${unit}`;

/** Write a finished width and height in her unit, and in the other: ["10 × 12 in", "25.4 × 30.5 cm"]. */
export const both = (width, height, unit) => [area(width, height, unit), area(width, height, OTHER[unit])];

/** Write a length as a field has it. */
export const typed = (mm, unit) => String(Math.floor((mm / PER[unit]) * 10_000 + FORGIVEN) / 10_000);
