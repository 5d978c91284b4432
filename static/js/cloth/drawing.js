// Size and cut drawn to scale, in mm of cloth: webapp/cloth/drawing.py in JavaScript. `u` is the mm of cloth to one of the
// drawing's WIDE × HIGH dots.

import { laidArea } from "./lengths.js";
import { ring, yours } from "./size_answer.js";

const CARD = [85.60, 53.98]; // ISO/IEC 7810, ID-1
const [WIDE, HIGH] = [326, 340];
const [LEFT, RIGHT, TOP, BOTTOM, UNDER] = [74, 8, 26, 4, 26];

/** Give each shape's attributes, mm from the top left of the cut, and the drawing's viewBox. */
export function shapes(found) {
  const { sized } = found;
  const across = ring(found);
  const [wide, high] = [sized.cut_width, sized.cut_height];
  const [over, under] = [Math.max(0, (across - wide) / 2), Math.max(0, (across - high) / 2)];
  const u = Math.max(
    (wide + 2 * over) / (WIDE - LEFT - RIGHT),
    (high + 2 * under + CARD[1]) / (HIGH - TOP - UNDER - BOTTOM),
  );
  const x = (wide + (RIGHT - LEFT - WIDE) * u) / 2;
  return {
    figure: { "data-long": long(found) },
    view: { viewBox: [x, -under - TOP * u, WIDE * u, HIGH * u].map(plain).join(" ") },
    cut: { x: 0, y: 0, width: wide, height: high },
    design: { x: sized.first_in, y: sized.first_down, width: sized.finished_width, height: sized.finished_height },
    hoop: { cx: wide / 2, cy: high / 2, r: across / 2 },
    frame: frame(found, across),
    ...marks(sized, u),
    ...labels(found, over, under, u),
  };
}

const LONG = [12, 14, 16, 18];

function long({ sized, unit }) {
  const { length } = laidArea(sized.cut_width, sized.cut_height, unit);
  return String(LONG.filter((least) => length >= least).length);
}

const plain = (value) => String(Math.floor(value * 1000 + 0.5) / 1000);

function frame({ sized, grip }, across) {
  if (across || !grip) return { x: 0, y: 0, width: 0, height: 0 };
  const [x, y] = [Math.min(grip, sized.first_in), Math.min(grip, sized.first_down)];
  return { x, y, width: sized.cut_width - 2 * x, height: sized.cut_height - 2 * y };
}

function marks(sized, u) {
  const [x, y, middle] = [sized.first_in, sized.first_down, [sized.cut_width / 2, sized.cut_height / 2]];
  const inside = [x + 6 * u, y + 6 * u];
  return {
    first: { x, y, width: 8 * u, height: 8 * u },
    in: { x1: 0, y1: inside[1], x2: x, y2: inside[1], "stroke-width": u },
    down: { x1: inside[0], y1: 0, x2: inside[0], y2: y, "stroke-width": u },
    "middle-across": line(middle[0] - 9 * u, middle[1], middle[0] + 9 * u, middle[1], u),
    "middle-down": line(middle[0], middle[1] - 9 * u, middle[0], middle[1] + 9 * u, u),
  };
}

const line = (x1, y1, x2, y2, u) => ({ x1, y1, x2, y2, "stroke-width": 2 * u });

function labels(found, over, under, u) {
  const { cut_width: wide, cut_height: high } = found.sized;
  const below = high + under + UNDER * u;
  const mine = yours(found);
  const rows = found.sides.map((_, row) => [`row-${row}`, { "aria-current": row === mine ? "true" : "false" }]);
  return {
    up: { x: wide / 2, y: -under - 9 * u, "font-size": 14 * u },
    wide: { x: wide / 2, y: high + under + 17 * u, "font-size": 14 * u },
    high: { x: -over - 6 * u, y: high / 2 + 5 * u, "font-size": 14 * u },
    card: { x: 0, y: below, width: CARD[0], height: CARD[1], rx: 3.18 },
    "card-name": { x: CARD[0] + 7 * u, y: below + CARD[1] / 2 + 4 * u, "font-size": 13 * u },
    ...Object.fromEntries(rows),
  };
}
