/**
 * What an entry is part of; the same as webapp/journal/keys.py.
 * @typedef {Object<string, any>} Entry
 */

/** Name the entry's place: "37" for a row, "3.2" for a block, "" where it was left out. */
export const placeOf = (entry) => (entry.block != null ? entry.block.join(".") : entry.row == null ? "" : String(entry.row));

/** Name the sum the entry is part of, as "cross 37"; null if of none. */
export const tally = (entry) =>
  ["stitches", "bare", "done", "start"].includes(entry.kind) ? `${entry.pass || "cross"} ${placeOf(entry)}` : null;

/** Name the thing of which only the latest holds, and what the entry says of it; null if of none. */
export function register(entry) {
  switch (entry.kind) {
    case "done":
      return [`done ${tally(entry)}`, entry.done];
    case "start":
      return [`start ${entry.row}`, { column: entry.column, way: entry.way }];
    case "have":
      return [`have ${entry.thread}`, entry.have];
    default:
      return entry.kind === "end" && entry.note != null ? ["note", entry.note] : null;
  }
}

/** Name what an undo cancels, as "undone entry …" or "undone act …"; null for other entries. */
export function undoes(entry) {
  if (entry.kind !== "undo") return null;
  return entry.entry == null ? `undone act ${entry.act}` : `undone entry ${entry.entry}`;
}

/** Tell whether the entry says at which "row" or "block" her hand is; null if neither. */
export function hand(entry) {
  if (!["stitches", "bare", "done"].includes(entry.kind) || (entry.pass || "cross") !== "cross") return null;
  return entry.block != null ? "block" : "row";
}

/** Tell whether [at, id, …] `a` comes after `b`: the later, and of two at once the greater id. */
export const isAfter = (a, b) => (a[0] === b[0] ? a[1] > b[1] : a[0] > b[0]);
