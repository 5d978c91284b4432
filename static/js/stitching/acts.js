import { feel } from "./device.js";

// What her buttons lay, other than taps; fetched when the first of them is wanted.
const OLDER = "What is older can be taken back once this is sent.";
const TAKEN_BACK = ["stitches", "bare", "done", "start"];

/** Lay what is left of the row or block, and close it. */
export function finish(stitch) {
  const { left } = stitch.shown();
  const where = stitch.where();
  const sitting = stitch.sitDown();
  feel("end");
  if (sitting.length) stitch.tell(stitch.lay(sitting));
  const rest = left ? [{ kind: "stitches", ...where, by: left }] : [];
  return stitch.act([...rest, { kind: "done", ...where, done: true }]);
}

/** Close what is exactly full; what is short or over is questioned first. */
export function done(stitch) {
  if (stitch.place === null) return stitch.open("passes");
  const { count, of } = stitch.shown();
  const closed = stitch.at().done;
  if (!closed && stitch.unit === "block" && count <= of) return finish(stitch);
  if (!closed && of !== null && count !== of) return stitch.open("close");
  feel("end");
  return stitch.lay([{ kind: "done", ...stitch.where(), done: !closed }], !closed);
}

/** Take one stitch out. */
export function back(stitch) {
  if (stitch.place === null || !stitch.shown().count) return;
  feel("undo");
  const where = stitch.where();
  const taken = { kind: "stitches", ...where, by: -1, why: "unpicked" };
  // A closed row that loses a stitch is open again, never short unsaid.
  if (stitch.at().done) stitch.act([{ kind: "done", ...where, done: false }, taken], false);
  else stitch.lay([taken]);
}

/** Take back the last act. */
export function undo(stitch) {
  const last = stitch.phone.last(stitch.project).findLast((entry) => TAKEN_BACK.includes(entry.kind));
  if (!last) return stitch.say(stitch.phone.waiting() ? OLDER : "Nothing is left here to take back.");
  feel("undo");
  return stitch.lay([{ kind: "undo", ...(last.act ? { act: last.act } : { entry: last.id }) }], true);
}

