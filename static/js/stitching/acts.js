import { FORTNIGHT } from "../journal/house.js";
import { feel } from "./device.js";

// What her buttons lay, other than taps; fetched with her first touch, or when the first of them is wanted.
const TAKEN_BACK = ["stitches", "bare", "done", "start"];
const PASSES = { part: "part stitches", back: "backstitch", knot: "knots and beads" };
const AT_REST = 2000; // ms without a tap: the thumb that closed the last row has stopped
const ECHO = 300; // ms: what comes down again so soon is the same touch; else it would close the next place unseen

let owed = 0; // presses of Undo that wait until the house shows what lies further back
let ended = -Infinity; // when the last place was closed here, or tapped after that
let pressed = -Infinity; // when a whole place was last pressed for

function isEcho(at) {
  const before = pressed;
  pressed = at;
  return at - before < ECHO;
}

/** Lay what is left of the row or block, and close it; `at` is when she pressed for it. */
export const finish = (stitch, at) => !isEcho(at) && fill(stitch);

function fill(stitch) {
  const { left } = stitch.shown();
  const where = stitch.where();
  const sitting = stitch.sitDown();
  feel("end");
  if (sitting.length) stitch.tell(stitch.lay(sitting));
  const rest = left ? [{ kind: "stitches", ...where, ...stitch.hand, by: left }] : [];
  return closed(stitch, stitch.act([...rest, { kind: "done", ...where, done: true }]));
}

/** Close what is exactly full; what is short or over is questioned first. */
export function done(stitch, at) {
  if (isEcho(at)) return null;
  if (stitch.place === null) return over(stitch, at);
  const { count, of } = stitch.shown();
  if (stitch.at().done) {
    feel("end");
    return stitch.lay([{ kind: "done", ...stitch.where(), done: false }]);
  }
  if (stitch.unit === "block" && count <= of) return fill(stitch);
  return of !== null && count !== of ? stitch.open("close") : close(stitch);
}

/** Close the row or block as it is. */
export function close(stitch) {
  feel("end");
  return closed(stitch, stitch.lay([{ kind: "done", ...stitch.where(), done: true }], true));
}

async function closed(stitch, laying) {
  if ((await laying) && stitch.place === null) say(stitch);
}

/** A tap where every place is done: the passes come next, but not under a thumb that still taps. */
export function over(stitch, at) {
  if (at - ended < AT_REST) say(stitch, at);
  else stitch.open("passes");
}

function say(stitch, at = performance.now()) {
  ended = at;
  const said = `Every ${stitch.unit} is done.`;
  if (stitch.view.sitting) stitch.say(said, "End sitting", () => stitch.open("sitting"));
  else stitch.say(said);
}

/** Take one stitch out. */
export function back(stitch) {
  if (stitch.place === null || !stitch.shown().count) return;
  feel("undo");
  const where = stitch.where();
  const taken = { kind: "stitches", ...where, ...stitch.hand, by: -1, why: "unpicked" };
  // A closed row that loses a stitch is open again, never short unsaid.
  if (stitch.at().done) stitch.act([{ kind: "done", ...where, done: false }, taken], false);
  else stitch.lay([taken]);
}

/** Take back the last act. */
export function undo(stitch) {
  const acts = stitch.phone.last(stitch.project).filter((entry) => TAKEN_BACK.includes(entry.kind));
  const last = acts.at(-1);
  if (!last) return stitch.phone.waiting() ? owe(stitch) : stitch.say("Nothing is left here to take back.");
  feel("undo");
  const laying = stitch.lay([{ kind: "undo", ...(last.act ? { act: last.act } : { entry: last.id }) }], true);
  tellOrigin(stitch, last.act ? acts.filter(({ act }) => act === last.act) : [last]);
  return laying;
}

/** What lies further back than this phone knows is taken back as soon as the house has shown it, unless she goes on. */
function owe(stitch) {
  owed += 1;
  stitch.say(owed > 1 ? `${owed} more are taken back once this is sent.` : "One more is taken back once this is sent.");
  if (owed > 1) return;
  const { phone, project } = stitch;
  const settle = ({ detail }) => {
    if (detail.project !== project) return;
    if (!detail.own && phone.waiting() && !phone.last(project).some(({ kind }) => TAKEN_BACK.includes(kind))) return;
    phone.removeEventListener("change", settle);
    const presses = detail.own ? 0 : owed;
    owed = 0;
    stitch.say("");
    for (let press = 0; press < presses; press++) undo(stitch);
  };
  phone.addEventListener("change", settle);
  phone.send();
}

/** Say what was taken back if it was not laid on this phone. */
async function tellOrigin(stitch, entries) {
  const { store, keeper } = stitch.phone;
  const [{ id, at }] = entries;
  if (keeper.shown.held.has(id)) return;
  if ((await store.read((t) => Promise.all(["outbox", "settled"].map((name) => t.get(name, id))))).some(Boolean)) return;
  if (owed) return; // the next of them will say it
  const isSure = !store.isSpare && Date.parse(at) > stitch.phone.now() - FORTNIGHT; // as long as this phone remembers
  stitch.say(`Taken back: ${described(entries)}, laid ${isSure ? "" : "earlier or "}elsewhere.`);
}

function described(entries) {
  const places = new Set(entries.map(({ row, block, pass }) => (row ? `row ${row}` : block ? `block ${block.join(", ")}` : PASSES[pass])));
  const where = places.size > 1 ? `${places.size} places` : [...places][0];
  const stitches = entries.filter(({ kind }) => kind === "stitches");
  if (stitches.length) return `${stitches.reduce((sum, { by }) => sum + by, 0)} in ${where}`;
  const [{ kind, by, done: isDone }] = entries;
  if (kind === "bare") return `${by} bare in ${where}`;
  return kind === "start" ? `where ${where} begins` : `${where} ${isDone ? "done" : "open again"}`;
}
