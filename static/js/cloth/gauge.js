// How many squares or threads an inch holds, and how far that may be off: webapp/cloth/gauge.py in JavaScript, where
// the model (JCGM 100) is written out. A reading is {counted, length, division, pins, way}; lengths in mm, counts per inch.

export const INCH = 25.4;
const PIN = 0.125;
const WHOLE_ONLY = 0.25;
const NOISE = 1e-9;

// Student's t, two-sided, at 95 % and 99.9 %, by degrees of freedom.
const STUDENT = [
  [1, 12.706, 636.62], [2, 4.303, 31.599], [3, 3.182, 12.924], [4, 2.776, 8.610], [5, 2.571, 6.869], [6, 2.447, 5.959],
  [7, 2.365, 5.408], [8, 2.306, 5.041], [9, 2.262, 4.781], [10, 2.228, 4.587], [15, 2.131, 4.073], [20, 2.086, 3.850],
  [30, 2.042, 3.646], [50, 2.009, 3.496], [100, 1.984, 3.390], [Infinity, 1.960, 3.291],
];

const sum = (numbers) => numbers.reduce((total, number) => total + number, 0);

/** Give the half-width, in squares, of the part of a square unknown at either end. */
function endPart(reading) {
  if (reading.pins) return PIN;
  return reading.counted % 1 === 0 ? 0.5 : 0.25;
}

/** Give the variance of a sum of readings with two unsure ends each: one end independent, one common to all. */
function bothEnds(halfWidths) {
  const total = sum(halfWidths);
  return (total * total + sum(halfWidths.map((a) => a * a))) / 3;
}

/** Give the variance of the squares counted, from the parts at the ends, and how many are short in the mean. */
export function ends(readings) {
  const rounded = bothEnds(readings.map(endPart));
  if (readings.some((r) => r.pins || r.counted % 1 !== 0)) return [rounded, 0];
  const half = readings.length / 2;
  const leftOut = (WHOLE_ONLY * half * half) / 3 + WHOLE_ONLY * (1 - WHOLE_ONLY) * half * half;
  return [(1 - WHOLE_ONLY) * rounded + leftOut, WHOLE_ONLY * half];
}

/** Give the factors for 95 % and 99.9 % at so many degrees of freedom, rounded down; null is endless. */
export function student(freedom) {
  const degrees = Math.max(1, freedom ?? Infinity);
  const [, factor, sure] = STUDENT.filter((row) => row[0] <= degrees).at(-1);
  return [factor, sure];
}

/** Combine independent [uncertainty, degrees of freedom or null] into one. */
export function combine(parts) {
  const variance = sum(parts.map(([u]) => u * u));
  const limited = sum(parts.filter((part) => part[1] !== null).map(([u, freedom]) => (u * u * u * u) / freedom));
  return [Math.sqrt(variance), limited > 0 ? (variance * variance) / limited : null];
}

/** Give the standard uncertainty of the mean of several places from the scatter of their counts; 0 for one place. */
function spreadOf(readings) {
  const places = readings.length;
  if (places < 2) return 0;
  const total = sum(readings.map((r) => r.length));
  const count = (sum(readings.map((r) => r.counted)) / total) * INCH;
  const seen = sum(readings.map((r) => {
    const off = (((r.counted / r.length) * INCH - count) * r.length) / total;
    return off * off;
  }));
  return Math.sqrt((seen * places) / (places - 1));
}

/** Give the spread of either way of the cloth, by its share of the length, with its degrees of freedom. */
function spreads(readings, total) {
  const count = (sum(readings.map((r) => r.counted)) / total) * INCH;
  return ["along", "across"].map((way) => {
    const same = readings.filter((r) => r.way === way);
    return [spreadOf(same) * (sum(same.map((r) => r.length)) / total), same.length - 1];
  }).filter(([u]) => u > NOISE * count);
}

/** Give the count per inch of one or several readings of the same cloth, with its error; the intervals lie about middle. */
export function measure(readings) {
  const total = sum(readings.map((r) => r.length));
  const count = (sum(readings.map((r) => r.counted)) / total) * INCH;
  const [variance, leftOut] = ends(readings);
  const [part, short] = [(Math.sqrt(variance) * INCH) / total, (leftOut * INCH) / total];
  const tape = (Math.sqrt(bothEnds(readings.map((r) => r.division / 2))) * count) / total;
  const uneven = spreads(readings, total);
  const [u, freedom] = combine([[part, null], [tape, null], ...uneven]);
  const [spread] = combine(uneven);
  const [factor, sure] = student(freedom);
  const middle = count + short;
  return {
    count, uncertainty: u, part, tape, spread, short, middle, freedom, factor, sure_factor: sure,
    low: middle - factor * u, high: middle + factor * u, surely_low: middle - sure * u, surely_high: middle + sure * u,
    length: Math.max(...readings.map((r) => r.length)), places: readings.length,
  };
}
