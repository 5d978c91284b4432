// Cloth for a class: webapp/cloth/classroom.py in JavaScript. Texts by slot, and strips in mm for the drawing.

import { INCH } from "./bounds.js";
import { cut } from "./cut.js";
import { OTHER, area, laid, laidArea } from "./lengths.js";
import { classCuts, offTheBolt } from "./packing.js";
import { BOTH, clothOf } from "./piece.js";
import { box } from "./piece_drawing.js";
import { choices, read, together } from "./reads.js";
import { STEPS, roundUp, turnedCloth } from "./sizing.js";
import { brought } from "./slip_threads.js";

const [DESIGN, CUT] = [["width", "height", "count"], ["cut_width", "cut_height"]];
const [BOLT, PIECE] = [["bolt_width"], ["piece_width", "piece_height"]];
const STRIPS = 6;
const SCRAP = INCH / 8; // mm

/** Read what was typed: how many, of which design or cut, off a bolt or out of a piece. */
export function ask(typed) {
  const chosen = choices(typed);
  const of = chosen.by === "cut" ? CUT : DESIGN;
  const asked = read(typed, ["n", ...of, ...(chosen.off === "piece" ? PIECE : BOLT)], of === CUT ? [] : ["across", "own"]);
  asked.values = { across: null, own: null, ...asked.values };
  if (of === DESIGN) together(asked, "width", "height", BOTH);
  asked.typed.threads = typed.threads ?? "";
  asked.values.threads = brought(asked.typed.threads);
  return asked;
}

/** Give one cut [width, height] as the design has it, and the same where the design lies across; done: the design's finished sizes. */
function cutOf(values, tables) {
  const step = STEPS[values.unit];
  if (values.by === "cut") {
    const sides = [roundUp(values.cut_width, step), roundUp(values.cut_height, step)];
    return { cut: sides, turned: sides, done: null, doneTurned: null };
  }
  const cloth = clothOf(values);
  const [sized, turned] = [cloth, turnedCloth(cloth)].map((on) => cut(on, values, tables).sized);
  return {
    cut: [sized.cut_width, sized.cut_height], turned: [turned.cut_width, turned.cut_height],
    done: [sized.finished_width, sized.finished_height], doneTurned: [turned.finished_width, turned.finished_height],
  };
}

function isPossible(each) {
  const sides = [...each.cut, ...each.turned];
  return Math.min(...sides) >= 10 && Math.max(...sides) <= 100_000;
}

function cutting(values, each) {
  const isTurned = values.turn === "yes";
  const lying = [each.turned[1], each.turned[0]];
  if (!isPossible(each)) return [0, null];
  if (values.off === "bolt") return offBolt(values, each.cut, isTurned, lying);
  const lay = (n) => classCuts(n, ...each.cut, values.piece_width, values.piece_height, isTurned, lying);
  const whole = lay(values.n);
  if (whole) return [values.n, whole];
  const one = lay(1);
  return one ? [one.most, lay(one.most)] : [0, null];
}

function offBolt({ n, bolt_width: wide }, sides, isTurned, lying) {
  try {
    return [n, offTheBolt(n, ...sides, wide, isTurned, lying)];
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    return [0, null];
  }
}

/** Say what to ask for, or whether the piece does; straightened: mm lost in straightening an edge. */
export function slots({ values }, tables, straightened) {
  const { unit } = values;
  const each = cutOf(values, tables);
  const [many, found] = cutting(values, each);
  const said = { each: eachOf(each, found, unit), left: leftOf(found, unit), also: "" };
  if (!isPossible(each)) return { ...said, headline: "No cut", sub: "There is no such cut. Check the figures." };
  if (!found) {
    const where = values.off === "bolt" ? "The bolt" : "The piece";
    return { ...said, headline: "Too small", sub: `${where} does not hold one such cut.` };
  }
  if (values.off === "bolt") {
    const length = roundUp(found.length, STEPS[unit]);
    const also = `Ask for ${laid(straightened, unit)} more: edges are rarely straight.`;
    return { ...said, headline: laid(length, unit), sub: offOf(values, length, unit), also };
  }
  if (many < values.n) {
    return { ...said, headline: String(many), sub: many > 1 ? `cuts at most, of the ${values.n} asked for.` : "cut at most." };
  }
  const more = found.most > many ? `This piece gives ${found.most}.` : "This piece gives no more than that.";
  return { ...said, headline: "Enough", sub: more };
}

const isAlike = (one, other) => one?.[0] === other?.[0] && one?.[1] === other?.[1];

function eachOf({ cut: sides, turned, done, doneTurned }, found, unit) {
  const [asIs, across] = [sides, turned].map((lying) => laidArea(...lying, unit));
  if (!found?.turned || isAlike(done, doneTurned)) return `Each cut is ${asIs}.`;
  const straight = found.cuts.length - found.turned;
  const first = straight ? `Each cut is ${asIs}; ${found.turned} turned, ${across}` : `Each, turned, is ${across}`;
  return `${first}: the design then comes out ${area(...doneTurned, unit)}, not ${area(...done, unit)}.`;
}

function offOf(values, length, unit) {
  return `off a bolt ${laid(values.bolt_width, unit)} wide, or ${laid(length, OTHER[unit], "up")}.`;
}

function leftOf(found, unit) {
  if (!found) return "";
  const strips = found.left.filter(([, , wide, high]) => Math.min(wide, high) >= SCRAP)
    .sort((one, other) => other[2] * other[3] - one[2] * one[3]).slice(0, STRIPS);
  if (!strips.length) return "Nothing is left over.";
  return `Left over: ${strips.map(([, , wide, high]) => laidArea(wide, high, unit, "down")).join(", ")}.`;
}

/** Give the drawing: [viewBox, cuts, strips left over], mm from the cloth's top left. */
export function drawing({ values }, tables) {
  const [, found] = cutting(values, cutOf(values, tables));
  if (!found) return ["0 0 1 1", [], []];
  const wide = values.off === "bolt" ? values.bolt_width : values.piece_width;
  const high = values.off === "bolt" ? found.length : values.piece_height;
  const edge = Math.max(wide, high) / 100;
  return [box(-edge, -edge, wide + 2 * edge, high + 2 * edge), found.cuts, found.left];
}
