// What a slip says and draws: webapp/cloth/slip_saying.py in JavaScript.

import { INCH } from "./bounds.js";
import { shapes as drawn } from "./drawing.js";
import { number, thousands, written } from "./lengths.js";
import { answer as answered } from "./size_answer.js";
import { slots as said } from "./size_saying.js";
import { texts } from "./slip_rows.js";

const SAME = [
  "cut", "cut-other", "finished", "finished-other", "margin", "why", "middle", "middle-down",
  "first", "first-other", "needle", "needle-more", "strands", "hoop", "care", "wide", "high",
];
const NIGHT = {
  hoop: "Take it out of hoop or frame every night: what is left on marks the cloth.",
  clamps: "Take the clamps off every night, the ones that lie on stitches first.",
  scroll: "Slacken the scroll frame every night.",
  stretched: "",
  hand: "",
};

const answer = (slip, tables) => answered({ ...slip, over: String(slip.over), frays: slip.frays ? "yes" : "" }, tables);

/** Write the design's size in stitches. */
export const stitches = (slip) => `${thousands(slip.width)} × ${thousands(slip.height)}`;

/** Say all that a slip says: texts by slot. */
export function slots(slip, tables) {
  const same = said(answer(slip, tables));
  return {
    title: slip.title || stitches(slip),
    stitches: `${stitches(slip)} stitches`,
    cloth: cloth(slip),
    measured: measured(slip),
    night: NIGHT[slip.held],
    ...Object.fromEntries(SAME.map((name) => [name, same[name]])),
    ...texts(slip, tables.threads),
  };
}

/** Draw a slip to scale: attributes by shape. */
export function shapes(slip, tables) {
  return Object.fromEntries(Object.entries(drawn(answer(slip, tables))).filter(([name]) => !name.startsWith("row-")));
}

function cloth({ count, across, over, error }) {
  const off = error === null ? "" : `, give or take ${error}`;
  const uneven = across !== null && across !== count;
  const said = uneven ? `${count} count across${off}, ${across} down` : `${count} count${off}`;
  return `${said}, over ${over === 2 ? "two" : "one"}`;
}

function measured({ width, count, over, unit, error }) {
  if (error === null) return "";
  const [least, most] = [error, -error].map((off) => (width * over * INCH) / (count + off));
  return `so ${number(least, unit)} to ${written(most, unit)} wide`;
}
