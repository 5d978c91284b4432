/** Without https a browser lends a page neither a worker nor a lit screen; one line says so, until she closes it. */
import "../journal/courier.js"; // no worker keeps these for when they are wanted without network
import "../journal/moments.js";
import "../journal/status.js";
import "../reminders/night.js";
import "../stitching/acts.js";
import "../stitching/awake.js";
import "../stitching/sound.js";
import { notice } from "./notice.js";

const SAID = "Without https this cannot open offline or keep the screen lit. Serve it with --cert and --key for both.";
const CLOSED = "evenrow:plain";

/** Say what is missing, in the page's own slot or over the page. */
export function sayPlain(phone) {
  const slots = document.querySelectorAll('[data-slot="plain"]');
  for (const slot of slots) Object.assign(slot, { textContent: SAID, hidden: false });
  if (phone && !slots.length && !localStorage.getItem(CLOSED)) notice("plain", SAID, "", null, () => localStorage.setItem(CLOSED, "1"));
}
