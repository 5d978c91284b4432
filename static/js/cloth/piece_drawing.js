// A piece of cloth and the design on it as a drawing to scale: webapp/cloth/piece_drawing.py in JavaScript.

import { better, clothOf, marginOf, ways } from "./piece.js";
import { largest } from "./sizing.js";

/** Draw to scale, mm from the piece's top left: the piece, the room inside its margins, the design. */
export function shapes({ values }, table) {
  const side = marginOf(values, table);
  const cloth = clothOf(values);
  let [wide, high] = [values.piece_width, values.piece_height];
  const most = largest(cloth, wide, high, side);
  let [x, y] = [wide / 2, high / 2];
  if (values.width !== null) {
    const way = better(ways(cloth, values, side));
    if (way.turned) [wide, high] = [high, wide];
    [x, y] = [way.margin_across, way.margin_down];
  } else if (most.every(Boolean)) {
    const pitch = (count) => (cloth.over * 25.4) / count;
    [x, y] = [(wide - most[0] * pitch(cloth.across)) / 2, (high - most[1] * pitch(cloth.down)) / 2];
  }
  const room = [Math.max(0, wide - 2 * side), Math.max(0, high - 2 * side)];
  return {
    piece: { x: 0, y: 0, width: wide, height: high },
    room: { x: (wide - room[0]) / 2, y: (high - room[1]) / 2, width: room[0], height: room[1] },
    design: { x, y, width: wide - 2 * x, height: high - 2 * y },
  };
}

/** Give the drawing's viewBox: the piece, and the design where it reaches beyond it. */
export function frame({ piece, design }) {
  const [wide, high] = [Math.max(piece.width, design.width), Math.max(piece.height, design.height)];
  const edge = Math.max(wide, high) / 100;
  return box(Math.min(0, design.x) - edge, Math.min(0, design.y) - edge, wide + 2 * edge, high + 2 * edge);
}

const tenth = (number) => Math.trunc(number * 10 + (number >= 0 ? 0.5 : -0.5)) / 10;

/** Write a viewBox, to a tenth of a mm. */
export const box = (...numbers) => numbers.map(tenth).join(" ");
