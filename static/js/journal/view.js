/** The view: what is shown, drawn out of the sums and what holds; the second half of the fold. */
import { isAfter } from "./keys.js";
import { blockSides, nextOpen, rowSides } from "./order.js";

/** Draw the numbers; the same as `view` in webapp/journal/fold.py. */
export function view(plan, revision, sums, latest, { threads, hands, frames, sittings }) {
  const { passes: { cross, ...passes }, rows, blocks } = byPass(sums, latest);
  const [row, block] = inHand(plan, hands, rows, blocks);
  const doneOf = (places) => Object.values(places).filter((p) => p.done).length;
  const at = (places, key) => (places[key] || { stitches: 0 }).stitches;
  const named = (prefix) =>
    Object.fromEntries(Object.keys(latest).filter((k) => k.startsWith(prefix)).map((k) => [k.slice(prefix.length), latest[k][2]]));
  return {
    revision, row, row_stitches: row && at(rows, row), block, block_stitches: block && at(blocks, block.join(".")),
    stitches: cross ? cross.stitches : 0, rows_done: doneOf(rows), blocks_done: doneOf(blocks), rows, blocks, passes, threads,
    starts: named("start "), bares: bareIn(sums), frame: frameOf(frames), sitting: openSitting(sittings), have: named("have "),
    note: latest.note ? { text: latest.note[2], at: latest.note[0] } : null,
  };
}

function byPass(sums, latest) {
  const [passes, rows, blocks] = [{}, {}, {}];
  for (const [key, [stitches]] of Object.entries(sums)) {
    const [name, place] = key.split(" ");
    const one = (passes[name] ||= { stitches: 0, done: false });
    one.stitches += stitches;
    const done = Boolean((latest[`done ${key}`] || [])[2]);
    if (place === "") one.done = done;
    else if (name === "cross") (place.includes(".") ? blocks : rows)[place] = { stitches, done };
  }
  return { passes, rows, blocks };
}

function bareIn(sums) {
  const crosses = Object.entries(sums).filter(([key, total]) => total[1] && key.startsWith("cross "));
  return Object.fromEntries(crosses.map(([key, total]) => [key.slice(6), total[1]]));
}

function inHand(plan, hands, rows, blocks) {
  const row = place(hands.row && [1, hands.row[2]], rowSides(plan), (p) => rows[p[1]]?.done);
  const block = place(hands.block && hands.block[2], blockSides(plan), (p) => blocks[p.join(".")]?.done);
  return [row && row[1], block];
}

const place = (latest, sides, isDone) => (latest && !isDone(latest) ? latest : nextOpen(sides, isDone, latest));

function frameOf(frames) {
  const sorted = [...frames].sort((a, b) => (isAfter(a, b) ? 1 : -1));
  const last = sorted.at(-1);
  if (!last) return null;
  const isOff = (f) => f[2] === "off";
  const before = sorted.findLastIndex((f) => isOff(f) !== isOff(last));
  return { state: last[2], since: sorted[before + 1][0] };
}

function openSitting(sittings) {
  let latest = null;
  for (const [id, [begin, closers]] of Object.entries(sittings)) {
    if (begin !== null && closers === 0 && (!latest || isAfter([begin, id], latest))) latest = [begin, id];
  }
  return latest && { id: latest[1], begin: latest[0] };
}
