// The pages of Hours come alive: arrow keys and a swipe turn to what lies earlier or later, as their links do; the week is
// printed, and handed on as a picture.

import { handOn } from "../handed.js";

const FAR = 64; // px, sideways
const STEPS = { earlier: -1, later: 1 };
const KEYS = { ArrowLeft: "earlier", ArrowRight: "later" };

/** Tell which way a finger went: to the right is back in time, as a page is turned; none if it did not go sideways. */
export function turned(from, to) {
  const [x, y] = [to.x - from.x, to.y - from.y];
  if (Math.abs(x) < FAR || Math.abs(x) < 2 * Math.abs(y)) return null;
  return x > 0 ? "earlier" : "later";
}

let turning = null; // the link whose page is on its way
let owed = 0; // pages asked for meanwhile: those later count up, those earlier down

function turn(way) {
  if (turning) {
    owed += STEPS[way];
    return;
  }
  turning = document.querySelector(`[data-turn] #${way}`);
  if (turning) turning.click();
  else owed = 0;
}

/** The page has turned: what is still owed is turned on to. */
function goOn() {
  turning = null;
  if (!owed) return;
  const way = owed < 0 ? "earlier" : "later";
  owed -= STEPS[way];
  turn(way);
}

document.addEventListener("click", (event) => {
  const link = event.target.closest("[data-turn] a");
  if (!link || !event.isTrusted || event.ctrlKey || event.metaKey || event.shiftKey) return;
  if (!turning) turning = link;
  else {
    event.preventDefault();
    event.stopPropagation();
    owed += STEPS[link.id];
  }
}, { capture: true });
document.addEventListener("htmx:finally:request", ({ target }) => {
  if (!turning) return;
  if (target === turning) [turning, owed] = [null, 0]; // it could not be had
  else if (!turning.isConnected) goOn();
});
addEventListener("pageshow", () => { [turning, owed] = [null, 0]; });

const place = ({ clientX, clientY }) => ({ x: clientX, y: clientY });
let from = null;

document.addEventListener("keydown", (event) => {
  const isTyping = event.target.closest("input, select, textarea");
  if (!KEYS[event.key] || isTyping || event.altKey || event.ctrlKey || event.metaKey || event.shiftKey) return;
  turn(KEYS[event.key]);
});
document.addEventListener("touchstart", ({ touches }) => {
  from = touches.length === 1 ? place(touches[0]) : null;
}, { passive: true });
document.addEventListener("touchend", ({ changedTouches }) => {
  const way = from && turned(from, place(changedTouches[0]));
  from = null;
  if (way) turn(way);
}, { passive: true });

const ACTS = {
  print: () => window.print(),
  picture: async () => {
    const { picture } = await import("./week_picture.js");
    const page = document.getElementById("week");
    return handOn(await picture(page), `${page.dataset.week}.png`);
  },
};
document.addEventListener("click", async ({ target }) => {
  const act = ACTS[target.closest(".scripted button")?.dataset.act];
  if (!act) return;
  const said = await act();
  if (said) document.querySelector('[data-slot="told"]').textContent = said;
});
document.documentElement.dataset.hours = "";
document.addEventListener("change", async ({ target }) => {
  if (target.matches("[data-photograph] input[type=file]")) (await import("./shrink.js")).shrink(target);
});
document.addEventListener("submit", (event) => {
  const line = event.target.querySelector('[data-slot="unsent"]');
  if (!line || navigator.onLine) return;
  event.preventDefault();
  line.hidden = false;
});
