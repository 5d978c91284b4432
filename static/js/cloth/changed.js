// What other cloth may have come to the very count that was measured: webapp/cloth/changed.py in JavaScript, where the
// reports it rests on are named. A change is {count, how, figure}.

import { INCH } from "./gauge.js";
import { SHRUNK, SHRUNK_LEAST, STRETCHED } from "./naming.js";

const USUAL = 1;
const MOST = 3;
const AN = [8, 11, 18];

/** List what usual cloth may have become the measured one, within its 95 % interval. */
export function changed(measured, judged, standards) {
  const fits = standards.filter((_, i) => judged.names[i].verdict === "could be");
  if (fits.length > 1 || fits.some((s) => s.weight >= USUAL)) return [];
  return standards.filter((s) => s.weight >= USUAL).map((s) => become(measured, s)).filter(Boolean);
}

function become({ low, high }, { count, low: least, high: most, also }) {
  const within = (from, to) => from <= high && low <= to;
  const figure = also.find((per10cm) => within(((per10cm - 0.5) * INCH) / 100, ((per10cm + 0.5) * INCH) / 100));
  if (figure !== undefined) return { count, how: "sold", figure };
  if (within(least * SHRUNK_LEAST, most * SHRUNK)) return { count, how: "shrunk", figure: null };
  return within(least * STRETCHED, most * STRETCHED) ? { count, how: "stretched", figure: null } : null;
}

/** Say what it may have been, beside the name it has or where it has none. */
export function changedInWords(found, named) {
  if (!found.length || found.length > MOST) return named ? "" : "Shrunk in dyeing, stretched on a frame, or sold so.";
  const each = found.map(one);
  return named ? `Or ${each.join(", or ")}.` : `Perhaps ${each.join(", ")}, or sold so.`;
}

function one({ count, how, figure }) {
  const cloth = `${AN.includes(count) ? "an" : "a"} ${count}`;
  if (how === "sold") return `${cloth} (${figure} per 10 cm is sold as ${count})`;
  return `${cloth} ${how === "shrunk" ? "that shrank in dyeing" : "stretched on a frame"}`;
}
