// The gauge as an instrument: it answers as she types. The page's form, answered by the server, is the same without it.

import { answer } from "./answer.js";
import { makeRoom, readLines, showWrong } from "./lines.js";
import { sentences } from "./saying.js";
import { drawScale, scale } from "./scale.js";
import { interval, metric, tenth } from "./words.js";

const UNIT = "evenrow.gauge.unit"; // which tape was used on this phone last
const PATIENCE = 900; // ms without a key before what is half typed is called wrong

/** Answer in `root` as she types. */
export function start(root) {
  const table = JSON.parse(root.querySelector("[data-table]").textContent);
  const form = root.querySelector("form");
  const unit = form.elements.namedItem("unit");
  if (!form.elements.namedItem("counted").value && remembered()) unit.checked = remembered() === "cm";
  let idle = 0;
  const update = (patient) => {
    clearTimeout(idle);
    const read = readLines(root, form);
    const right = !read.wrong.length;
    const show = () => showWrong(root, read.wrong.filter(typedIn));
    if (right || !patient) show();
    else idle = setTimeout(show, PATIENCE);
    paint(root, right ? answer(read.readings, read.kind, read.unit, table) : null);
    makeRoom(root);
  };
  root.addEventListener("input", () => update(true));
  root.addEventListener("change", (event) => {
    if (event.target === unit) remember(unit.checked ? "cm" : "in");
    update(event.target.name !== "length" && event.target.name !== "counted");
  });
  root.addEventListener("keydown", (event) => {
    if (event.key === "Enter" && event.target.matches("input")) event.preventDefault(), enter(event.target);
  });
  form.addEventListener("submit", (event) => event.submitter?.hasAttribute("formaction") || event.preventDefault());
  update(true);
}

/** Leave a field still empty in peace: she is on her way to it. */
const typedIn = ([line, name]) => line.querySelector(`[name="${name}"]`).value.trim();

function enter(field) {
  const next = field.name === "counted" && field.closest("[data-line]").querySelector("[name=length]");
  if (next && !next.value) next.focus();
  else field.blur();
}

function paint(root, found) {
  const slot = (name) => root.querySelector(`[data-slot="${name}"]`);
  slot("answer").toggleAttribute("data-empty", !found);
  if (!found) return ask(root, null);
  const { measured, judged } = found;
  slot("count").textContent = tenth(measured.count);
  slot("interval").textContent = interval(measured).join(" to ");
  slot("metric").textContent = `${metric(measured).join(" to ")} per 10 cm`;
  drawScale(slot("scale"), scale(measured, judged));
  slot("said").replaceChildren(...sentences(found).flatMap(paragraph));
  return ask(root, measured);
}

function paragraph([part, sentence]) {
  const p = document.createElement("p");
  p.className = part;
  p.textContent = sentence;
  return [p, " "];
}

/** Let htmx ask which of her projects go with the cloth, if she is signed in and the network is there. */
function ask(root, measured) {
  const hers = root.querySelector("[data-hers]");
  if (!hers) return;
  hers.hidden = !measured || !navigator.onLine;
  if (!measured || !navigator.onLine) return;
  for (const name of ["count", "low", "high"]) hers.elements.namedItem(name).value = measured[name];
  hers.dispatchEvent(new CustomEvent("answered"));
}

function remembered() {
  try { return localStorage.getItem(UNIT); } catch { return null; }
}

function remember(unit) {
  try { localStorage.setItem(UNIT, unit); } catch { /* a tape is chosen again next time */ }
}
