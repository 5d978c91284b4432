// A slip as text that travels in a link or a code: webapp/cloth/slip_text.py in JavaScript, where the text is described.
// A slip is {title, width, height, count, across, over, finish, held, frays, own, unit, error, threads}; what is not known is null.

import { counted, edged, stitched } from "./bounds.js";
import { Unsound, begin, write as writeThreads } from "./slip_threads.js";

const FINISHES = { framed: "f", usual: "u", small: "s", ornament: "o" };
const HELD = { hoop: "h", clamps: "c", scroll: "s", stretched: "t", hand: "n" };
const LONGEST = 60;
const MOST_CODED = 1400;
const FOREIGN = "That is no slip of ours. Scan the code again, or ask for the link again.";
/** What is said of a text that was damaged. */
export const DAMAGED = "This slip was damaged on the way. Scan the code again, or ask for the whole link.";
const NEWER = "This slip is of a newer kind than can be read here. Open it where it was made.";
const NUMBER = "([0-9]{1,4}(?:\\.[0-9]{1,3})?)";
const SHAPE = new RegExp(
  `^([0-9]{1,5})~([0-9]{1,5})~${NUMBER}~${NUMBER}?~([12])~([fuso])([hcstn])([yn])~${NUMBER}?~([ic])~${NUMBER}?~(.*)$`,
);

/** No slip can be made of that text; the message is the sentence to show. */
export class Unreadable extends Error {}

/** Tell what is wrong with a title, or null; it may be empty. */
export function fault(title) {
  if (/[\p{Cc}\p{Cs}\p{Zl}\p{Zp}]/u.test(title)) return "Keep the name to one line, without tabs or control characters.";
  const { length } = [...title];
  if (length > LONGEST) return `Shorten the name: it has ${length} characters, and ${LONGEST} fit.`;
  return title && !/[\p{L}\p{M}\p{N}\p{P}\p{S}]/u.test(title) ? "Give a name that can be seen, or none." : null;
}

/** Write a slip, its figures to a thousandth. */
export function write(slip) {
  const ways = FINISHES[slip.finish] + HELD[slip.held] + (slip.frays ? "y" : "n");
  const threads = slip.threads.length ? [writeThreads(slip.threads)] : [];
  const body = [
    slip.width, slip.height, number(slip.count), number(slip.across), slip.over,
    ways, number(slip.own), slip.unit[0], number(slip.error), ...threads, slip.title,
  ].join("~");
  return `${threads.length ? 2 : 1}~${check(body)}~${body}`;
}

/** Write a slip as its code carries it: without its threads where they are too many for one. */
export function coded(slip) {
  const text = write(slip);
  return weight(text) <= MOST_CODED ? text : write({ ...slip, threads: [] });
}

/** Count the bytes that a text has in an address: a letter or figure is one, of any other each byte three. */
export function weight(text) {
  const { length } = new TextEncoder().encode(text);
  const plain = text.match(/[A-Za-z0-9_.~ -]/g)?.length ?? 0;
  return plain + 3 * (length - plain);
}

/** Read a slip, or throw Unreadable. */
export function read(text) {
  const [version, sum = "", ...rest] = text.split("~");
  const body = rest.join("~");
  if (!/^[1-9][0-9]{0,2} [0-9a-f]{4}$/.test(`${version} ${sum}`)) throw new Unreadable(FOREIGN);
  if (!["1", "2"].includes(version)) throw new Unreadable(NEWER);
  const found = SHAPE.exec(body);
  if (sum !== check(body) || !found) throw new Unreadable(DAMAGED);
  return sound(version === "2" ? withThreads(made(found)) : made(found));
}

/** Part what stands before the title from the title. */
function withThreads(slip) {
  try {
    const [threads, title] = begin(slip.title);
    return { ...slip, threads, title };
  } catch (error) {
    if (!(error instanceof Unsound)) throw error;
    throw new Unreadable(DAMAGED);
  }
}

function made([, width, height, count, across, over, finish, held, frays, own, unit, error, title]) {
  return {
    width: Number(width), height: Number(height), count: Number(count), across: orNull(across), over: Number(over),
    finish: named(FINISHES, finish), held: named(HELD, held), frays: frays === "y",
    own: orNull(own), unit: unit === "i" ? "in" : "cm", error: orNull(error), title,
    threads: [],
  };
}

/** Let a slip through whose figures can be. */
function sound(slip) {
  try {
    stitched(slip.width, slip.height);
    counted(slip.count);
    counted(slip.across ?? slip.count);
    edged(slip.own ?? 0);
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    throw new Unreadable(DAMAGED);
  }
  if (fault(slip.title) || (slip.error ?? 0) > slip.count / 4 || slip.count < slip.over) throw new Unreadable(DAMAGED);
  return slip;
}

/** CRC-16, polynomial 0x1021, from 0. */
function check(body) {
  let sum = 0;
  for (const byte of new TextEncoder().encode(body)) {
    sum ^= byte << 8;
    for (let bit = 0; bit < 8; bit++) sum = sum & 0x8000 ? ((sum << 1) ^ 0x1021) & 0xffff : sum << 1;
  }
  return sum.toString(16).padStart(4, "0");
}

const named = (letters, letter) => Object.keys(letters).find((name) => letters[name] === letter);
const number = (value) => (value === null ? "" : String(Math.floor(value * 1000 + 0.5) / 1000));
const orNull = (text) => (text === undefined ? null : Number(text));
