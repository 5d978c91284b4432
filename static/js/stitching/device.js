import { painted } from "../painted.js";

// What belongs to this device alone: how a tap feels, and what is remembered here and nowhere else.

const NAME = "evenrow.here.";
const BUZZ = { tap: 14, ten: 55, end: [60, 50, 60, 50, 90], undo: [8, 30, 8] };

const known = new Map(); // read once a page: every tap asks

/** Read what this device keeps under a name; null if nothing. */
export function kept(name) {
  if (!known.has(name)) known.set(name, read(name));
  return known.get(name);
}

function read(name) {
  try {
    return JSON.parse(localStorage.getItem(NAME + name));
  } catch {
    return null;
  }
}

/** Keep something on this device; a full or closed store loses a liking, no stitch. */
export function keep(name, value) {
  known.set(name, value);
  try {
    localStorage.setItem(NAME + name, JSON.stringify(value));
  } catch {
    // as said
  }
}

/** Let her feel what an act did, or hear it where the phone cannot buzz; she sees it first. */
export function feel(kind) {
  painted().then(() => {
    navigator.vibrate?.(BUZZ[kind]);
    if (kept("sound") ?? !navigator.vibrate) import("./sound.js").then((sound) => sound.play(kind));
  });
}
