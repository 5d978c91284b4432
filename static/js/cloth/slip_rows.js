// The threads of a slip in words: webapp/cloth/slip_rows.py in JavaScript.

import { groundOf } from "../threads/geometry.js";
import { keyOf, needs, unitsOf } from "../threads/needed.js";
import { thousands } from "./lengths.js";
import { coded, write } from "./slip_text.js";
import { used } from "./slip_threads.js";
import { join } from "./words.js";

const UNITS = { skein: ["skein", "skeins"], spool: ["spool", "spools"], bead: ["bead", "beads"] };

/** Write a number with what it counts. */
export const counted = (many, [one, more]) => `${thousands(many)} ${many === 1 ? one : more}`;

const found = ({ threads, count, over, across }, kinds) => needs(threads, groundOf(count, over, across), kinds);

/** Say every line of a slip's threads: {symbol, thread, more, strands, buy}. */
export function rows(slip, kinds) {
  const all = found(slip, kinds);
  const met = new Set();
  const buy = (part) => {
    const key = keyOf(part);
    if (met.has(key)) return "as above";
    met.add(key);
    return units(all.get(key), unitsOf(all.get(key)), kinds);
  };
  return slip.threads.map(({ symbol, parts }) => ({
    symbol,
    thread: parts.map(used).join(" + "),
    more: more(parts, kinds).join(", "),
    strands: parts.filter(({ kind }) => kind !== "beads").map(({ strands }) => strands).join(" + "),
    buy: parts.map(buy).join(" + "),
  }));
}

/** Say what there is to buy in all, and whether the code had to leave the threads out. */
export function texts(slip, kinds) {
  const { length } = slip.threads;
  if (!length) return { "to-buy": "", uncoded: "" };
  const sums = [...found(slip, kinds).values()].map((need) => [need, unitsOf(need)]);
  const many = counted(length, ["thread", "threads"]);
  return {
    "to-buy": bought(sums, kinds),
    uncoded: coded(slip) === write(slip) ? "" : `${many}: too many for a code. The link has them.`,
  };
}

/** Add up what is to be bought, of [need, how many]: "12 skeins, 1 spool and 60 beads". */
export function bought(of, kinds) {
  const sums = {};
  for (const [{ kind }, many] of of) sums[kinds[kind].sold] = (sums[kinds[kind].sold] ?? 0) + many;
  const said = Object.keys(UNITS).filter((sold) => sums[sold]).map((sold) => counted(sums[sold], UNITS[sold]));
  return said.length ? `To buy: ${join(said)}, each colour of one dye lot.` : "";
}

/** Write how many of what a thread is sold in. */
export const units = ({ kind, isCounted }, many, kinds) => (isCounted ? counted(many, UNITS[kinds[kind].sold]) : "not counted");

function more(parts, kinds) {
  const names = new Set(parts.map(({ kind }) => kind).filter((kind) => kind !== "cotton"));
  const instead = parts.filter((part) => part.instead).map(({ thread }) => `for ${thread}`);
  return [...[...names].map((kind) => kinds[kind].name), ...instead];
}
