// The field and the keys: what is a tap, what is a run, and what is only a hand at rest.

const SLIP = 20; // px a tap may wander
const NOTCH = 11; // px a stitch of a run
const MOST = 20;
const PALM = 90; // px: no finger or knuckle is so wide
const REST = 900; // ms: nor does it lie so long without sliding

const KEYS = {
  " ": "tap", Enter: "tap", ArrowRight: "tap", ArrowDown: "tap", PageDown: "tap",
  ArrowLeft: "undo", ArrowUp: "undo", PageUp: "undo", Backspace: "undo",
};

const runOf = (far) => (far < SLIP ? 0 : Math.min(MOST, 1 + Math.floor((far - SLIP) / NOTCH)));

const touches = new Map();

/** Tell whether a finger lies on the field. */
export const isTouched = () => touches.size > 0;

/** Listen to the field: a touch that lifts where it came down is a tap, one that slid lays a run on letting go. */
export function listen(field, tap) {
  const shown = field.querySelector("output");
  const end = (event) => {
    if (!shown.hidden) shown.hidden = true;
    const touch = touches.get(event.pointerId);
    touches.delete(event.pointerId);
    return touch;
  };
  field.addEventListener("pointerdown", (event) => {
    if (event.button) return;
    field.setPointerCapture(event.pointerId);
    touches.set(event.pointerId, { x: event.clientX, y: event.clientY, at: event.timeStamp, wide: 0, slid: false });
    feelWidth(touches.get(event.pointerId), event);
  });
  field.addEventListener("pointermove", (event) => {
    const touch = touches.get(event.pointerId);
    if (!touch) return;
    feelWidth(touch, event);
    const run = runOf(Math.hypot(event.clientX - touch.x, event.clientY - touch.y));
    touch.slid ||= run > 0;
    if (!touch.slid || touch.wide > PALM) return;
    shown.hidden = false;
    shown.textContent = run;
  });
  field.addEventListener("pointerup", (event) => {
    const touch = end(event);
    if (!touch || touch.wide > PALM) return;
    const run = runOf(Math.hypot(event.clientX - touch.x, event.clientY - touch.y));
    if (touch.slid || run) run && tap(run);
    else if (event.timeStamp - touch.at < REST) tap();
  });
  field.addEventListener("pointercancel", end);
  field.addEventListener("click", (event) => event.detail || tap()); // a screen reader's press has no pointer
  field.addEventListener("contextmenu", (event) => event.preventDefault());
}

function feelWidth(touch, event) {
  touch.wide = Math.max(touch.wide, event.width || 0, event.height || 0);
}

const typing = (node) => /^(INPUT|SELECT|TEXTAREA)$/.test(node.tagName);
const pressing = (event) => /^[ E]/.test(event.key) && event.target.closest("a, button:not([data-act=tap])");

/** Listen to the keys of a keyboard, a pedal or a page-turner; one held down counts once. */
export function listenToKeys(acts) {
  const meant = (event) => {
    if (event.ctrlKey || event.metaKey || event.altKey || document.querySelector("dialog[open]")) return null;
    return typing(event.target) || pressing(event) ? null : KEYS[event.key];
  };
  addEventListener("keydown", (event) => {
    const act = meant(event);
    if (!act) return;
    event.preventDefault();
    if (!event.repeat) acts[act]();
  });
  addEventListener("keyup", (event) => meant(event) && event.preventDefault());
}
