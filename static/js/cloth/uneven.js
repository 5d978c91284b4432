// What the gauge says of cloth that is not square, or perhaps not: webapp/cloth/uneven.py in JavaScript, word for word.

import { interval, tenth } from "./words.js";

const hundredth = (value) => String(Math.floor(value * 100 + 0.5) / 100);
const counts = (one, other) => [one, other].map(tenth(one) === tenth(other) ? hundredth : tenth);

/** Give both counts, by their names where each has one and they differ, else as measured. */
export function headline({ ways, along, across }) {
  const named = ways.map((way) => way.names.filter((n) => n.verdict === "could be").map((n) => n.count));
  if (named.every((fits) => fits.length === 1) && named[0][0] !== named[1][0]) {
    return [named.join(" and "), "count, along and across"];
  }
  return [counts(along.count, across.count).join(" and "), "an inch, along and across"];
}

/** Say how far it is from square. */
export const verdict = ({ square }) => (square.verdict === "uneven" ? "Not square." : "Perhaps not square.");

/** Write the count across with its interval, to stand beside that along. */
export const acrossInWords = ({ across }) => `across ${tenth(across.count)} (${interval(across).join(" to ")})`;

/** Say what that does to a design, or how to be sure. */
export function squareness({ kind, square }) {
  if (square.verdict === "perhaps") return "Count again, further, both ways.";
  const off = `${tenth(Math.abs(square.across_mm - square.along_mm))} mm (${tenth(Math.abs(square.percent))}\u00a0%)`;
  const way = square.percent > 0 ? "longer" : "shorter";
  return `100 ${kind} come out ${off} ${way} across.`;
}

/** Say what threads come to over two, each way. */
export function overTwo({ along, across }) {
  const [one, other] = counts(along.count / 2, across.count / 2);
  return `Over two, ${one} along, ${other} across.`;
}

/** Say what it would be if holes had been counted, each way. */
export function holes(answer) {
  const [one, other] = counts(answer.holes, answer.holes_across);
  return `Counted holes? Then ${one} along, ${other} across.`;
}
