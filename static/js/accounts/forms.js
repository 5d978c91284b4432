import { fillZones, phoneZone } from "./zone.js";

const reveal = (button) => {
  const input = button.previousElementSibling;
  const shown = input.type === "text";
  input.type = shown ? "password" : "text";
  button.setAttribute("aria-pressed", String(!shown));
};

const useZone = (button) => {
  button.form.elements.zone.value = phoneZone();
  button.hidden = true;
};

const acts = { reveal, zone: useZone, select: (input) => input.select() };

const offerZone = (root) => {
  for (const button of root.querySelectorAll('[data-act="zone"]')) {
    button.hidden = !phoneZone() || button.form.elements.zone.value === phoneZone();
  }
};

/** Help with the forms of accounts: the zone filled in, a passphrase shown; what is swapped in later too. */
export function start(root) {
  fillZones(root);
  offerZone(root);
  root.addEventListener("click", (event) => {
    const control = event.target.closest("[data-act]");
    acts[control?.dataset.act]?.(control);
  });
  root.addEventListener("htmx:after:swap", () => offerZone(root));
}
