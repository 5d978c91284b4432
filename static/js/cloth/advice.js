// Needle, strands and hoop as ranges, the usual first: webapp/cloth/advice.py in JavaScript, from the tables in shared/tables.

import { FORGIVEN, INCH, counted, drawn } from "./bounds.js";

function rowOf(perInch, rows) {
  counted(perInch);
  return rows.find((row) => perInch <= row.up_to) ?? rows.at(-1);
}

/** Give the tapestry needle {usual, low, high, sources} for holes so many to the inch. */
export function needles(holesPerInch, table) {
  const { usual, low, high, sources } = rowOf(holesPerInch, table.needles);
  return { usual, low, high, sources };
}

/** Say what some sources of needles add or say otherwise: [text, keys of sources]. */
export function besideNeedles({ low, high }, { published, dissent }) {
  const { back, source } = published.find((of) => of.back);
  const said = `${back[0].toUpperCase()}${back.slice(1)}.`;
  return low <= 2 && high >= 2 ? [`${said} Or ${dissent.says}.`, [source, dissent.source]] : [said, [source]];
}

/** Give the strands of six for full crosses, backstitch and half crosses, for stitches so many to the inch. */
export function strands(stitchesPerInch, table) {
  const { full, back, half, sources } = rowOf(stitchesPerInch, table.strands);
  return {
    usual: full[0], low: full[1], high: full[2],
    back_usual: back[0], back_low: back[1], back_high: back[2], half, sources,
  };
}

/** Give the hoop or frame {diameter (inches or null), frame, needed (mm), why, sources} for a finished design, mm. */
export function hoop(finishedWidth, finishedHeight, table) {
  drawn(finishedWidth, finishedHeight);
  const diagonal = Math.sqrt(finishedWidth * finishedWidth + finishedHeight * finishedHeight);
  const longer = Math.max(finishedWidth, finishedHeight) + table.clear.inches * INCH;
  const needed = Math.max(diagonal, longer);
  const diameter = table.sizes.inches.find((inches) => inches * INCH >= needed - FORGIVEN) ?? null;
  if (diameter === null) return { diameter, frame: true, needed, why: "frame", sources: table.frame.sources };
  const [low, high] = table.comfortable.inches;
  const small = diameter < low ? "small" : "comfortable";
  const why = diameter <= high ? small : "large";
  return { diameter, frame: why === "large", needed, why, sources: table[why === "large" ? "frame" : "comfortable"].sources };
}
