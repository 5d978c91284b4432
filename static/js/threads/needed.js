// What the threads of a slip take, for one or for a class: webapp/threads/needed.py in JavaScript. A need is {kind, name,
// symbols, sold, inLengths, cut: Map of "strands mm" to [strands, mm, lengths], isCounted}.

import { used } from "../cloth/slip_threads.js";
import { estimate, whole } from "./estimate.js";
import { worked } from "./kinds.js";

/** Give the skeins, spools or beads of a need that buy safely. */
export const unitsOf = ({ sold }) => whole(sold);

/** Give the same for so many learners, added up before it is rounded. */
export const forClass = ({ inLengths }, learners) => whole(learners * inLengths);

/** Call a thread by its kind and name. */
export const keyOf = (part) => `${part.kind} ${used(part)}`;

/** Give what every thread takes: a Map by kind and name, in the order of the lines. */
export function needs(threads, on, kinds) {
  const found = new Map();
  for (const thread of threads) {
    const how = worked(kinds, thread.parts.map(({ kind, strands }) => [kind, strands]));
    thread.parts.forEach((part, at) => {
      const key = keyOf(part);
      if (!found.has(key)) found.set(key, fresh(part));
      const need = found.get(key);
      if (thread.symbol && !need.symbols.includes(thread.symbol)) need.symbols.push(thread.symbol);
      add(need, part, estimate(on, thread, how[at], kinds[part.kind]), how[at].working, kinds[part.kind]);
    });
  }
  return found;
}

const fresh = (part) => ({
  kind: part.kind, name: used(part), symbols: [], sold: 0, inLengths: 0, cut: new Map(), isCounted: false,
});

function add(need, part, estimated, working, kind) {
  const most = estimated.units[1];
  need.isCounted ||= most > 0;
  if (kind.sold === "bead") {
    need.sold += most;
    need.inLengths += most;
    return;
  }
  need.sold += estimated.sold[2] / kind.length_mm;
  const lengths = estimated.lengths[2];
  need.inLengths += (lengths * part.strands) / (Math.floor(kind.length_mm / working) * kind.strands);
  if (!lengths) return;
  const cut = `${part.strands} ${working}`;
  need.cut.set(cut, [part.strands, working, (need.cut.get(cut)?.[2] ?? 0) + lengths]);
}
