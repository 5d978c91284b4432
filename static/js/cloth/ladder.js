// Fine lines to lay thin cloth on, and what the bands between the two say. Pure: counts per inch, lengths in mm but
// where pixels are named.
//
// Lines g an inch under cloth of c an inch show c - g bands an inch, so bands W wide say |c - g| = 25.4 / W; twisting
// the cloth only narrows them. Each edge of a line is rounded to a pixel by itself: that moves a band by no more than
// half a pixel in a pitch, at either end, and adds up nowhere. Grey edges would be truer on paper, but how bright a
// screen makes grey is not known.

import { INCH } from "./screen.js";

const LEAST = 6;
const MOST = 60;
const PITCH = 4; // pixels a line and its gap need to be told apart

/** Give the fewest and the most lines an inch that a screen can draw. */
export const reach = ({ perMm }) => [LEAST, Math.min(MOST, Math.floor((perMm * INCH) / PITCH))];

/** Bring a count within what the screen can draw, to a tenth. */
export function within(count, axis) {
  const [least, most] = reach(axis);
  return Math.min(most, Math.max(least, Math.round(count * 10) / 10));
}

/** Lay the lines on so many pixels: [[from, width]]. */
export function lines(count, { perMm }, length) {
  const pitch = (perMm * INCH) / count;
  const laid = [];
  for (let n = 0; Math.round(n * pitch) < length; n += 1) {
    const from = Math.round(n * pitch);
    laid.push([from, Math.min(length, Math.round((n + 0.5) * pitch)) - from]);
  }
  return laid;
}

/** Read the cloth's count where the widest bands are at least `band` wide: {low, high, bands, screen}, the last two per inch. */
export function reading(count, axis, band) {
  const pitch = (axis.perMm * INCH) / count;
  const bands = (INCH / band) * (1 + 1 / pitch);
  const screen = count * axis.error;
  return { low: Math.max(0, count - bands - screen), high: count + bands + screen, bands, screen };
}

const WIDTHS = { in: [0.5, 1, 1.5, 2, 3, 4, 6], cm: [1, 2.5, 4, 5, 8, 10, 15] };
const FRACTIONS = { 0.5: "1/2", 1.5: "1 1/2" };

/** List the widths of band to choose from on lines `whole` long: [[mm, words]], the whole length last. */
export function widths(unit, whole) {
  const one = unit === "in" ? INCH : 10;
  const most = Math.floor((whole / one) * 10) / 10;
  const shorter = WIDTHS[unit].filter((width) => width < most);
  const words = (width) => `${FRACTIONS[width] ?? width} ${unit}`;
  return [...shorter.map((width) => [width * one, words(width)]), [whole, `all ${most} ${unit}`]];
}

const down = (value) => Math.floor(value * 10 + 1e-9) / 10;
const up = (value) => Math.ceil(value * 10 - 1e-9) / 10;

/** Write a reading in words, its ends rounded outward: {interval, metric, made, error}. */
export function inWords({ low, high, bands, screen }) {
  const per10cm = 100 / INCH;
  return {
    error: String(Math.ceil((bands + screen) * 100 - 1e-9) / 100),
    interval: `${down(low)} to ${up(high)}`,
    metric: `${Math.floor(low * per10cm + 1e-9)} to ${Math.ceil(high * per10cm - 1e-9)}`,
    made: `± ${up(bands)} from the bands, ± ${Math.ceil(screen * 100 - 1e-9) / 100} from this screen.`,
  };
}
