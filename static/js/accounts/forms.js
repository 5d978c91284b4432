import { sendFirst } from "./sending.js";

const phoneZone = () => Intl.DateTimeFormat().resolvedOptions().timeZone ?? "";

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

const offerZone = (element) => {
  for (const button of element.querySelectorAll('[data-act="zone"]')) {
    button.hidden = !phoneZone() || button.form.elements.zone.value === phoneZone();
  }
};

const ACTS = { reveal, zone: useZone, select: (input) => input.select() };

/** Help with the forms of accounts: a passphrase shown, this phone's zone offered; what is swapped in later too. */
export function start(element, phone) {
  offerZone(element);
  element.addEventListener("submit", (event) => sendFirst(event, phone));
  element.addEventListener("click", ({ target }) => {
    const control = target.closest("[data-act]");
    ACTS[control?.dataset.act]?.(control);
  });
  element.addEventListener("htmx:after:swap", () => offerZone(element));
}
