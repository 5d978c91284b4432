// Size and cut as she types: the page's form, answered by the server, is the same without this.

import { keepUnit, unit } from "./device.js";
import { shapes } from "./drawing.js";
import { answer } from "./size_answer.js";
import { named } from "./reads.js";
import { ask } from "./size_asking.js";
import { slots } from "./size_saying.js";

const PATIENCE = 900; // ms without a key before what is half typed is called wrong
const FIGURES = ["width", "height", "count", "across", "own"];

/** Answer in `root` as she types. */
function start(root) {
  const tables = JSON.parse(root.querySelector("[data-tables]").textContent);
  const form = root.querySelector("form");
  const given = new URLSearchParams(location.search);
  if (!given.has("unit") && !root.closest("[data-account]")) form.elements.namedItem("unit").value = unit();
  fillIn(form, named(given));
  let idle = 0;
  const update = (patient) => {
    clearTimeout(idle);
    const typed = Object.fromEntries(new FormData(form));
    const { values, errors } = ask(typed);
    const right = !Object.keys(errors).length;
    const show = () => showWrong(root, typed, errors);
    if (right || !patient) show();
    else idle = setTimeout(show, PATIENCE);
    paint(root, right ? answer(values, tables) : null);
    lead(root, typed);
  };
  form.addEventListener("input", ({ target }) => update(FIGURES.includes(target.name)));
  form.addEventListener("change", ({ target }) => {
    if (target.name === "unit") keepUnit(target.value);
    update(false);
  });
  form.addEventListener("keydown", (event) => event.key === "Enter" && event.target.matches("input") && enter(event));
  form.addEventListener("submit", (event) => event.preventDefault());
  update(false);
  root.dataset.live = "";
}

/** Fill in what the address says: a page that was kept for the time without network is empty. */
function fillIn(form, given) {
  for (const [name, value] of Object.entries(given)) {
    const field = form.elements.namedItem(name);
    if (field?.type === "checkbox") field.checked = value === field.value;
    else if (field) field.value = value;
  }
}

function enter(event) {
  event.preventDefault();
  const next = FIGURES.slice(0, 3).map((name) => event.target.form.elements.namedItem(name)).find((field) => !field.value);
  if (next) next.focus();
  else event.target.blur();
}

/** Show a sentence beside each field that cannot be meant; one still empty is left in peace. */
function showWrong(root, typed, errors) {
  const wrong = (name) => (typed[name]?.trim() ? errors[name] : undefined);
  for (const name of FIGURES) {
    const field = root.querySelector(`[name="${name}"]`);
    if (wrong(name)) field.setAttribute("aria-invalid", "true");
    else field.removeAttribute("aria-invalid");
  }
  for (const about of root.querySelectorAll("[data-about]")) {
    const sentence = about.dataset.about.split(" ").map(wrong).find(Boolean);
    about.classList.toggle("error", Boolean(sentence));
    about.textContent = sentence ?? about.dataset.hint;
    if (sentence) about.closest("details")?.setAttribute("open", "");
  }
}

function paint(root, found) {
  root.toggleAttribute("data-empty", !found);
  const [said, drawn] = found ? [slots(found), shapes(found)] : [{}, {}];
  for (const slot of root.querySelectorAll("[data-slot]")) slot.textContent = said[slot.dataset.slot] ?? "";
  for (const [name, attributes] of Object.entries(drawn)) {
    const shape = root.querySelector(`[data-shape="${name}"]`);
    for (const [attribute, value] of Object.entries(attributes)) shape.setAttribute(attribute, value);
  }
}

/** Let the links to what comes next carry what was typed. */
function lead(root, typed) {
  const query = String(new URLSearchParams(Object.entries(typed).filter(([, text]) => text.trim())));
  for (const link of root.querySelectorAll("[data-next]")) link.href = `${link.dataset.next}?${query}`;
}

const root = document.querySelector('[data-island="size"]');
if (root) start(root);
