// A page of the bench as an instrument: it answers as she types. The form, answered by the server, is the same without it.

import { keepUnit, unit } from "./device.js";
import { named } from "./reads.js";

const PATIENCE = 900; // ms without a key before what is half typed is called wrong

/** Answer in `root` as she types: `ask` reads what is typed, `paint` shows the answer to what was read. */
export function begin(root, { ask, paint }) {
  const form = root.querySelector("form");
  const answer = root.querySelector('[data-slot="answer"]');
  fill(form, Object.entries(named(new URLSearchParams(location.search))));
  if (!location.search && !root.closest("[data-account]")) form.elements.namedItem("unit").value = unit();
  let [idle, isBegun] = [0, false];
  const update = (isPatient) => {
    clearTimeout(idle);
    const typed = Object.fromEntries(new FormData(form));
    const asked = ask(typed);
    const isRight = !Object.keys(asked.errors).length;
    if (isRight || !isPatient) showWrong(root, asked.errors);
    else idle = setTimeout(() => showWrong(root, asked.errors), PATIENCE);
    answer.toggleAttribute("data-empty", !isRight);
    if (isRight) paint(asked);
    const given = new URLSearchParams(Object.entries(typed).filter(([, text]) => text.trim()));
    for (const link of root.querySelectorAll("a[data-carry]")) link.search = given; // links take the figures along
    if (isBegun) keep(given);
    askHers(root, isRight);
  };
  root.addEventListener("input", () => {
    isBegun = true;
    update(true);
  });
  root.addEventListener("change", ({ target }) => {
    if (target.name === "unit") keepUnit(target.value);
    update(false);
  });
  root.addEventListener("click", (event) => {
    const pick = event.target.closest("a[data-fill]");
    if (!pick) return;
    event.preventDefault();
    fill(form, new URL(pick.href).searchParams);
    isBegun = true;
    update(false);
  });
  form.addEventListener("submit", (event) => event.preventDefault());
  root.addEventListener("keydown", (event) => {
    if (event.key === "Enter" && event.target.matches("input.n")) event.preventDefault(), event.target.blur();
  });
  update(true);
  root.dataset.live = "";
}

/** Fill in what an address says, for a page that was kept without its values. */
function fill(form, given) {
  for (const [name, value] of given) {
    const field = form.elements.namedItem(name);
    if (field?.type === "checkbox") field.checked = field.value === value;
    else if (field && "value" in field) field.value = value;
  }
}

/** Show what is wrong beside the fields; one that is still empty is left in peace: she is on her way to it. */
function showWrong(root, errors) {
  for (const row of root.querySelectorAll("[data-figures]")) {
    const about = row.querySelector("small");
    const said = [...row.querySelectorAll("input.n")].map((input) => {
      const wrong = input.value.trim() ? errors[input.name] : undefined;
      input.toggleAttribute("aria-invalid", false);
      if (wrong) input.setAttribute("aria-invalid", "true");
      return wrong;
    });
    const sentence = said.find(Boolean);
    about.classList.toggle("error", Boolean(sentence));
    about.textContent = sentence ?? about.dataset.hint;
  }
}

/** Show texts in their slots. */
export function showTexts(root, texts) {
  for (const [name, text] of Object.entries(texts)) root.querySelector(`[data-slot="${name}"]`).textContent = text;
}

/** Write what is typed into the address, so that going back, loading anew and sharing show the same. */
function keep(given) {
  if (`?${given}` === location.search) return;
  try { history.replaceState(history.state, "", `${location.pathname}?${given}`); } catch { /* too often at once: the next key writes it */ }
}

/** Let htmx ask what of hers goes with it, if she is signed in and the network is there. */
function askHers(root, isRight) {
  const hers = root.querySelector("[data-hers]");
  if (!hers) return;
  hers.hidden = !isRight || !navigator.onLine;
  if (!hers.hidden) hers.dispatchEvent(new CustomEvent("answered"));
}
