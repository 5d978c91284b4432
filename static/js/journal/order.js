/**
 * The order in which she goes through rows and blocks; the same as webapp/journal/order.py.
 * A side is one run of places: {across, down, downFirst}, each of the two a run of whole numbers [from, to, step].
 * A place is [across, down]; a row is [1, row].
 */

const HIGHEST_ROW = 10_000;
const HIGHEST_BLOCK = 1_000;
const BLOCK = 10;

const run = (from, to, step = 1) => ({ from, step, length: Math.max(0, (to - from) * step + 1) });
const at = (r, i) => r.from + i * r.step;
const indexIn = (r, value) => {
  const i = (value - r.from) * r.step;
  return i >= 0 && i < r.length ? i : -1;
};

/** List the sides of a project worked by rows, from its height, direction and first_row. */
export function rowSides(plan) {
  const height = plan.height || HIGHEST_ROW;
  const middle = plan.direction === "middle";
  const first = Math.min(plan.first_row || (middle ? Math.floor((height + 1) / 2) : 1), height);
  const before = middle ? run(first - 1, 1, -1) : run(1, first - 1);
  return [run(first, height), before].map((down) => ({ across: run(1, 1), down, downFirst: false }));
}

const blocks = (stitches) => (stitches ? Math.ceil(stitches / BLOCK) : HIGHEST_BLOCK);
const middleOf = (stitches, count) =>
  stitches ? Math.floor(Math.floor(stitches / 2) / BLOCK) + 1 : Math.floor(count / 2) + 1;

/** List the sides of a project worked by blocks, from its size, block_from and block_way. */
export function blockSides(plan) {
  const wide = blocks(plan.width);
  const high = blocks(plan.height);
  const start = plan.block_from || "top-left";
  const downFirst = plan.block_way === "down";
  if (start !== "middle") {
    const across = start.endsWith("right") ? run(wide, 1, -1) : run(1, wide);
    const down = start.startsWith("bottom") ? run(high, 1, -1) : run(1, high);
    return [{ across, down, downFirst }];
  }
  const [a, d] = [middleOf(plan.width, wide), middleOf(plan.height, high)];
  const [right, left, below, above] = [run(a, wide), run(a - 1, 1, -1), run(d, high), run(d - 1, 1, -1)];
  const quarters = [[right, below], [left, below], [left, above], [right, above]];
  return quarters.map(([across, down]) => ({ across, down, downFirst }));
}

const lengthOf = (side) => side.across.length * side.down.length;

function placeAt({ across, down, downFirst }, i) {
  const inner = downFirst ? down.length : across.length;
  const [outer, rest] = [Math.floor(i / inner), i % inner];
  return downFirst ? [at(across, outer), at(down, rest)] : [at(across, rest), at(down, outer)];
}

/** Tell how many places of a side come before one; -1 if it is not on that side. */
export function indexOn({ across, down, downFirst }, [a, d]) {
  const [i, j] = [indexIn(across, a), indexIn(down, d)];
  if (i < 0 || j < 0) return -1;
  return downFirst ? i * down.length + j : j * across.length + i;
}

function firstOpen(side, start, isDone) {
  for (let i = start; i < lengthOf(side); i++) {
    const place = placeAt(side, i);
    if (!isDone(place)) return place;
  }
  return null;
}

/** Find the next open place: further along the same side, else the first of all; null if all are done. */
export function nextOpen(sides, isDone, after) {
  const side = after && sides.find((s) => indexOn(s, after) >= 0);
  const found = side && firstOpen(side, indexOn(side, after) + 1, isDone);
  if (found) return found;
  for (const each of sides) {
    const first = firstOpen(each, 0, isDone);
    if (first) return first;
  }
  return null;
}
