// What she typed: webapp/cloth/typed.py in JavaScript. Numbers with a decimal point or comma, fractions as on a tape, units.

import { INCH } from "./gauge.js";

const MM = { in: INCH, cm: 10, mm: 1 };
const UNITS = {
  in: ["in", "inch", "inches", '"', "''", "″", "”"],
  cm: ["cm", "centimetre", "centimetres", "centimeter", "centimeters"],
  mm: ["mm", "millimetre", "millimetres", "millimeter", "millimeters"],
};
const SIGNS = { "½": "1/2", "¼": "1/4", "¾": "3/4", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8" };
const PART = /^[0-9]{1,2}\/(2|4|8|16)$/;
export const TWICE = "The fraction is there twice: type it or choose it, not both.";
export const OF_AN_INCH = "The fraction beside it is of an inch: write inches, or choose no fraction.";
const DIVIDED = [2, 4, 8, 16, 32];
const THOUSANDS = /^([1-9])[,. '’]([0-9]{3})$/;
const LEAST_COUNTED = 4;
const MOST_COUNTED = 2000;
const SHORTEST = INCH / 2;
const LONGEST = 40 * INCH;

const WHOLE = "([0-9]{1,6}[.,]?|[0-9]{0,6}[.,][0-9]{1,6})";
const FRACTION = "([0-9]{1,3}) ?/ ?([0-9]{1,3})";
const SHAPE = new RegExp(`^(-)? ?(?:${WHOLE}(?: ?[ -] ?${FRACTION})?|${FRACTION}) ?([^0-9]*)$`);

/** What was typed cannot be meant; the message is the sentence to show. */
export class Mistyped extends Error {}

/** Read a number: [number, its unit or null, what its fraction is divided in or 1]. */
export function amount(text, example) {
  const wrong = new Mistyped(`Write a number, like ${example}.`);
  const found = SHAPE.exec(plain(text));
  if (!found) throw wrong;
  const [, minus, whole, top, bottom, aloneTop, aloneBottom, name] = found;
  const unit = Object.keys(UNITS).find((key) => UNITS[key].includes(name)) ?? null;
  const number = Number((whole ?? "0").replace(",", "."));
  if ((name && !unit) || (top && !Number.isInteger(number))) throw wrong;
  const [share, divided] = fraction(top ?? aloneTop, bottom ?? aloneBottom, top !== undefined);
  return [(number + share) * (minus ? -1 : 1), unit, divided];
}

function plain(text) {
  const spaced = text.replace(/[½¼¾⅛⅜⅝⅞]/g, (sign) => ` ${SIGNS[sign]}`).replaceAll("⁄", "/");
  return spaced.replace(/[\u2010-\u2014\u2212]/g, "-").toLowerCase().trim().replace(/\s+/g, " ");
}

function fraction(top, bottom, beside) {
  if (top === undefined) return [0, 1];
  const [over, under] = [Number(top), Number(bottom)];
  if (!over || !under || (beside && over >= under)) throw new Mistyped("Write a fraction like 1 3/4.");
  if (!DIVIDED.includes(under)) {
    throw new Mistyped("A tape has halves, quarters, eighths and sixteenths: write it like 1 3/4.");
  }
  return [over / under, under];
}

/** Say how a fraction of more than one is read, since the whole number may have been left out of it. */
export function readBack(text) {
  const [top, bottom] = (SHAPE.exec(plain(text)) ?? []).slice(5, 7).map(Number);
  if (!DIVIDED.includes(bottom) || !(top > bottom)) return "";
  let [rest, under] = [top % bottom, bottom];
  while (rest && rest % 2 === 0) [rest, under] = [rest / 2, under / 2];
  return `${top}/${bottom} is read as ${Math.floor(top / bottom)}${rest ? ` ${rest}/${under}` : ""}.`;
}

/** Write a count without the sign that parts its thousands: "1,000", "1.000", "1 000". */
export const together = (text) => plain(text).replace(THOUSANDS, "$1$2");

/** Read how many squares or threads were counted. */
export function counted(text, kind) {
  if (!text.trim()) throw new Mistyped(`Write how many ${kind} you counted.`);
  const [number, unit] = amount(together(text), "28 or 27.5");
  if (unit) throw new Mistyped("Write the number alone here, like 28; the length goes beside it.");
  if (number < LEAST_COUNTED) throw new Mistyped(`Count at least ${LEAST_COUNTED} ${kind}; more is surer.`);
  if (number > MOST_COUNTED) throw new Mistyped(`Count ${MOST_COUNTED} ${kind} at most.`);
  return number;
}

/** Read the length measured, with the fraction chosen beside it: [mm, its unit]. A unit typed goes before one chosen. */
export function length(text, part, unit) {
  if (!text.trim() && !(part && unit === "in")) throw new Mistyped("Write the length you measured.");
  let [number, named, divided] = text.trim() ? amount(text, "2, 1 3/4 or 4.5") : [0, null, 1];
  const used = named ?? unit;
  if (PART.test(part) && unit === "in" && used !== "in") {
    throw new Mistyped(OF_AN_INCH);
  }
  if (PART.test(part) && used === "in") {
    if (!Number.isInteger(number)) throw new Mistyped(TWICE);
    const [top, bottom] = part.split("/");
    number += Number(top) / Number(bottom);
  }
  if (used !== "in" && divided > 2) {
    throw new Mistyped("Centimetres are read in tenths: write it like 4.5, or choose inches.");
  }
  const mm = number * MM[used];
  if (mm < SHORTEST) throw new Mistyped("Measure at least half an inch (1.3 cm); four inches (10 cm) is better.");
  if (mm > LONGEST) throw new Mistyped("Measure 40 in (1 m) at most.");
  return [mm, used === "in" ? "in" : "cm"];
}
