// The threads of a slip as text: webapp/cloth/slip_threads.py in JavaScript, where the text is described. A thread is
// {symbol, parts: [{thread, kind, strands, instead}], full, half, quarter, three_quarter, back, knots, beads}.

const KINDS = {
  cotton: "c", "hand-dyed": "h", silk: "s", wool: "w", satin: "r", metallic: "m", filament: "f", beads: "b",
};
const REST = { half: "h", quarter: "q", three_quarter: "t", back: "b", knots: "k", beads: "d" };
const [LINES, PARTS, STRANDS, SYMBOL, NAME, STITCHES] = [500, 6, 24, 12, 100, 10_000_000];
const PART = /^([1-9][0-9]?)([chswrmfb])(.*)$/;
const COUNTS = new RegExp(`^([0-9]{1,8})${Object.values(REST).map((letter) => `(?:${letter}([0-9]{1,8}))?`).join("")}$`);

/** The text of no threads. */
export class Unsound extends Error {}

/** Name the thread that is really used. */
export const used = ({ thread, instead }) => instead || thread;

/** Write threads in their order; nothing where there are none. */
export function write(threads) {
  return threads.length ? [threads.length, ...threads.flatMap(fields)].join("~") : "";
}

/** Read threads, or throw Unsound; nothing where there is nothing. */
export function read(text) {
  if (!text) return [];
  const [threads, rest] = begin(`${text}~`);
  if (rest) throw new Unsound();
  return threads;
}

/** Read threads that came along from a slip; null where they cannot be read. */
export function brought(text) {
  try {
    return read(text);
  } catch (error) {
    if (!(error instanceof Unsound)) throw error;
    return null;
  }
}

/** Read threads off the beginning of a text: [threads, what comes after the "~" behind them]. */
export function begin(text) {
  const [number, ...rest] = text.split("~");
  if (!/^[1-9][0-9]{0,2}$/.test(number) || Number(number) > LINES) throw new Unsound();
  const end = 3 * Number(number);
  if (rest.length <= end) throw new Unsound();
  const threads = Array.from({ length: Number(number) }, (_, line) => thread(...rest.slice(3 * line, 3 * line + 3)));
  return [threads, rest.slice(end).join("~")];
}

function fields({ symbol, parts, full, ...counts }) {
  const needle = parts.map(({ thread: name, kind, strands, instead }) => (
    `${strands}${KINDS[kind]}${shut(name)}${instead ? `_i${shut(instead)}` : ""}`
  ));
  const rest = Object.entries(REST).map(([name, letter]) => (counts[name] ? `${letter}${counts[name]}` : ""));
  return [shut(symbol), needle.join("_n"), `${full}${rest.join("")}`];
}

function thread(symbol, needle, counts) {
  const found = COUNTS.exec(counts);
  const parts = needle.split("_n").map(part);
  if (!found || parts.length > PARTS || parts.reduce((sum, { strands }) => sum + strands, 0) > STRANDS) throw new Unsound();
  const [full, ...rest] = found.slice(1).map((many) => Number(many ?? 0));
  if (Math.max(full, ...rest) > STITCHES) throw new Unsound();
  const counted = Object.fromEntries(Object.keys(REST).map((name, at) => [name, rest[at]]));
  return { symbol: symbol ? named(symbol, SYMBOL) : "", parts, full, ...counted };
}

function part(text) {
  const found = PART.exec(text);
  if (!found) throw new Unsound();
  const [, strands, letter, names] = found;
  const [name, ...instead] = names.split("_i");
  if (instead.length > 1) throw new Unsound();
  const kind = Object.keys(KINDS).find((one) => KINDS[one] === letter);
  return { thread: named(name, NAME), kind, strands: Number(strands), instead: instead.length ? named(instead[0], NAME) : "" };
}

const shut = (text) => text.replaceAll("_", "_u").replaceAll("~", "_t");

/** Read a name or symbol back; it can be seen, stays on one line, and is not too long. */
function named(text, longest) {
  if (/_(?![ut])/.test(text)) throw new Unsound();
  const name = text.replaceAll("_t", "~").replaceAll("_u", "_");
  const isPlain = !/[\p{Cc}\p{Cs}\p{Zl}\p{Zp}]/u.test(name) && /[\p{L}\p{M}\p{N}\p{P}\p{S}]/u.test(name);
  if (!isPlain || [...name].length > longest) throw new Unsound();
  return name;
}
