import { keep, kept } from "./device.js";

// What is known of the threads of a project's legend on this phone: which are in needles, which is in hand, what is
// parked where, and what is left of each.

export const MOST = 12; // needles
const METRE = 1000;
const YARD = 914.4;

const lineOf = (stitch, key) => stitch.plan.legend?.find((line) => line.key === key);
const name = (what, stitch) => `${what} ${stitch.project}`;

/** List the lines whose thread is in a needle: those she chose; where they are few, all of them. */
export function needles(stitch) {
  const legend = stitch.plan.legend || [];
  const chosen = kept(name("needles", stitch));
  if (!chosen) return legend.length > MOST ? [] : legend;
  return legend.filter(({ key }) => chosen.includes(key)).slice(0, MOST);
}

/** Choose whose thread is in a needle; what is in hand and no longer among them is put down. */
export function choose(stitch, keys) {
  keep(name("needles", stitch), keys);
  if (!needles(stitch).some(({ key }) => key === stitch.hand.thread)) putDown(stitch);
}

/** Give the line of the thread in hand, or undefined; taps are laid as its stitches. */
export const inHand = (stitch) => lineOf(stitch, stitch.hand.thread);

/** A map without a nature of its own: a thread may be called anything. */
const mapOf = (entries) => Object.assign(Object.create(null), Object.fromEntries(entries));
const everParked = (stitch) => Object.entries(kept(name("parked", stitch)) || {});

/** Tell where each parked needle waits: key → {place, column}; not at a place the plan no longer has. */
export const parked = (stitch) => mapOf(everParked(stitch).filter(([, { place }]) => isThere(stitch, place)));

function isThere({ plan, unit }, place) {
  if (Array.isArray(place) !== (unit === "block")) return false;
  const [across, down] = unit === "block" ? place.map((n) => 10 * n - 9) : [1, place];
  return across <= (plan.width || Infinity) && down <= (plan.height || Infinity);
}

/** Take a needle up; one that was parked leads back to its place. */
export function pickUp(stitch, key) {
  const { [key]: at } = parked(stitch);
  hold(stitch, { thread: key });
  if (!at) return stitch.repaint();
  keep(name("parked", stitch), mapOf(everParked(stitch).filter(([other]) => other !== key)));
  stitch.go(at.place);
}

/** Put down what is in hand. */
export const putDown = (stitch) => hold(stitch, {});

function hold(stitch, hand) {
  stitch.hand = hand;
  keep(name("hand", stitch), hand);
}

/** Park a needle where the next stitch would be; taps then are nobody's until another is picked up. */
export function park(stitch, key) {
  if (stitch.place === null) return;
  keep(name("parked", stitch), mapOf([...everParked(stitch), [key, { place: stitch.place, column: column(stitch) }]]));
  if (stitch.hand.thread === key) putDown(stitch);
  stitch.repaint();
}

/** The chart column of the next stitch; null in a block, which has no single way through it. */
function column(stitch) {
  if (stitch.unit === "block") return null;
  const { stitches, bare, start } = stitch.at();
  const { plan } = stitch;
  const { column: first, way } = start || { column: plan.start_column, way: plan.start_way };
  const moved = Math.max(0, stitches + bare);
  return Math.min(plan.width, Math.max(1, first + (way === "left" ? -moved : moved)));
}

/** Say shortly where a needle is parked. */
export const written = ({ place, column: at }) => [[place].flat().join(", "), at].filter((part) => part !== null).join(" · ");

/** Say it in words. */
export const inWords = (stitch, { place, column: at }) => `${stitch.name(place)}${at === null ? "" : `, column ${at}`}`;

/** How much of a line is laid, and on how many it was spent, of one pass. */
export function laid(stitch, key, pass = "cross") {
  const [stitches = 0, spent = 0] = stitch.view.threads?.[key]?.[pass] || [];
  return { stitches: Math.max(0, stitches), spent };
}

/** Give how many crosses of a line are still to be laid. */
export const left = (stitch, line) => Math.max(0, line.full - laid(stitch, line.key).stitches);

/** Write a length of thread in her unit. */
export function long(mm) {
  const unit = kept("thread unit") || "m"; // strip.js keeps what the page says
  const many = mm / (unit === "yd" ? YARD : METRE);
  return `${many < 10 ? many.toFixed(1) : Math.round(many)} ${unit}`;
}

/** Tell whether what is at hand of a thread no longer surely reaches to its last cross. */
export function isShort(stitch, line) {
  const { spent } = laid(stitch, line.key);
  return Boolean(line.lasts) && left(stitch, line) > Math.max(0, line.lasts[0] - spent);
}

/** Give black or white, whichever is read better on a colour (WCAG 2.2, relative luminance). */
export function inkOn(colour) {
  const linear = [1, 3, 5].map((at) => parseInt(colour.slice(at, at + 2), 16) / 255).map((c) => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4));
  const light = 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2];
  return (light + 0.05) ** 2 > 1.05 * 0.05 ? "#000" : "#fff";
}
