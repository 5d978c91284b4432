// How big to cut: webapp/cloth/cut.py in JavaScript, where the rule of the hoop is written out. Lengths in mm.

import { hoop as hoopFor } from "./advice.js";
import { INCH } from "./bounds.js";
import { margin } from "./margins.js";
import { STEPS, finished, makeCloth, size } from "./sizing.js";

/** Cut for a question that was read: {sized, margin, hoop, least, grown}. */
export function cut(cloth, values, tables) {
  const { width, height, finish, held, frays, own, unit } = values;
  const around = margin(finish, held, frays === "yes", own, tables.margins);
  const hoop = hoopFor(...finished(cloth, width, height), tables.hoops);
  const least = askedBy(hoop, values, tables.margins);
  const sized = size(cloth, width, height, around.mm, STEPS[unit], least);
  return { sized, margin: around, hoop, least, grown: least > Math.min(sized.finished_width, sized.finished_height) + 2 * around.mm };
}

/** Give what a hoop asks of the cut each way; 0 where none is used. */
export function askedBy({ diameter }, { held, frays }, table) {
  if (held !== "hoop" || diameter === null) return 0;
  let beyond = table.frames.hoop.beyond.inches;
  if (frays === "yes") beyond += table.frays.inches;
  return (diameter + 2 * beyond) * INCH;
}

/** Cut for the same design on several even cloths, each [count, over]: a list of {count, over, sized}. */
export const sideBySide = (values, tables, grounds) =>
  grounds.map(([count, over]) => ({ count, over, sized: cut(makeCloth(count, count, over), values, tables).sized }));
