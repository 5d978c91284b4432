/** The screen as an instrument: set by a bank card, then a ruler, or fine lines to lay thin cloth on. */

import { facts, keep, keepUnit, recall, unit, watch } from "./device.js";
import { openGlass } from "./glass.js";
import { openLadder } from "./laddering.js";
import { drawRuler, rulerLength } from "./ruling.js";
import { axisOf, outdated, pinched, trusted } from "./screen.js";
import { openSetting } from "./setting.js";
import { worth } from "./ticks.js";

const LOW = 480; // CSS pixels: in a lower window a card and its controls do not fit
const PINCHED = "The page is pinched larger. Bring it back to its own size to measure.";
const LYING = "Hold the phone upright to lay a card on it.";

function start(root) {
  const slot = (name) => root.querySelector(`[data-slot="${name}"]`);
  const isUpright = () => innerHeight >= innerWidth;
  let record = recall(); // what was set for this device
  let axes = trusted(record);
  let chosen = "ruler"; // what is shown once the screen is set
  let again = false; // she wants it set again
  let begun = 0; // the pixel ratio the setting was begun at

  const along = () => axes[axisOf(isUpright() ? "down" : "across", facts().turned)];
  const glass = openGlass(slot("glass"), (context, size) => painters[root.dataset.view]?.(context, size));
  const setting = openSetting(root, glass, take);
  const ladder = openLadder(root, glass, () => ({ axis: along(), upright: isUpright(), unit: unit() }));
  const painters = { set: setting.paint, lines: ladder.paint, ruler: paintRuler };

  function paintRuler(context, size) {
    drawRuler(context, size, unit(), along());
    for (const [name, words] of Object.entries(worth(unit(), along(), rulerLength(size)))) slot(name).textContent = words;
  }

  /** Look at the device, and show what can be shown on it as it is. */
  function look() {
    const now = facts();
    const why = axes ? outdated(record, now) : "";
    if (pinched(now)) return wait(PINCHED);
    if (why === null && !again) return show(chosen);
    if (innerHeight < LOW && !isUpright()) return wait(LYING);
    const fresh = root.dataset.view !== "set" || begun !== now.ratio;
    begun = now.ratio;
    show("set");
    return fresh && setting.begin(why ?? "");
  }

  function take(set) {
    const { turned, ...now } = facts();
    const named = Object.entries(set).map(([way, axis]) => [axisOf(way, turned), axis]);
    record = { axes: Object.fromEntries(named), ...now };
    axes = trusted(record);
    again = false;
    slot("forgetful").hidden = keep(record);
    look();
  }

  function wait(sentence) {
    slot("wait").textContent = sentence;
    show("wait");
  }

  function show(view) {
    root.dataset.view = view;
    for (const part of root.querySelectorAll("[data-in]")) part.hidden = !part.dataset.in.split(" ").includes(view);
    slot("glass").ariaLabel = { set: "The drawn card", ruler: "The ruler", lines: "The lines" }[view] ?? "Nothing";
    glass.again();
  }

  root.addEventListener("change", ({ target }) => {
    if (target.name === "show") chosen = target.value;
    if (target.name === "unit") keepUnit(target.value);
    if (["show", "unit"].includes(target.name)) look();
  });
  root.querySelector('[data-act="again"]').addEventListener("click", () => {
    again = true;
    look();
  });
  root.querySelector(`[name="unit"][value="${unit()}"]`).checked = true;
  root.querySelector(`[name="show"][value="${chosen}"]`).checked = true;
  watch(look);
  look();
  root.dataset.live = "";
}

const root = document.querySelector('[data-island="ruler"]');
if (root) start(root);
