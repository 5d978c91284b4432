// How much thread a line takes, as a range, and what to buy: webapp/threads/estimate.py in JavaScript, where the model and
// its figures are told. Ranges are [low, usual, high]; counts are {full, half, …}, those left out 0; lengths in mm.

import { estimated } from "./bounds.js";
import { STITCHES, STRAND, bundle, stitch } from "./geometry.js";

const [START, END, LOOP] = [50.8, 50.8, 10];
const PATCH = { together: 250, mixed: 40, scattered: 6 };
const [CARRIED, TRAVEL] = [0.75, 6];
const [HAND, ENDS] = [0.105, 0.25];
export const GUESSED = 0.5;
export const COUNTED = 0.25;
const SURE = 1.96;
const [SPARE, LEAST_SPARE] = [0.05, 5];
export const FORGIVEN = 1e-9;

const all = (counts) => counts.reduce((sum, many) => sum + many, 0);
const listed = (counts) => STITCHES.map((what) => counts[what] ?? 0);

/** Say how one thread is worked: {strands, together, method, working, loop, diameter}. */
export const makeWorked = (strands, together, method, working, loop = false, diameter = STRAND) =>
  ({ strands, together, method, working, loop, diameter });

/** Give how many patches stitches lie in that are together, mixed or scattered. */
export function patchesOf(counts, scatter) {
  if (!Object.hasOwn(PATCH, scatter)) throw new RangeError("Stitches lie together, mixed or scattered.");
  return Math.ceil(all(listed(counts)) / PATCH[scatter]);
}

/** Give the mm of each working length that start and end take. */
export const wasted = (loop) => (loop ? LOOP : START) + END;

/** Round up to what can be cut or bought. */
export const whole = (units) => Math.ceil(units - FORGIVEN);

/** Spread a sum whose parts [share, mm] are each off by a share of themselves, independently. */
function range(usual, terms) {
  let square = 0;
  for (const [share, mm] of terms) square += share * mm * (share * mm);
  const off = SURE * Math.sqrt(square);
  return [usual - off, usual, usual + off];
}

/** Estimate one thread of a line: {each, laid, lengths, sold, units}; `own` is her {factor, spread}, or null. */
export function estimate(ground, given, worked, kind, patches = null, scatter = "mixed", own = null) {
  const counts = listed(given);
  estimated(counts, worked, patches, own);
  const thread = bundle(worked.together, worked.diameter);
  const lone = STITCHES.map((what) => stitch(what, ground, worked.method, thread));
  const drawn = counts.reduce((sum, many, i) => sum + many * lone[i], 0);
  const moves = Math.max(0, Math.min(patches || patchesOf(given, scatter), all(counts)) - 1);
  const factor = own ? own.factor : 1;
  const lost = wasted(worked.loop);
  const carried = (moves * CARRIED * TRAVEL * (ground.across + ground.down)) / 2;
  const room = worked.working - lost;
  const stitched = factor * drawn;
  const ends = drawn ? factor * lost * Math.max(1, drawn / room) : 0;
  const moved = (carried * worked.working) / room + moves * (1 - CARRIED) * lost;
  const guess = patches ? COUNTED : GUESSED;
  const hand = own ? [[own.spread, stitched + ends]] : [[HAND, stitched], [ENDS, ends]];
  const needle = range(stitched + ends + moved, [...hand, [guess, moved]]);
  const one = lone[0] * ((factor * worked.working) / room + (drawn ? moved / drawn : 0));
  const sold = needle.map((mm) => (mm * worked.strands) / kind.strands);
  return {
    each: needle.map((mm) => one * (drawn ? mm / needle[1] : 1)),
    laid: range(stitched + carried, [[own ? own.spread : HAND, stitched], [guess, carried]]),
    lengths: needle.map((mm) => whole(mm / worked.working)),
    ...bought(given, counts, sold, kind),
  };
}

function bought(given, counts, sold, kind) {
  if (kind.sold === "bead") {
    const beads = all(counts) - (given.back ?? 0);
    const most = beads + (beads ? Math.max(LEAST_SPARE, whole(beads * SPARE)) : 0);
    return { sold: [beads, beads, most], units: [beads, most] };
  }
  const [least, , most] = sold.map((mm) => whole(mm / kind.length_mm));
  return { sold, units: [least, most] };
}
