/** What stands on the glass once the screen is set: the ruler, or the lines. */

import { lines } from "./ladder.js";
import { ticks } from "./ticks.js";

const ZERO = 12; // CSS pixels before the first mark
const SIZES = [16, 24, 32, 40, 56]; // CSS pixels that a mark reaches in, the finest first

/** Tell how many pixels of the glass the ruler measures. */
export const rulerLength = ({ width, height, ratio }) => Math.max(width, height) - 2 * Math.round(ZERO * ratio);

/** Draw the ruler along the longer side, its marks from the edge inward. */
export function drawRuler(context, size, unit, { perMm }) {
  const { width, height, ratio, colours } = size;
  const upright = height > width;
  const zero = Math.round(ZERO * ratio);
  const thick = Math.max(1, Math.floor(ratio / 1.5));
  context.fillStyle = colours.cloth;
  context.fillRect(0, 0, width, height);
  context.fillStyle = colours.ink;
  context.font = `600 ${Math.round(20 * ratio)}px system-ui, sans-serif`;
  Object.assign(context, { textBaseline: "middle", textAlign: upright ? "left" : "center" });
  for (const mark of ticks(unit, perMm, rulerLength(size))) {
    const [at, far] = [zero + mark.at, Math.round(SIZES[rank(mark, unit)] * ratio)];
    context.fillRect(...(upright ? [0, at, far, thick] : [at, 0, thick, far]));
    const beside = far + Math.round((upright ? 8 : 16) * ratio);
    context.fillText(mark.label, ...(upright ? [beside, at] : [at, beside]));
  }
}

const rank = ({ size }, unit) => (unit === "in" || size === 0 ? size : size + 2);

/** Draw the lines along the longer side of the window, as bright and as black as they can be. */
export function drawLines(context, { width, height }, upright, count, axis) {
  context.fillStyle = "#fff";
  context.fillRect(0, 0, width, height);
  context.fillStyle = "#000";
  for (const [from, wide] of lines(count, axis, upright ? height : width)) {
    context.fillRect(...(upright ? [0, from, width, wide] : [from, 0, wide, height]));
  }
}
