// Figures of the gauge in words: webapp/cloth/words.py in JavaScript.

import { INCH } from "./gauge.js";

/** What is sold by squares, and what by threads. */
export const CLOTHS = { squares: "Aida", threads: "linen or evenweave" };

/** Write a count to a tenth: "13.6", "14". */
export const tenth = (value) => String(Math.floor(value * 10 + 0.5) / 10);

/** Write the ends of the 95 % interval, rounded outward to a tenth. */
export const interval = (measured) =>
  [String(Math.floor(measured.low * 10 + 1e-9) / 10), String(Math.ceil(measured.high * 10 - 1e-9) / 10)];

/** Write the ends of the 95 % interval per 10 cm, rounded outward to a whole one. */
export const metric = (measured) =>
  [String(Math.floor((measured.low * 100) / INCH + 1e-9)), String(Math.ceil((measured.high * 100) / INCH - 1e-9))];

/** Write a likelihood, never as certain as 0 or 100. */
export function perCent(share) {
  if (share < 0.01) return "less than 1\u00a0%";
  return share > 0.99 ? "more than 99\u00a0%" : `${Math.floor(share * 100 + 0.5)}\u00a0%`;
}

/** Write a length to measure, rounded up to what is easily found on a tape. */
export function lengthOf(mm, unit) {
  if (unit === "cm") return `${Math.ceil(mm / 10 - 1e-9)} cm`;
  const halves = mm <= 4 * INCH ? Math.ceil((mm / INCH) * 2 - 1e-9) : 2 * Math.ceil(mm / INCH - 1e-9);
  const whole = Math.floor(halves / 2);
  if (halves % 2 === 0) return `${whole} in`;
  return whole ? `${whole} 1/2 in` : "1/2 in";
}

/** Join words as a sentence does. */
export const join = (words, last = "and") =>
  words.length === 1 ? words[0] : `${words.slice(0, -1).join(", ")} ${last} ${words.at(-1)}`;
