import { kept } from "./device.js";

// While a sitting is open: the screen stays on, and eyes and hands are thought of.
const LOOK_AWAY = 20; // minutes; the usual caution for eyes is 6 m for 20 seconds
const STRETCH = 60;

let lock = null;
let watched = null;
let said = 0;

/** Keep the screen on while the sitting is open and seen, and say when to rest. */
export function attend(stitch) {
  const open = Boolean(stitch.view.sitting);
  if (open && !watched) {
    watched = () => attend(stitch);
    document.addEventListener("visibilitychange", watched);
  }
  open ? wake() : sleep();
  if (open) nudge(stitch);
}

async function wake() {
  if (lock || document.visibilityState !== "visible" || !navigator.wakeLock) return;
  lock = "asked";
  try {
    lock = await navigator.wakeLock.request("screen");
    lock.addEventListener("release", () => (lock = null));
  } catch {
    lock = null; // low battery or not allowed: it counts all the same
  }
}

function sleep() {
  document.removeEventListener("visibilitychange", watched);
  watched = null;
  said = 0;
  lock?.release?.();
  lock = null;
}

function nudge(stitch) {
  const turn = Math.floor(stitch.minutes() / LOOK_AWAY);
  if (turn <= said || kept("rest") === false) return;
  const fresh = said > 0 || stitch.minutes() % LOOK_AWAY === 0; // opened in between: the next one will do
  said = turn;
  if (!fresh) return;
  const hands = (turn * LOOK_AWAY) % STRETCH === 0;
  stitch.say(hands ? "An hour: put it down, stretch hands and shoulders." : "Rest your eyes: 20 seconds, 6 m away.");
}
