// Threads and needles for a class, in words: webapp/cloth/class_threads.py in JavaScript.

import { groundOf } from "../threads/geometry.js";
import { forClass, needs, unitsOf } from "../threads/needed.js";
import { needles as needlesFor } from "./advice.js";
import { laid } from "./lengths.js";
import { bought, counted, units } from "./slip_rows.js";
import { DAMAGED } from "./slip_text.js";
import { lengthOf } from "./words.js";

const SPARE = 2;

function needed({ by, threads, count, over, across }, kinds) {
  if (by === "cut" || !threads?.length) return [];
  return [...needs(threads, groundOf(count, Number(over), across), kinds).values()];
}

/** Say of every thread what a learner gets of it, and what to buy for all: {symbol, thread, more, buy}. */
export function rows(values, kinds) {
  return needed(values, kinds).map((need) => ({
    symbol: need.symbols.join(" "),
    thread: need.name,
    more: more(need, values.unit, kinds[need.kind]),
    buy: units(need, forClass(need, values.n), kinds),
  }));
}

/** Say the needles, and what thread there is to buy in all. */
export function texts(values, tables) {
  const { by, n, threads } = values;
  const found = needed(values, tables.threads);
  let toBuy = bought(found.map((need) => [need, forClass(need, n)]), tables.threads);
  if (!threads) toBuy = DAMAGED;
  else if (threads.length && by === "cut") toBuy = "For the threads ask for a design: they go by its count.";
  return { needles: needles(values, tables.needles), "to-buy": toBuy };
}

function more(need, unit, kind) {
  if (kind.sold === "bead") return need.isCounted ? `each ${counted(unitsOf(need), ["bead", "beads"])}` : "";
  const long = (mm) => (unit === "cm" ? lengthOf(mm, unit) : laid(mm, unit));
  const said = [...need.cut.values()]
    .map(([strands, mm, many]) => `each ${many} × ${long(mm)}, ${counted(strands, ["strand", "strands"])}`);
  return [...(need.kind === "cotton" ? [] : [kind.name]), ...said].join("; ");
}

function needles({ by, n, count, over, threads }, table) {
  const many = n + SPARE;
  const size = by === "cut" ? "" : `, size ${needlesFor(count / Number(over), table).usual}`;
  const isBeaded = (threads ?? []).some(({ beads, parts }) => beads || parts.some(({ kind }) => kind === "beads"));
  return `${many} needles${size}: one each, two to spare.${isBeaded ? ` And ${many} for beads.` : ""}`;
}
