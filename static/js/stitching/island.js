import { painted } from "../painted.js";
import { listen, listenToKeys } from "./field.js";
import { paint } from "./paint.js";
import { Stitch } from "./stitch.js";

const TOUCHES = ["pointerdown", "keydown"];
const UNTOUCHED = 20_000;
const FORGOTTEN = 45 * 60_000;
const LONG_AWAY = 14 * 24 * 3_600_000;

/** Bring the page of Stitch to life: fill its slots from the phone, and lay what she taps. */
export function start(element, phone) {
  const stitch = new Stitch(element, phone, location.pathname.split("/")[2]);
  const known = phone && stitch.view;
  if (!known) return tellNothing(element, phone, () => start(element, phone));
  stitch.place = stitch.view[stitch.unit];
  stitch.step ??= stitch.plan.step;
  follow(stitch, element);
  listenTo(element, stitch);
  if (!navigator.serviceWorker?.controller) for (const kind of TOUCHES) addEventListener(kind, fetchAhead, { once: true });
  dim(element);
  setInterval(() => stitch.repaint(), 20_000);
  element.dataset.live = "";
  greet(stitch);
}

function tellNothing(element, phone, again) {
  element.querySelector(".nothing")?.removeAttribute("hidden");
  phone?.addEventListener("change", again, { once: true });
}

/** Paint whatever changes; her own acts lead the way, another phone's only say where they are. */
function follow(stitch, element) {
  let elsewhere = stitch.place;
  let awake;
  const same = (a, b) => String(a) === String(b);
  stitch.repaint = () => {
    if (element.dataset.dressed !== String(stitch.plan.revision)) return change(stitch, element);
    paint(stitch);
    if (stitch.holds?.() === false) stitch.say("");
    if (stitch.plan.legend || stitch.hand.thread) import("./strip.js").then((strip) => strip.paint(stitch));
    if (awake) awake.attend(stitch);
    else if (stitch.view.sitting) import("./awake.js").then((module) => (awake ||= module).attend(stitch));
  };
  stitch.go = (place) => {
    stitch.place = place;
    stitch.repaint();
  };
  stitch.phone.addEventListener("change", ({ detail }) => {
    if (detail.project !== stitch.project) return;
    const hand = stitch.view[stitch.unit];
    if (detail.own ? stitch.following : stitch.place === null) stitch.place = hand;
    else if (!detail.own && hand !== null && !same(hand, elsewhere) && !same(hand, stitch.place)) {
      stitch.say(`${stitch.name(hand)} is in hand elsewhere.`, "Go there", () => stitch.go(hand));
    }
    elsewhere = hand;
    stitch.following = false;
    stitch.repaint();
  });
  stitch.phone.addEventListener("status", ({ detail: { waiting, state } }) => {
    const unsent = stitch.find(".unsent");
    const isSilent = !waiting || state === "idle" || state === "sending";
    if (unsent.hidden === isSilent) return;
    unsent.hidden = isSilent;
    unsent.parentNode.classList.toggle("waits", !isSilent);
  });
  stitch.repaint();
}

/** The plan is another than the page was drawn for, as in the shell: dress first, then paint. */
async function change(stitch, element) {
  (await import("./dress.js")).dress(stitch);
  element.dataset.dressed = stitch.plan.revision;
  if (Array.isArray(stitch.place) !== (stitch.unit === "block")) stitch.place = stitch.view[stitch.unit];
  stitch.repaint();
  stitch.find(".nothing")?.remove();
  element.removeAttribute("data-empty");
}

function listenTo(element, stitch) {
  const field = stitch.find(".field");
  element.addEventListener("click", (event) => {
    const act = event.target.closest("[data-act]")?.dataset.act;
    if (!act || act === "tap") return;
    if (act === "hush") stitch.say("");
    else ["undo", "back", "done"].includes(act) ? stitch.do(act) : stitch.open(act);
    if (event.detail) field.focus({ preventScroll: true }); // a pedal's next press is a tap again
  });
  listen(field, (by) => stitch.tap(by));
  listenToKeys({ tap: () => stitch.tap(), undo: () => stitch.do("undo") });
}

const fetchAhead = () => painted().then(() => import("./ahead.js"));

/** Untouched for a while, all dims but what is counted; any touch ends it. */
function dim(element) {
  let timer;
  const touch = () => {
    element.classList.remove("still");
    clearTimeout(timer);
    timer = setTimeout(() => element.classList.add("still"), UNTOUCHED);
  };
  for (const kind of TOUCHES) addEventListener(kind, touch, { passive: true });
  touch();
}

/** Tell when she last stitched, by the house's clock; NaN if never. What is said at rest, ticked or put right later is none. */
function stitched({ phone, project, unit }) {
  const isHers = ({ kind, at }) => /^[bds]/.test(kind) && Date.parse(at) <= phone.now(); // bare, begin, done, start, stitches
  return Date.parse(phone.last(project).findLast(isHers)?.at ?? phone.snapshot(project)?.hand?.[unit]?.[0]);
}

/** What must be said on opening: work to enter, a sitting left running, a long absence, clean hands. */
function greet(stitch) {
  const look = (isBack) => {
    const at = stitched(stitch);
    const now = stitch.phone.now();
    if (now - at > (stitch.view.sitting ? FORGOTTEN : LONG_AWAY)) return stitch.open("back", isBack, stitched, FORGOTTEN, LONG_AWAY);
    const isOfToday = (entry) => Date.parse(entry.at) >= new Date(now).setHours(0, 0, 0, 0);
    return isBack || stitch.view.sitting || stitch.phone.last(stitch.project).some(isOfToday) || stitch.say("Clean hands?");
  };
  const asked = /^#(already|finished)$/.exec(location.hash);
  if (asked) stitch.open(asked[1]);
  else look();
  document.addEventListener("visibilitychange", () => document.hidden || document.querySelector("dialog[open]") || look(true));
}
