// The names cloth is sold by, judged by a measured count: webapp/cloth/naming.py in JavaScript, where the rules are written
// out. A standard is {count, low, high, weight, kinds}, per inch.

import { INCH, ends } from "./gauge.js";

const COARSEST = 4;
const FINEST = 80;

/** What a frame and dyeing make of a count. */
export const STRETCHED = 12 / 14;
/** What dyeing makes of it at the least. */
export const SHRUNK_LEAST = 34 / 32;
/** What dyeing makes of it at the most. */
export const SHRUNK = 35 / 32;

/** Give the standard normal distribution function to 1e-7. */
export function normal(z) {
  const t = 1 / (1 + 0.2316419 * Math.abs(z));
  const series = 0.319381530 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429)));
  const tail = (Math.exp((-z * z) / 2) / 2.5066282746310002) * t * series;
  return z < 0 ? tail : 1 - tail;
}

/** Tell how far, per inch, a count lies from the range a name stands for; 0 within. */
export const distance = (count, standard) => Math.max(standard.low - count, count - standard.high, 0);

/** Tell whether a count is "coarser" or "finer" than any such cloth, stretched or shrunk, could be; or "". */
export function beyond(measured, standards) {
  if (measured.high < Math.min(...standards.map((s) => s.low)) * STRETCHED) return "coarser";
  return measured.low > Math.max(...standards.map((s) => s.high)) * SHRUNK ? "finer" : "";
}

function cell(standard, standards) {
  const counts = standards.map((s) => s.count);
  const below = counts.filter((c) => c < standard.count);
  const above = counts.filter((c) => c > standard.count);
  const left = below.length ? (standard.count - Math.max(...below)) / 2 : null;
  const right = above.length ? (Math.min(...above) - standard.count) / 2 : null;
  return [standard.count - (left || right || 1), standard.count + (right || left || 1)];
}

/** Judge every standard by a measured count. */
export function judge(measured, standards, noneWeight) {
  const u = (measured.uncertainty * measured.factor) / 1.96;
  const masses = standards.map((s) => mass(measured.middle, u, s));
  const none = noneWeight / (measured.middle * Math.log(FINEST / COARSEST));
  const total = masses.reduce((sum, one) => sum + one, 0) + none;
  const names = standards.map((s, i) => ({
    count: s.count,
    off: distance(measured.middle, s) / measured.uncertainty,
    verdict: verdict(measured, s),
    likelihood: masses[i] / total,
  }));
  return { names, none: none / total, sure: sureOf(measured, names, standards) };
}

const VERDICTS = ["could be", "unlikely", "ruled out"];

/** Judge cloth of two counts, one each way: what holds of either way holds; none of them is sure. */
export function either(one, other) {
  const names = one.names.map((a, i) => {
    const b = other.names[i];
    const verdict = VERDICTS[Math.min(VERDICTS.indexOf(a.verdict), VERDICTS.indexOf(b.verdict))];
    return { count: a.count, off: Math.min(a.off, b.off), verdict, likelihood: (a.likelihood + b.likelihood) / 2 };
  });
  return { names, none: (one.none + other.none) / 2, sure: null };
}

function mass(count, u, standard) {
  const inside = normal((standard.high - count) / u) - normal((standard.low - count) / u);
  return (standard.weight * Math.max(0, inside)) / (standard.high - standard.low);
}

function verdict(measured, standard) {
  const off = distance(measured.middle, standard) / measured.uncertainty;
  if (off <= measured.factor) return "could be";
  return off <= measured.sure_factor ? "unlikely" : "ruled out";
}

function sureOf(measured, names, standards) {
  const left = standards.filter((_, i) => names[i].verdict !== "ruled out");
  if (left.length !== 1 || distance(measured.middle, left[0]) > measured.factor * measured.uncertainty) return null;
  const [low, high] = cell(left[0], standards);
  return low < measured.surely_low && measured.surely_high < high ? left[0].count : null;
}

/** Name the likeliest of the standards it could be, or null. */
export function likeliest(judged) {
  const fits = judged.names.filter((name) => name.verdict === "could be");
  return fits.length ? fits.reduce((best, name) => (name.likelihood > best.likelihood ? name : best)).count : null;
}

/** Give the length, mm, at which a reading taken like this one would settle the name; null if it is sure or has none. */
export function settlingLength(reading, judged, standards) {
  const name = likeliest(judged);
  if (judged.sure !== null || name === null) return null;
  const likely = standards.find((s) => s.count === name);
  const left = standards.filter((s, i) => judged.names[i].verdict !== "ruled out" && s !== likely);
  const [low, high] = cell(likely, standards);
  const room = left.length ? Math.min(...left.map((s) => distance(name, s))) : Math.min(name - low, high - name);
  const [variance, leftOut] = ends([reading]);
  const part = Math.sqrt(variance) * INCH;
  const tape = (reading.division / 2) * name;
  return ((3.291 + 1.960) * Math.sqrt(part * part + (2 / 3) * tape * tape) + leftOut * INCH) / room;
}
