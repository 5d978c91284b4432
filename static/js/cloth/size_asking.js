// What size and cut are asked: webapp/cloth/size_asking.py in JavaScript.

import { read } from "./reads.js";

export const NEEDED = ["width", "height", "count"];
const OTHER = ["across", "own"];

/** Read what was typed: {typed, values, errors}; `across` is the count down the height, where it is not the same. */
export function ask(typed) {
  const asked = read(typed, NEEDED, OTHER);
  const right = !Object.keys(asked.errors).length;
  if (right && asked.values.count < Number(asked.values.over)) {
    asked.errors.count = "Fewer than one stitch an inch: check the count, and over one or two.";
  }
  return asked;
}
