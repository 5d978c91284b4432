// Her own figure: webapp/threads/own.py in JavaScript, where its figures are told. A reading is {what, stitches, length,
// strands, method} and, as it differs, split, working, loop, scatter, patches.

import { FACTOR } from "./bounds.js";
import { COUNTED, GUESSED, estimate, makeWorked, wasted } from "./estimate.js";

const [PRIOR, LENGTH, SKEIN, CHANGE] = [0.25, 0.06, 0.04, 0.03];
const ONE = { sold: "skein", length_mm: 1, strands: 1 };
const USUAL = { split: 6, working: 457.2, loop: false, scatter: "mixed", patches: null };

/** Weigh all her readings on a ground: {factor, spread}; null where there is none. */
export function own(readings, ground) {
  if (!readings.length) return null;
  let [weight, total] = [1 / (PRIOR * PRIOR), 0];
  for (const one of readings) {
    const [found, off] = ratio({ ...USUAL, ...one }, ground);
    weight += 1 / (off * off);
    total += Math.log(found) / (off * off);
  }
  return { factor: Math.exp(total / weight), spread: Math.sqrt(1 / weight + CHANGE * CHANGE) };
}

function ratio(reading, ground) {
  if (!["length", "skein"].includes(reading.what)) throw new RangeError("Measured is one working length, or thread used up.");
  if (!(reading.stitches >= 1 && reading.stitches <= 1_000_000) || reading.stitches % 1) {
    throw new RangeError("Write how many whole crosses it gave.");
  }
  const [found, off] = reading.what === "length" ? length(reading, ground) : skein(reading, ground);
  if (!(found >= FACTOR[0] && found <= FACTOR[1])) {
    throw new RangeError("No cross takes so little or so much: check the crosses and the length.");
  }
  return [found, off + 0.5 / reading.stitches];
}

function length({ stitches, length: mm, strands, method, loop }, ground) {
  const worked = makeWorked(strands, strands, method, mm, loop);
  const [, drawn] = estimate(ground, { full: stitches }, worked, ONE, 1).laid;
  return [(mm - wasted(loop)) / drawn, LENGTH];
}

function skein({ stitches, length: mm, strands, method, split, working, loop, scatter, patches }, ground) {
  if (!(mm > 0 && mm <= 1e9 && split >= 1 && split <= 24)) throw new RangeError("Write how much thread was used up.");
  const worked = makeWorked(strands, strands, method, working, loop);
  const takes = (...how) => estimate(ground, { full: stitches }, worked, { ...ONE, strands: split }, ...how).sold[1];
  const still = takes(1);
  const moved = takes(patches, scatter) - still;
  const guess = ((patches ? COUNTED : GUESSED) * moved) / still;
  return [(mm - moved) / still, Math.sqrt(SKEIN * SKEIN + guess * guess)];
}
