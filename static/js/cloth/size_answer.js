// Everything that size and cut answer, figures only: webapp/cloth/size_answer.py in JavaScript. What was read is `values`;
// the tables are those the page embeds.

import { besideNeedles, needles, strands as strandsFor } from "./advice.js";
import { INCH } from "./bounds.js";
import { cut, sideBySide } from "./cut.js";
import { makeCloth } from "./sizing.js";

const SIDES = [[11, 1], [25, 2], [14, 1], [16, 1], [18, 1], [20, 1]];

/** Answer a question that was read: everything the page shows, mm and counts per inch. */
export function answer(values, tables) {
  const { unit, held, finish } = values;
  const cloth = makeCloth(values.count, values.across || values.count, Number(values.over));
  const { sized, margin, hoop, least, grown } = cut(cloth, values, tables);
  const perInch = cloth.across / cloth.over;
  const needle = needles(perInch, tables.needles);
  const strand = strandsFor(perInch, tables.strands);
  const [beside, more] = besideNeedles(strand, tables.needles);
  return {
    unit, finish, held, cloth, margin, sized,
    needle, beside, strands: strand, hoop,
    least: grown ? least : 0,
    unheld: cut(cloth, { ...values, held: "hand" }, tables).sized,
    grip: tables.margins.frames[held].inches * INCH,
    sides: sideBySide(values, tables, SIDES),
    widest: Math.max(...tables.pieces.bolts.inches) * INCH,
    cited: {
      Margin: cited(margin.sources, tables.margins),
      needle: cited([...new Set([...needle.sources, ...more])], tables.needles),
      strands: cited(strand.sources, tables.strands),
    },
  };
}

const cited = (keys, table) => keys.map((key) => table.sources[key] ?? `${key}, no source`);

/** Give the diameter of the hoop that is used, mm; 0 where there is none. */
export const ring = ({ held, hoop: { diameter } }) => (held === "hoop" && diameter ? diameter * INCH : 0);

/** Tell which of the counts side by side is as hers, null if none is. */
export function yours({ cloth, sides: grounds }) {
  if (cloth.across !== cloth.down) return null;
  const row = grounds.findIndex((ground) => ground.count / ground.over === cloth.across / cloth.over);
  return row < 0 ? null : row;
}
