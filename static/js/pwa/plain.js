/** Without https a browser lends a page neither a worker nor a lit screen; one line says so, until she closes it. */
import "../journal/courier.js"; // no worker keeps these for when they are wanted without network
import "../journal/moments.js";
import "../journal/status.js";
import { notice } from "./notice.js";

const SAID = "Opened without https: Evenrow counts, keeps and sends, but cannot open without network or keep the screen lit. Whoever runs it can change that with evenrow serve --cert and --key.";
const CLOSED = "evenrow:plain";

/** Say what is missing, in the page's own slot or over the page. */
export function sayPlain() {
  const slots = document.querySelectorAll('[data-slot="plain"]');
  for (const slot of slots) Object.assign(slot, { textContent: SAID, hidden: false });
  if (!slots.length && !localStorage.getItem(CLOSED)) notice("plain", SAID, "", null, () => localStorage.setItem(CLOSED, "1"));
}
