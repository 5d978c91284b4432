/** Her reminders, on this phone: turned on, tried, turned off. The rest of the page is forms. */
import { address, ask, hindrance, subscribe, tell } from "./pushing.js";
import { renewNow } from "./renew.js";

const root = document.querySelector("[data-page=phones]");
const find = (selector) => root.querySelector(selector);
const { key } = root.dataset;

const say = (words) => { find("[data-slot=said]").textContent = words; };

async function draw() {
  const why = hindrance(key);
  const own = why ? null : await address().catch(() => null);
  const house = why ? {} : await ask("/reminders/phones.json").catch(() => ({}));
  const isOn = Boolean(own) && house.on && house.endpoint === own.endpoint;
  find("[data-slot=state]").textContent = why || (isOn ? "This phone reminds you." : "This phone does not remind you yet.");
  find("[data-act=on]").hidden = Boolean(why) || isOn;
  for (const act of ["try", "off"]) find(`[data-act=${act}]`).hidden = !isOn;
}

const ACTS = {
  on: async () => {
    // She is asked by the browser, at her touch; an address is asked for only when she said yes.
    if ((await Notification.requestPermission()) !== "granted") return;
    await tell(await subscribe(key), key);
  },
  off: async () => {
    const { id } = await ask("/reminders/phones.json");
    if (id) await fetch(`/reminders/phones/${id}/end`, { method: "POST", redirect: "manual" });
    await (await address())?.unsubscribe();
  },
  try: async () => say((await ask("/reminders/trial.json", {})).said),
};

root.addEventListener("click", async ({ target }) => {
  const act = ACTS[target.closest("[data-act]")?.dataset.act];
  if (!act) return;
  say("");
  target.disabled = true;
  await act().catch((error) => say(error.message));
  target.disabled = false;
  await draw();
});
document.addEventListener("click", ({ target }) => target.matches("input[data-act=select]") && target.select());
const zone = document.querySelector("main > [data-zone]");
zone.hidden = [zone.dataset.zone, undefined].includes(Intl.DateTimeFormat().resolvedOptions().timeZone);
draw().then(renewNow).then(draw, () => {}); // what is on again by itself is shown so
