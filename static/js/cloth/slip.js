// The slip on a phone: drawn from the address where the page was kept for the time without network, printed, handed on.

import { coded, write, read, Unreadable } from "./slip_text.js";
import { named } from "./reads.js";
import { fillRows } from "./rows.js";
import { ask, typedOf } from "./slip_asking.js";
import { rows } from "./slip_rows.js";
import { shapes, slots } from "./slip_saying.js";

const PATIENCE = 5000; // ms
const TELLING = ["title", "width", "height"];
const FOR_CLASS = ["width", "height", "count", "across", "over", "finish", "held", "frays", "own", "unit", "threads"];

/** Bring the page to life. */
function start(root) {
  const tables = JSON.parse(root.querySelector("[data-tables]").textContent);
  const part = (name) => root.querySelector(`[data-${name}]`);
  const tell = (sentence) => { root.querySelector('[data-slot="told"]').textContent = sentence; };
  const image = part("code").querySelector("img");
  const lost = () => {
    part("code").hidden = true;
    tell("No network, so no code to scan: the link carries the same.");
  };
  const isLost = image.hasAttribute("src") && image.complete && !image.naturalWidth;
  image.addEventListener("error", lost);
  if (isLost) lost();
  const isKept = part("slip").hidden && root.querySelector("[data-slot=fault]").hidden && !root.querySelector("[aria-invalid]");
  if (isKept) drawKept(root, tables);
  root.addEventListener("submit", async (event) => {
    if (!event.target.matches("[data-make]")) return;
    event.preventDefault();
    if (await isReached()) event.target.submit();
    else tell("No network: it can be made a project when that is back. Keep the link.");
  });
  root.addEventListener("click", async ({ target }) => {
    const act = target.closest("button[type=button]")?.dataset.act;
    if (act) tell(await (await import("./slip_acts.js"))[act](root, address(root)));
  });
  if (!navigator.share) root.querySelector('[data-act="share"]').disabled = true;
  root.dataset.live = "";
}

/** Tell whether the house can be reached; what the browser says of the network is not to be relied on. */
const isReached = () => fetch("/health", { cache: "no-store", signal: AbortSignal.timeout(PATIENCE) }).then(({ ok }) => ok, () => false);

/** Give the address that carries the slip. */
function address(root) {
  return `${location.origin}${location.pathname}?${new URLSearchParams({ s: root.querySelector('[name="s"]').value })}`;
}

/** Draw what the address says into a page that was kept empty. */
function drawKept(root, tables) {
  const given = named(new URLSearchParams(location.search));
  try {
    if (given.s !== undefined) paint(root, tables, given.s, read(given.s));
    else if (TELLING.some((name) => given[name]?.trim())) made(root, tables, { count: "14", ...given });
  } catch (error) {
    if (!(error instanceof Unreadable)) throw error;
    say(root, error.message);
  }
}

function made(root, tables, given) {
  const { slip, typed, errors } = ask(given);
  fillIn(root.querySelector("#slip"), typed);
  if (!slip) return say(root, Object.values(errors)[0]);
  const text = write(slip);
  history.replaceState(null, "", `?${new URLSearchParams({ s: text })}`);
  return paint(root, tables, text, read(text));
}

function say(root, sentence) {
  Object.assign(root.querySelector('[data-slot="fault"]'), { hidden: false, textContent: sentence });
}

function paint(root, tables, text, slip) {
  root.querySelector('[name="s"]').value = text;
  for (const [name, words] of Object.entries(slots(slip, tables))) {
    for (const slot of root.querySelectorAll(`[data-slot="${name}"]`)) slot.textContent = words;
  }
  for (const [name, attributes] of Object.entries(shapes(slip, tables))) {
    const shape = root.querySelector(`[data-shape="${name}"]`);
    for (const [attribute, value] of Object.entries(attributes)) shape.setAttribute(attribute, value);
  }
  const night = root.querySelector('[data-slot="night"]');
  night.hidden = !night.textContent;
  paintThreads(root, tables, slip);
  const typed = typedOf(slip);
  fillIn(root.querySelector("#slip"), typed);
  const forClass = FOR_CLASS.filter((name) => typed[name]).map((name) => [name, typed[name]]);
  root.querySelector("[data-class]").search = new URLSearchParams(forClass);
  root.querySelector("[data-code]").hidden = false;
  root.querySelector("[data-code] img").src = `/cloth/slip.svg?${new URLSearchParams({ s: coded(slip) })}`;
  root.querySelector("[data-slip]").hidden = false;
  root.querySelector("[data-change]").open = false;
  root.querySelector("[data-change] > summary").hidden = false;
}

function paintThreads(root, tables, slip) {
  fillRows(root.querySelector("[data-rows]"), rows(slip, tables.threads), ["symbol", "thread", "strands", "buy"]);
  root.querySelector("[data-threads]").hidden = !slip.threads.length;
  root.querySelector("[data-code]").toggleAttribute("data-large", slip.threads.length > 0 && coded(slip) === write(slip));
}

function fillIn(form, typed) {
  for (const [name, value] of Object.entries(typed)) {
    const field = form.elements.namedItem(name);
    if (field?.type === "checkbox") field.checked = value === field.value;
    else if (field) field.value = value;
  }
}

const root = document.querySelector('[data-island="slip"]');
if (root) start(root);
