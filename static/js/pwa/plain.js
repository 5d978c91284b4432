/** Without https a browser lends a page neither a worker nor a lit screen; one line says so, until she closes it. */
import "./ahead.js";
import { notice } from "./notice.js";

const SAID = "This page came over plain http: all is kept and sent, but it cannot open without network nor keep the screen lit. Whoever runs it can turn on https.";
const CLOSED = "evenrow:plain";

/** Say what is missing, in the page's own slot or over the page; not over the count, where what is wanted next is fetched. */
export function sayPlain(phone) {
  if (document.querySelector("[data-island=stitch]")) return import("../stitching/ahead.js");
  const slots = document.querySelectorAll('[data-slot="plain"]');
  for (const slot of slots) Object.assign(slot, { textContent: SAID, hidden: false });
  if (phone && !slots.length && !localStorage.getItem(CLOSED)) notice("plain", SAID, "", null, () => localStorage.setItem(CLOSED, "1"));
}
