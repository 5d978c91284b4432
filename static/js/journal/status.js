/** How things stand with what she tapped: the count of what waits, and a line if there is something for her to do. */
import { hush, notice } from "../pwa/notice.js";

const slots = (name) => document.querySelectorAll(`[data-slot="${name}"]`);
const signIn = () => `/sign-in?next=${encodeURIComponent(location.pathname)}`;

const LINES = {
  "sign-in": (n) => [n ? `Sign in to send ${n}.` : "Sign in to go on.", "Sign in", signIn()],
  "other-account": (n) => [`Somebody else is signed in here. ${n} wait until you are again.`, "Sign in", signIn()],
  "not-kept": () => ["There is no room left on this phone: that tap was not kept. Free some, then tap again.", "", null],
  outdated: () => ["A newer Evenrow is open on another page.", "Use it here too", () => location.reload()],
};

/** Keep every count of the page filled, and say what there is to say. */
export function showStatus(phone) {
  let said = "";
  const show = () => {
    const [waiting, refused] = [phone.waiting(), phone.refused().length];
    for (const slot of slots("waiting")) if (slot.textContent !== `${waiting}`) slot.firstChild.data = waiting;
    if (phone.state === "sending") return;
    const line = LINES[phone.state]?.(waiting);
    if (said !== `${line}`) line ? notice("status", ...line) : hush("status");
    said = `${line}`;
    showRefused(phone, refused);
  };
  phone.addEventListener("status", show);
  document.addEventListener("htmx:after:swap", show);
  show();
}

let shown = 0;

function showRefused(phone, count) {
  if (count === shown) return;
  shown = count;
  const look = async () => (await import("./parked.js")).showParked(phone);
  if (count) notice("refused", `${count} refused, and kept on this phone.`, "Look", look);
  else hush("refused");
}
