// The kinds of thread and their habits; of a blend the most delicate part decides: webapp/threads/kinds.py in JavaScript.

import { makeWorked } from "./estimate.js";
import { STRAND } from "./geometry.js";

const DIAMETERS = { wool: 0.6, metallic: 0.3, filament: 0.1 };
const diameterOf = (name) => DIAMETERS[name] ?? STRAND;

/** Give the row of one kind, or refuse it with a sentence. */
export function kindOf(kinds, name) {
  if (!Object.hasOwn(kinds, name)) throw new RangeError("Choose one of the kinds of thread.");
  return kinds[name];
}

/** Name the most delicate of the kinds in the needle, of several the one that is cut shortest. */
export function deciding(kinds, names) {
  if (!names.length) throw new RangeError("Say what thread it is.");
  const rank = (name) => [kindOf(kinds, name).delicate, -kinds[name].working_mm, name];
  const isMore = (one, other) => {
    const at = one.findIndex((value, i) => value !== other[i]);
    return at >= 0 && one[at] > other[at];
  };
  return names.reduce((best, name) => (isMore(rank(name), rank(best)) ? name : best), (rank(names[0]), names[0]));
}

/** Give how each part [kind, strands] of what lies in the needle together is worked; method and working are hers, or null. */
export function worked(kinds, parts, method = null, working = null) {
  const lead = kindOf(kinds, deciding(kinds, parts.map(([name]) => name)));
  if (!parts.every(([, strands]) => strands >= 1 && strands <= 24)) throw new RangeError("The needle holds 1 to 24 strands.");
  let [together, area] = [0, 0];
  for (const [name, strands] of parts) {
    together += strands;
    area += strands * diameterOf(name) * diameterOf(name);
  }
  const loop = parts.length === 1 && lead.loop && together % 2 === 0;
  return parts.map(([, strands]) =>
    makeWorked(strands, together, method || lead.method, working || lead.working_mm, loop, Math.sqrt(area / together)));
}
