// The gauge as an instrument: it answers as she types. The page's form, answered by the server, is the same without it.

import { answer } from "./answer.js";
import { fillIn, keep } from "./address.js";
import { change, fieldOf, hush, makeRoom, otherwise, readLines, showWrong } from "./lines.js";
import { showOffers } from "./offers.js";
import { lead } from "./onward.js";
import { headline, sentences } from "./saying.js";
import { drawScale, scale } from "./scale.js";
import { acrossInWords } from "./uneven.js";
import { interval, metric, tenth } from "./words.js";

const UNIT = "evenrow.gauge.unit"; // which tape was used on this phone last
const PATIENCE = 900; // ms without a key before what is half typed is called wrong
const [SHORT, LONG] = [3, 9]; // signs of a figure that may stand very large, and large
const HEAD = ["answer", "verdict", "holes"]; // said elsewhere on the page than the rest

/** Answer in `root` as she types. */
export function start(root) {
  const table = JSON.parse(root.querySelector("[data-table]").textContent);
  const form = root.querySelector("form");
  const unit = form.elements.namedItem("unit");
  fillIn(root, form, new URLSearchParams(location.search));
  if (!form.elements.namedItem("counted").value && remembered()) unit.value = remembered();
  let idle = 0;
  const update = (patient) => {
    clearTimeout(idle);
    const read = readLines(root, form, table);
    const right = !read.wrong.length;
    const found = right ? answer(read.readings, read.kind, read.unit, table) : null;
    const said = found && Object.fromEntries(sentences(found));
    root.querySelector("[data-line] small").dataset.said = said?.holes ?? "";
    const others = right ? said.hint && otherwise(root, form, table) : otherwise(root, form, table, read.wrong.filter(typedIn));
    const show = () => {
      showWrong(root, read.wrong.filter(typedIn));
      offer(others || null, right);
    };
    const waits = !right && patient;
    if (waits) idle = setTimeout(show, PATIENCE), offer(null, false), hush(root);
    else show();
    paint(root, found, said, others ? ["hint", "over", "care"] : []);
    makeRoom(root);
    lead(found);
    keep(root, form);
  };
  const offer = (found, isAnswered) => {
    const [line, offers] = found ?? [null, []];
    slot(root, "answer").toggleAttribute("data-doubt", offers.length > 0 && !isAnswered);
    showOffers(slot(root, "offers"), offers.slice(0, isAnswered ? 1 : offers.length), (fields) => {
      change(line, form, fields);
      if (fields.unit) remember(unit.value);
      update(false);
      slot(root, "answer").focus({ preventScroll: true }); // the button is gone
    });
  };
  root.addEventListener("input", () => update(true));
  root.addEventListener("change", (event) => {
    if (event.target.name === "unit") remember(unit.value);
    update(event.target.name !== "length" && event.target.name !== "counted");
  });
  let tapped = false;
  root.addEventListener("pointerdown", ({ target }) => { tapped = Boolean(target.closest(".choices label")); });
  root.addEventListener("click", ({ target }) => target.matches(".choices input") && tapped && goOn(root));
  root.addEventListener("keydown", (event) => {
    tapped = false;
    if (event.key === "Enter" && event.target.matches("input")) event.preventDefault(), enter(event.target);
  });
  form.addEventListener("submit", (event) => event.submitter?.hasAttribute("formaction") || event.preventDefault());
  update(false);
}

const slot = (root, name) => root.querySelector(`[data-slot="${name}"]`);

/** Leave a field still empty in peace: she is on her way to it. */
const typedIn = ([line, name]) => line.querySelector(`[name="${name}"]`).value.trim();

/** After a touch on a choice go on to the first field that is empty: what comes next is digits. */
function goOn(root) {
  const line = root.querySelector("[data-line]");
  ["counted", "length"].map((name) => fieldOf(line, name)).find((field) => !field.value)?.focus();
}

function enter(field) {
  const next = field.name === "counted" && field.closest("[data-line]").querySelector("[name=length]");
  if (next && !next.value) next.focus();
  else field.blur();
}

function paint(root, found, said, leftOut) {
  slot(root, "answer").toggleAttribute("data-empty", !found);
  if (!found) return ask(root, null);
  const { measured, judged } = found;
  const [figure, name] = headline(found);
  slot(root, "count").classList.toggle("long", figure.length > SHORT && figure.length <= LONG);
  slot(root, "count").classList.toggle("longer", figure.length > LONG);
  const texts = {
    count: figure, name, verdict: said.verdict, measured: tenth(measured.count),
    interval: interval(measured).join(" to "), metric: found.ways ? acrossInWords(found) : `${metric(measured).join(" to ")} per 10 cm`,
  };
  for (const [key, text] of Object.entries(texts)) slot(root, key).textContent = text;
  drawScale(slot(root, "scale"), scale(measured, judged, found.ways && found.across));
  const more = Object.entries(said).filter(([part]) => ![...HEAD, ...leftOut].includes(part));
  slot(root, "said").replaceChildren(...more.flatMap(paragraph));
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
