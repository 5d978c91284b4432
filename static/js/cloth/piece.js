// This piece of cloth: webapp/cloth/piece.py in JavaScript. Texts by slot, numbers by shape, mm of the cloth.

import { FORGIVEN, INCH } from "./bounds.js";
import { cut } from "./cut.js";
import { laid, thousands } from "./lengths.js";
import { margin } from "./margins.js";
import { read, together } from "./reads.js";
import { fit, largest, makeCloth } from "./sizing.js";

const GROUNDS = [[11, 1], [25, 2], [14, 1], [16, 1], [18, 1], [20, 1]];

/** Said where only one side of a design is written. */
export const BOTH = "Write both sides of the design, or neither.";

/** Read what was typed of the piece, the cloth, and perhaps a design. */
export function ask(typed) {
  const asked = read(typed, ["piece_width", "piece_height", "count"], ["across", "width", "height", "own"]);
  together(asked, "width", "height", BOTH);
  return asked;
}

/** Give the margin a side, mm. */
export const marginOf = (values, table) => margin(values.finish, values.held, values.frays === "yes", values.own, table).mm;

/** Give the cloth as the piece lies: counted across its width, and the other way if that was given. */
export const clothOf = ({ count, across, over }) => makeCloth(count, across ?? count, Number(over));

/** Lay the design on the piece as it lies, and on the piece turned. */
export const ways = (cloth, values, side) =>
  [false, true].map((turned) => fit(cloth, values.width, values.height, side, values.piece_width, values.piece_height, turned));

const least = (way) => Math.min(way.spare_across, way.spare_down);

/** Choose the way that fits, as it lies before turned; where neither does, the one less short. */
export function better([straight, turned]) {
  return straight.fits || !(turned.fits || least(turned) > least(straight)) ? straight : turned;
}

const times = ([across, down]) => `${thousands(across)} × ${thousands(down)}`;

/** Say everything the page says of a question that was read: texts by slot. */
export function slots({ values }, tables) {
  const side = marginOf(values, tables.margins);
  const cloth = clothOf(values);
  const most = largest(cloth, values.piece_width, values.piece_height, side);
  const isAsked = values.width !== null;
  const said = isAsked ? fitting(values, cloth, side) : mostOf(most, side, values.unit);
  if (isAsked) said.also = [said.also, hooped(values, cloth, tables)].filter(Boolean).join(" ");
  const at = isAsked && most.every(Boolean) ? `It takes ${times(most)} stitches at most.` : "";
  return { ...said, most: at, ...rows(values, side) };
}

function mostOf(most, side, unit) {
  if (!most.every(Boolean)) {
    return { headline: "No room", spare: `With ${laid(side, unit, "up")} a side nothing is left for a design.`, also: "" };
  }
  return { headline: times(most), spare: `stitches at most, with ${laid(side, unit, "up")} a side.`, also: "" };
}

function fitting(values, cloth, side) {
  const [straight, turned] = ways(cloth, values, side);
  const way = better([straight, turned]);
  const { unit } = values;
  if (!way.fits) return { headline: "Too small", spare: short(way, side, unit), also: finer(values, side) };
  const [across, down] = [way.spare_across, way.spare_down].map((spare) => laid(Math.max(0, spare), unit, "down"));
  return {
    headline: way.turned ? "It fits, turned" : "It fits",
    spare: `${across} over across and ${down} down, beside ${laid(side, unit, "up")} a side.`,
    also: straight.fits && turned.fits ? "Turned by a quarter it fits as well." : "",
  };
}

function hooped(values, cloth, tables) {
  const { least, hoop } = cut(cloth, values, tables);
  if (least <= Math.min(values.piece_width, values.piece_height) + FORGIVEN) return "";
  const [across, each] = [laid(hoop.diameter * INCH, values.unit), laid(least, values.unit, "up")];
  return `A hoop of ${across} goes round it, and asks for ${each} each way.`;
}

function short(way, side, unit) {
  const spares = [[way.spare_across, "across"], [way.spare_down, "down"]].filter(([spare]) => spare < -FORGIVEN);
  const by = spares.map(([spare, where]) => `${laid(-spare, unit, "up")} ${where}`).join(" and ");
  const left = Math.min(way.margin_across, way.margin_down);
  const rest = `it would leave ${laid(Math.max(0, left), unit, "down")} a side, not ${laid(side, unit, "up")}`;
  return `Short by ${by}: ${left >= 0 ? rest : "the design itself is larger"}.`;
}

function finer(values, side) {
  const perInch = values.count / Number(values.over);
  const [count, over] = GROUNDS.find(([c, o]) => c / o > perInch && fits(values, side, c, o)) ?? [];
  return count ? `From ${count / over} stitches an inch on it fits.` : "No usual count is fine enough.";
}

function fits(values, side, count, over) {
  const [straight, turned] = ways(makeCloth(count, count, over), values, side);
  return straight.fits ? "fits" : turned.fits ? "turned" : "";
}

function rows(values, side) {
  const said = {};
  for (const [row, [count, over]] of GROUNDS.entries()) {
    const most = largest(makeCloth(count, count, over), values.piece_width, values.piece_height, side);
    said[`most-${row}`] = most.every(Boolean) ? times(most) : "nothing";
    said[`yours-${row}`] = values.width === null ? "" : fits(values, side, count, over) || "no";
  }
  return said;
}
