// How much cloth to leave round a design: webapp/cloth/margins.py in JavaScript. The table's lengths are in inches; out come mm.

import { INCH, edged } from "./bounds.js";

/** Give the margin {mm, parts, decided, sources} for a finish and a frame, keys of the table; own (mm or null) overrules the finish. */
export function margin(finish, frame, frays, own, table) {
  const [finishing, framing] = [table.finishes[finish], table.frames[frame]];
  const needed = own === null ? { what: "finish", mm: finishing.inches * INCH } : { what: "own", mm: own };
  edged(needed.mm);
  const parts = [needed];
  const sources = own === null ? [...finishing.sources] : [];
  if (framing.inches > 0) {
    parts.push({ what: "frame", mm: framing.inches * INCH });
    sources.push(...framing.sources);
  }
  const most = parts.at(-1).mm > needed.mm ? parts.at(-1) : needed;
  let { mm } = most;
  if (frays) {
    parts.push({ what: "frays", mm: table.frays.inches * INCH });
    sources.push(...table.frays.sources);
    mm += parts.at(-1).mm;
  }
  return { mm, parts, decided: most.what, sources: [...new Set(sources)] };
}
