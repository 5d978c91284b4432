// The marks of a ruler on whole pixels, each rounded by itself so that nothing adds up, and what the ruler is worth.
// Pure: `perMm` is pixels a mm, `length` pixels.

import { INCH, perCent } from "./screen.js";

const DIVISIONS = { in: { step: INCH / 16, sizes: [16, 8, 4, 2], whole: 16 }, cm: { step: 1, sizes: [10, 5], whole: 10 } };

/** Give every mark on so many pixels: {at, size, label}; size 0 is the finest, label is empty but at whole ones. */
export function ticks(unit, perMm, length) {
  const { step, sizes, whole } = DIVISIONS[unit];
  const marks = [];
  for (let n = 0; ; n += 1) {
    const at = Math.round(n * step * perMm);
    if (at > length) return marks;
    const rank = sizes.findIndex((every) => n % every === 0);
    marks.push({ at, size: rank < 0 ? 0 : sizes.length - rank, label: rank === 0 ? String(n / whole) : "" });
  }
}

/** Give the error at 95 % of a length in mm on the ruler: the setting's, and half a pixel at either mark. */
export const errorOver = (mm, axis) => mm * axis.error + 1 / axis.perMm;

/** Say what the ruler is worth, over the whole inches or centimetres it holds. */
export function worth(unit, axis, length) {
  const one = unit === "in" ? INCH : 10;
  const wholes = Math.max(1, Math.floor(length / axis.perMm / one));
  const off = errorOver(wholes * one, axis);
  const most = unit === "in" ? `${Math.ceil((off / INCH) * 100 - 1e-9) / 100} in` : `${Math.ceil(off * 10 - 1e-9) / 10} mm`;
  return { share: `± ${perCent(axis.error)}`, over: `Over ${wholes} ${unit} it may be ${most} off, and seldom more.` };
}
