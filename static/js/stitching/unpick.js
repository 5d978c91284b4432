import { blockSides, indexOn, rowSides } from "../journal/order.js";

/** List the places worked after one, as she goes, farthest first; on the other side of the middle none is after. */
export function after({ unit, plan, view }, place) {
  const rows = unit === "row";
  const address = (key) => (rows ? [1, Number(key)] : key.split(".").map(Number));
  const here = rows ? [1, place] : place;
  const side = (rows ? rowSides(plan) : blockSides(plan)).find((one) => indexOn(one, here) >= 0);
  const from = side ? indexOn(side, here) : Infinity;
  return Object.entries(rows ? view.rows : view.blocks)
    .map(([key, { stitches, done }]) => ({ index: side ? indexOn(side, address(key)) : -1, key, stitches, done }))
    .filter(({ index, stitches, done }) => index > from && (stitches > 0 || done))
    .sort((a, b) => b.index - a.index)
    .map(({ key, stitches, done }) => ({ place: rows ? Number(key) : address(key), stitches, done }));
}

/**
 * Take out, as one act, all that was laid at `places`; the last of them comes in hand. Whose thread it
 * was is not said: places hold many, and what is in hand may be none of them.
 */
export function unpick(stitch, places) {
  const drafts = places.flatMap(({ place, stitches, done }) => [
    ...(done ? [{ kind: "done", ...stitch.where(place), done: false }] : []),
    ...(stitches > 0 ? [{ kind: "stitches", ...stitch.where(place), by: -stitches, why: "unpicked" }] : []),
  ]);
  return stitch.act(drafts);
}
