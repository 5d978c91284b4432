/** An edge moved by its handle, by keys and by buttons of one pixel. */

const KEYS = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1, PageDown: 10, PageUp: -10 };
const PATIENCE = 400; // ms a button is held before it goes on by itself
const PACE = 50;

/** Let the handle and the buttons in `root` move an edge: {pixels(), way(), ratio(), move(pixels)}. */
export function moved(root, edge) {
  const knob = root.querySelector('[data-act="edge"]');
  const place = ({ clientX, clientY }) => (edge.way() === "across" ? clientX : clientY) * edge.ratio();
  let held = null;
  knob.addEventListener("pointerdown", (event) => {
    knob.setPointerCapture(event.pointerId);
    held = place(event) - edge.pixels();
  });
  knob.addEventListener("pointermove", (event) => held !== null && edge.move(Math.round(place(event) - held)));
  for (const over of ["pointerup", "pointercancel"]) knob.addEventListener(over, () => { held = null; });
  knob.addEventListener("keydown", (event) => {
    if (!KEYS[event.key]) return;
    event.preventDefault();
    edge.move(edge.pixels() + KEYS[event.key]);
  });
  for (const button of root.querySelectorAll("[data-by]")) {
    stepping(button, () => edge.move(edge.pixels() + Number(button.dataset.by)));
  }
}

/** Step once at a click, and on and on while the button is held. */
export function stepping(button, step) {
  let timer = 0;
  let ran = false;
  const stop = () => clearTimeout(timer);
  const run = () => {
    ran = true;
    step();
    timer = setTimeout(run, PACE);
  };
  button.addEventListener("pointerdown", () => { stop(); ran = false; timer = setTimeout(run, PATIENCE); });
  for (const over of ["pointerup", "pointercancel", "pointerleave"]) button.addEventListener(over, stop);
  button.addEventListener("click", () => { stop(); if (!ran) step(); ran = false; });
  button.addEventListener("contextmenu", (event) => event.preventDefault());
}
