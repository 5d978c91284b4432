/** What works on this phone, found out as far as a page can, and something to try each by. */
import { address, ask, hindrance } from "./pushing.js";

const root = document.querySelector("[data-page=here]");
const part = (name) => root.querySelector(`[data-thing=${name}]`);
const BUZZ = [14, 200, 14, 200, 55];
const LIT = 30_000;

function say(name, is, words) {
  const thing = part(name);
  thing.dataset.is = is === null ? "" : is ? "yes" : "no";
  thing.querySelector("[data-slot=state]").textContent = words;
  const button = thing.querySelector("button");
  if (name !== "installed") button.hidden = !is; // that one is shown when the browser offers it
}

async function push() {
  const why = hindrance(root.dataset.key);
  if (why) return say("push", false, why);
  const { on, endpoint } = await ask("/reminders/phones.json").catch(() => ({}));
  const isOn = on && (await address().catch(() => null))?.endpoint === endpoint;
  say("push", isOn, isOn ? "On." : "Possible, and not turned on.");
}

async function look() {
  const installed = matchMedia("(display-mode: standalone)").matches || navigator.standalone === true;
  say("installed", installed, installed ? "It is." : "Not yet.");
  const worker = navigator.serviceWorker?.controller;
  const none = isSecureContext ? "Not yet: open this page once more." : "Not over plain http. Whoever runs this house can turn on https.";
  say("worker", Boolean(worker), worker ? "Yes." : none);
  await push();
  const lit = Boolean(navigator.wakeLock);
  say("screen", lit, lit ? "Possible." : "Not here. Let the phone's own settings keep the screen on longer.");
  const buzz = Boolean(navigator.vibrate);
  say("buzz", buzz, buzz ? "Possible. A phone set to silent may not." : "Not here: each tap sounds instead, and is seen.");
  say("sound", Boolean(self.AudioContext), self.AudioContext ? "Possible, if the phone is not on silent." : "Not here.");
}

async function keepLit() {
  const lock = await navigator.wakeLock.request("screen");
  setTimeout(() => lock.release().then(() => say("screen", true, "It may go dark again.")), LIT);
  return "Lit for 30 seconds: put the phone down and watch.";
}

const TRIES = {
  worker: async () => ((await caches.match("/shell/stitch", { ignoreVary: true })) ? "Yes: Stitch is kept on this phone." : "Not kept yet. Wait a little, then try again."),
  push: async () => (await ask("/reminders/trial.json", {})).said,
  screen: keepLit,
  buzz: async () => (navigator.vibrate(BUZZ) ? "Two short, one long: felt?" : "The phone did not let it."),
  sound: async () => {
    (await import("../stitching/sound.js")).play("ten");
    return "One note: heard?";
  },
};

root.addEventListener("click", async ({ target }) => {
  const name = target.closest("[data-act]")?.dataset.act;
  if (!TRIES[name]) return;
  const words = await TRIES[name]().catch(({ message }) => message);
  part(name).querySelector("[data-slot=state]").textContent = words;
});
look();
