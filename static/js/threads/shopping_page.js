/**
 * The shopping list on a phone: ticked without network, through the journal. A tick is one act, an entry for each
 * chosen project that needs the thread; what is shown is the fold's, so that two phones agree after they sent.
 */
import { isLeaving } from "../journal/owner.js";
import { openPhone } from "../journal/phone.js";
import { stamp } from "../journal/stamps.js";

const SETTLED = 1500; // ms after the last tick before what is ticked goes below: nothing moves under her thumb

/** Bring the list of `root` to life on a phone. */
async function start(root) {
  const acts = import("./shopping_acts.js");
  root.addEventListener("click", async ({ target }) => {
    const act = target.closest("button[data-act]")?.dataset.act;
    if (act) (await acts)[act](root);
  });
  if (await isLeaving()) return;
  const snapshots = JSON.parse(root.querySelector("[data-snapshots]").textContent);
  const phone = await openPhone({ account: document.body.dataset.account });
  for (const snapshot of snapshots) await phone.take(snapshot);
  const lines = [...root.querySelectorAll("[data-ticks]")].map((item) => ({ item, ticks: JSON.parse(item.dataset.ticks), box: item.querySelector("input") }));
  const isTicked = ({ ticks }) => ticks.every(([project, thread]) => phone.view(project)?.have[thread] === true);
  const early = lines.filter(({ box }) => box.checked !== box.defaultChecked);
  let timer = 0;

  async function tick(line) {
    const [have, act] = [line.box.checked, stamp().id];
    const laying = line.ticks.map(([project, thread]) => phone.lay(project, [{ kind: "have", thread, have, act }]));
    await Promise.allSettled(laying); // where one is not kept, the phone says so
    paint();
  }

  /** Show what the fold says. What changed place goes there when her hand has rested. */
  function paint() {
    for (const line of lines) line.box.checked = isTicked(line);
    const moved = lines.filter(({ item, box }) => item.hasAttribute("data-ticked") !== box.checked);
    for (const { item, box } of moved) item.toggleAttribute("data-ticked", box.checked);
    if (!moved.length) return;
    clearTimeout(timer);
    timer = setTimeout(settle, SETTLED);
  }

  function settle() {
    const focused = document.activeElement;
    for (const { item, box } of lines) {
      const list = root.querySelector(box.checked ? "[data-done]" : "[data-open]");
      if (item.parentElement !== list) list.insertBefore(item, after(list, item));
    }
    if (root.contains(focused)) focused.focus({ preventScroll: true });
    const left = lines.some(({ box }) => !box.checked);
    root.querySelector(".done").hidden = !lines.some(({ box }) => box.checked);
    const all = root.querySelector('[data-slot="all"]');
    if (lines.length) Object.assign(all, { hidden: left, textContent: "Everything is ticked." });
  }

  const after = (list, item) => [...list.children].find((one) => Number(one.dataset.at) > Number(item.dataset.at)) || null;

  root.addEventListener("change", ({ target }) => {
    const line = lines.find(({ box }) => box === target);
    if (line) tick(line);
  });
  for (const line of early) await tick(line);
  paint();
  settle();
  phone.addEventListener("change", ({ detail }) => detail.own || paint());
  const look = async () => {
    await phone.send();
    if (document.hidden) return;
    const { refresh } = await import("../journal/moments.js");
    for (const { project } of snapshots) await refresh(phone, project);
  };
  for (const moment of ["online", "pageshow", "focus"]) addEventListener(moment, look);
  document.addEventListener("visibilitychange", look);
  root.dataset.live = "";
  look();
}

const root = document.querySelector("[data-shopping]");
if (root) start(root);
