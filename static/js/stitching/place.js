// Where on the chart the needle is: columns, ten-lines, edges. Pure; webapp/stitching/place.py is its twin, and
// shared/vectors/place.json binds the two. A line lies between two columns, counted from the chart's left edge.

const TENS_IN_SIGHT = 30;
const within = (n, low, high) => Math.min(Math.max(n, low), high);
const modulo = (n, by) => ((n % by) + by) % by;

/** Tell how far `moved` cells from `start` lead: the line, the cells of this ten behind it, those to the edge. */
function reach(width, start, moved) {
  if (start.way === "left") {
    const line = start.column - moved;
    return { line, gone: modulo(-line, 10), edge: line };
  }
  const line = start.column - 1 + moved;
  return { line, gone: modulo(line, 10), edge: width - line };
}

/** At a ten-line the ten behind is the one in hand; before the first stitch none is. */
const inHand = (at, moved) => at.gone || (moved ? 10 : 0);

function legs(at, moved) {
  const to = inHand(at, moved);
  const from = Math.max(0, to - moved);
  return [0, 5].map((leg) => [from, to].map((n) => within(n - leg, 0, 5)));
}

function band(width, start, moved) {
  const at = reach(width, start, moved);
  const left = start.way === "left";
  const gone = inHand(at, moved);
  const first = start.column - (left ? 0 : 1);
  const reached = at.line + (left ? gone : -gone);
  const whole = moved < gone ? [first, first] : [Math.min(first, reached), Math.max(first, reached)];
  const tens = Math.ceil(width / 10);
  const sight = Math.ceil(tens / Math.ceil(tens / TENS_IN_SIGHT)) * 10;
  const ten = reached - (left ? 10 : 0);
  const low = Math.floor(within(ten, 0, width - 1) / sight) * sight;
  const high = Math.min(width, low + sight);
  return { low, high, from: within(whole[0], low, high), to: within(whole[1], low, high), ten };
}

/** Give the cells of a block across and down: ten by ten, fewer at the right and lower edge. */
export function blockSize(plan, [across, down]) {
  return [Math.min(10, plan.width - 10 * (across - 1)), Math.min(10, plan.height - 10 * (down - 1))];
}

function side(plan, row) {
  if (plan.direction === "bottom") return "from the bottom";
  const off = plan.direction === "middle" ? row - plan.first_row : 0;
  return off ? `${Math.abs(off)} ${off > 0 ? "below" : "above"}` : "";
}

function label(count, of, at, moved) {
  if (of !== null && count >= of) return count > of ? `${count - of} over` : "Full";
  if (moved && !at.gone) return "At the ten-line";
  if (moved && !at.edge) return "At the edge";
  const ahead = 10 - at.gone;
  return at.edge > 0 && at.edge < ahead ? `${at.edge} to the edge` : `${ahead} to the ten-line`;
}

/** Tell everything the page shows of one row or block, from its raw sums; painting stops at 0. */
export function scene(plan, place, stitches, bare = 0, start = null) {
  const count = Math.max(0, stitches);
  const block = Array.isArray(place) && blockSize(plan, place);
  const width = block ? block[0] * block[1] : plan.width;
  const of = block ? width : plan.expected;
  const moved = block ? count : Math.max(0, count + bare);
  const from = block ? { column: 1, way: "right" } : start || { column: plan.start_column, way: plan.start_way };
  const at = reach(width, from, moved);
  const ahead = 10 - at.gone;
  return {
    count,
    of,
    left: Math.max(0, of === null ? at.edge : of - count),
    ahead: at.edge > 0 && at.edge < ahead ? at.edge : ahead,
    whole: moved > 0 && (!at.gone || !at.edge || count === of),
    legs: legs(at, moved),
    band: band(width, from, moved),
    label: label(count, of, at, moved),
    side: block ? block.join(" by ") : side(plan, place),
  };
}
