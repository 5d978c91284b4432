// What quick thread says, slot by slot: webapp/threads/quick_saying.py in JavaScript.

import { laid, thousands } from "../cloth/lengths.js";
import { both, figure, ranged, run } from "./in_words.js";
import { answer } from "./quick.js";

const WAYS = { rows: "worked out and back", each: "each finished at once" };
const several = (many) => (many === 1 ? "" : "s");

/** Say everything the page says of a question that was read: texts by slot. */
export function slots({ values }, tables) {
  const [found, { sold }] = [answer(values, tables), tables.kinds[values.kind]];
  const [least, most] = found.units;
  return {
    headline: ranged(least, most),
    what: `${sold}${several(most)}`,
    amount: sold === "bead" ? beads(found) : amount(found, values.unit),
    lengths: lengths(found, values.unit, sold === "bead" ? "beads" : "crosses"),
    rests: rests(found, values),
    also: values.by === "block" ? `${thousands(values.blocks)} × ${thousands(values.block)} = ${thousands(found.crosses)} stitches.` : "",
  };
}

const amount = ({ sold: [low, usual, high] }, unit) =>
  `${both(usual, unit)}, from ${figure(low, unit, "down")} to ${run(high, unit, "up")}`;

const beads = ({ units: [least, most] }) => `${thousands(least)}, and ${thousands(most - least)} to spare`;

function lengths({ worked, lengths: cut, aLength }, unit, what) {
  const strands = `${worked.strands} strand${several(worked.strands)} in the needle`;
  if (!cut) return `${strands}.`;
  const many = `${ranged(cut[0], cut[2])} length${several(cut[2])} of ${laid(worked.working, unit)}`;
  return `${many}${aLength > 1 ? `, about ${aLength} ${what} each` : ""}; ${strands}.`;
}

function rests({ share, isHers, worked }, { gave, kind }) {
  if (share !== null) {
    return `From what is printed: a cross takes ${Math.floor(share * 100 + 0.5) / 100} times the thread it takes there.`;
  }
  if (kind === "beads") return "Each is sewn on with a half cross.";
  if (isHers) return `From the ${gave} crosses that one length gave you.`;
  return `From the drawing of the cross, ${WAYS[worked.method]}; surer once you stitch one length.`;
}
